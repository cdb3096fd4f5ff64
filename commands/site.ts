/**
 * `site`: where a member observes from, kept to 0.01°.
 *
 * @packageDocumentation
 */
import { ELEVATION_METRES, SITES_AT_MOST } from "../config/input-limits.ts";
import type { Site } from "../core/site.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { SavedSite } from "./books.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { keptDegrees } from "./read/coordinates.ts";
import { cleanName, matchKey } from "./read/names.ts";
import { flagOption, numberOption, textOption } from "./read/numbers.ts";
import { defineFile, defineFlag, defineNumber, defineSubcommand, defineText, SITE } from "./read/options.ts";
import { bareSite, defaultSite, ownSite } from "./read/site.ts";
import { placeOf, profileOf, withDetails } from "./read/site-facts.ts";
import type { Request } from "./request.ts";
import { skylineChart } from "./skyline-picture.ts";
import { savedSiteFigures, siteLines } from "./words/site.ts";

const OWN_SITE = { ...SITE, description: "One of your saved sites", required: true };

const PLACE_OPTIONS = [
  defineText("place", "A place's name, looked up once"),
  defineNumber("latitude", "Degrees, north positive; kept to 0.01°"),
  defineNumber("longitude", "Degrees, east positive; kept to 0.01°"),
  defineNumber("elevation", "Metres above the sea"),
  defineText("sky", "bortle 5, a meter reading such as 20.8, or naked-eye 5.5"),
  defineText("bright", "Brighter directions, azimuth:magnitudes, such as 120:0.8; none to forget them"),
  defineNumber("seeing", "A star's usual blur at the zenith, arcseconds"),
  defineFlag("default", "Use it whenever no site is named"),
];

export const site: Command = {
  definition: {
    name: "site",
    description: "Where you observe from: keep, change, list or forget a site",
    options: [
      defineSubcommand("add", "Keep a site", [
        defineText("name", "What you call it", { required: true }),
        ...PLACE_OPTIONS,
      ]),
      defineSubcommand("edit", "Change a site", [
        OWN_SITE,
        defineText("name", "What you will call it"),
        ...PLACE_OPTIONS,
      ]),
      defineSubcommand("remove", "Forget a site", [OWN_SITE]),
      defineSubcommand("list", "Your sites, and those shared in the club"),
      defineSubcommand("share", "Show a site of yours to the club, or no longer", [
        OWN_SITE,
        defineFlag("stop", "Keep it to yourself again"),
      ]),
      defineSubcommand("horizon", "What stands in the way around a site", [
        { ...SITE, description: "One of your saved sites; default: your own" },
        // Without a length of its own, so that the message is about points.
        { ...defineText("profile", "Azimuth:height pairs, such as 0:12, 90:30; or level"), max_length: 6000 },
        defineFile("file", "The same as a text file, a pair a line"),
      ]),
    ],
    defaultSubcommand: "list",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "add":
        return add(request, context);
      case "edit":
        return edit(request, context);
      case "remove":
        return remove(request, context);
      case "share":
        return share(request, context);
      case "horizon":
        return horizon(request, context);
      default:
        return list(request, context);
    }
  },
};

async function add(request: Request, context: Context): Promise<Answer> {
  const name = cleanName("name", textOption(request, "name") ?? "");
  const own = await ownSites(request, context);
  refuseTaken(name, own);
  if (own.length >= SITES_AT_MOST) {
    throw new AskError(
      "too-many-sites",
      "name",
      `You keep ${SITES_AT_MOST} sites already: remove one first.`,
    );
  }
  const place = await placeOf(request, context);
  if (place === null) {
    throw new AskError(
      "no-place",
      "place",
      "“place” is missing: name a place, or give latitude and longitude.",
    );
  }
  const made = withDetails(bareSite({ ...place, name, timeZone: "" }), request);
  const saved = await save(request, context, made);
  return described(saved, `${saved.site.name} is kept`);
}

async function edit(request: Request, context: Context): Promise<Answer> {
  const before = await ownSite(request, context);
  if (Object.keys(request.options).length < 2) {
    throw new AskError(
      "nothing-to-change",
      null,
      `Say what to change of ${before.site.name}: a name, a place, the sky.`,
    );
  }
  const newName = textOption(request, "name");
  const name = newName === null ? before.site.name : cleanName("name", newName);
  const others = (await ownSites(request, context)).filter(({ id }) => id !== before.id);
  refuseTaken(name, others);
  const place = await placeOf(request, context);
  const elevation = numberOption(request, "elevation", { ...ELEVATION_METRES, unit: "metres" });
  const moved: Site = {
    ...before.site,
    ...(place === null ? {} : { latitudeDeg: place.latitudeDeg, longitudeDeg: place.longitudeDeg }),
    elevationMetres: elevation ?? place?.elevationMetres ?? before.site.elevationMetres,
    name,
  };
  const saved = await save(request, context, withDetails(moved, request), before);
  return described(saved, `${saved.site.name} is changed`);
}

async function remove(request: Request, context: Context): Promise<Answer> {
  const gone = await ownSite(request, context);
  await context.books.sites.remove(request.club, request.member.id, gone.id);
  const left = await ownSites(request, context);
  return {
    title: `${gone.site.name} is forgotten`,
    summary:
      left.length === 0
        ? "You keep no site now: name one with each question, or add one."
        : `You keep ${counted(left.length)} still.`,
    sections: [],
    charts: [],
    cautions: [],
    next: [{ label: "My sites", command: "site", options: { subcommand: "list" } }],
    figures: { removed: gone.site.name, sites: left.map(savedSiteFigures) },
    credits: [],
  };
}

async function list(request: Request, context: Context): Promise<Answer> {
  const saved = await context.books.sites.list(request.club, request.member.id);
  const own = saved.filter(({ ownerId }) => ownerId === request.member.id);
  return {
    title: "Your sites",
    summary: listSummary(own.length, saved.length - own.length),
    sections: saved.map((one) => ({
      heading: [
        one.site.name,
        ...(one.isDefault && own.includes(one) ? ["your default"] : []),
        ...(one.shared ? ["shared"] : []),
      ].join(", "),
      lines: siteLines(one),
    })),
    charts: [],
    cautions: [],
    next: [],
    figures: { sites: saved.map(savedSiteFigures) },
    credits: [],
  };
}

function listSummary(own: number, shared: number): string {
  const others =
    shared === 0 ? "" : `; ${counted(shared)} more ${shared === 1 ? "is" : "are"} shared in the club`;
  return own === 0
    ? `You keep no site of your own yet: add one by a place's name or by latitude and longitude${others}.`
    : `You keep ${counted(own)}${others}.`;
}

function counted(sites: number): string {
  return sites === 1 ? "one site" : `${sites} sites`;
}

async function share(request: Request, context: Context): Promise<Answer> {
  const before = await ownSite(request, context);
  const shared = !flagOption(request, "stop");
  const others = (await context.books.sites.list(request.club, request.member.id)).filter(
    (one) => one.shared && one.id !== before.id,
  );
  if (shared) refuseTaken(before.site.name, others);
  const saved = await context.books.sites.save(request.club, request.member.id, before.site, {
    shared,
    replaces: before.id,
  });
  return described(saved, shared ? `${saved.site.name} is shared` : `${saved.site.name} is your own again`);
}

async function horizon(request: Request, context: Context): Promise<Answer> {
  const before =
    textOption(request, "site") === null
      ? await ownDefault(request, context)
      : await ownSite(request, context);
  const profile = profileOf(request);
  const saved =
    profile === null ? before : await save(request, context, { ...before.site, skyline: profile }, before);
  const answer = described(
    saved,
    profile === null ? `The skyline of ${saved.site.name}` : "The skyline is kept",
  );
  return { ...answer, charts: saved.site.skyline.length > 0 ? [skylineChart(saved)] : [] };
}

/** Keeps a site as rounded, with the clock of where it then stands. */
function save(request: Request, context: Context, made: Site, before?: SavedSite): Promise<SavedSite> {
  const timeZone = context.timeZoneAt(keptDegrees(made.latitudeDeg), keptDegrees(made.longitudeDeg));
  return context.books.sites.save(
    request.club,
    request.member.id,
    { ...made, timeZone },
    {
      ...(flagOption(request, "default") ? { makeDefault: true } : {}),
      ...(before ? { replaces: before.id } : {}),
    },
  );
}

async function ownSites(request: Request, context: Context): Promise<readonly SavedSite[]> {
  const saved = await context.books.sites.list(request.club, request.member.id);
  return saved.filter(({ ownerId }) => ownerId === request.member.id);
}

async function ownDefault(request: Request, context: Context): Promise<SavedSite> {
  const chosen = await defaultSite(request, context);
  if (chosen.ownerId === request.member.id) return chosen;
  throw new AskError("no-site", "site", "You keep no “site” of your own yet: add one first.");
}

function refuseTaken(name: string, saved: readonly SavedSite[]): void {
  const taken = saved.find(({ site: kept }) => matchKey(kept.name) === matchKey(name));
  if (!taken) return;
  throw new AskError(
    "name-taken",
    "name",
    `“name”: there is a site called ${taken.site.name} already; change it with “site edit”, or choose another name.`,
  );
}

function described(saved: SavedSite, title: string): Answer {
  const options = { site: saved.site.name };
  return {
    title,
    summary: `${saved.site.name}${saved.isDefault ? ", your default," : ""} is kept to 0.01°, and shown to nobody else${saved.shared ? " but the club, with which it is shared" : ""}.`,
    sections: [{ heading: saved.site.name, lines: siteLines(saved) }],
    charts: [],
    cautions: [],
    next: [
      { label: "The night there", command: "night", options },
      { label: "My sites", command: "site", options: { subcommand: "list" } },
    ],
    figures: { site: savedSiteFigures(saved) },
    credits: [],
  };
}
