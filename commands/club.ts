/**
 * `club`: where and when the evening post goes out, and what weather the club goes out in.
 *
 * Anyone may read the settings; only those who run the club may change them, and
 * whether the asker does is settled by the door.
 *
 * @packageDocumentation
 */
import {
  type APIApplicationCommandChannelOption,
  type APIApplicationCommandRoleOption,
  ApplicationCommandOptionType,
  ChannelType,
} from "discord-api-types/v10";
import { CLUB_RIG, CLUB_SITES_AT_MOST, HOURS_BEFORE_SUNSET_RANGE } from "../config/club-defaults.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { ClubSettings, PostOn, SavedSite } from "./books.ts";
import { changedLimits, LIMIT_OPTIONS } from "./club-limits.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { limitsOf } from "./read/limits.ts";
import { matchKey, nearestNames } from "./read/names.ts";
import { flagOption, numberOption, textOption } from "./read/numbers.ts";
import { defineChoice, defineFlag, defineNumber, defineSubcommand, defineText } from "./read/options.ts";
import { parseRigDescription } from "./read/rig-description.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";
import { listWords } from "./words/sky.ts";
import { limitsLine } from "./words/weather-words.ts";

const POST_ON: Readonly<Record<PostOn, string>> = {
  go: "go nights",
  marginal: "go and marginal nights",
  "every-night": "every night that has a forecast",
};

const CHANNEL: APIApplicationCommandChannelOption = {
  type: ApplicationCommandOptionType.Channel,
  name: "channel",
  description: "Where the evening post goes",
  channel_types: [ChannelType.GuildText, ChannelType.GuildAnnouncement],
};

const ORGANISERS: APIApplicationCommandRoleOption = {
  type: ApplicationCommandOptionType.Role,
  name: "organisers",
  description: "Who holds this role may run the club here",
};

export const club: Command = {
  definition: {
    name: "club",
    description: "The evening post and what weather the club goes out in",
    options: [
      defineSubcommand("show", "How the club is set"),
      defineSubcommand("set", "Change the evening post", [
        CHANNEL,
        defineText("sites", "Shared sites it speaks of, home first, with commas between"),
        defineNumber("hours", "So many hours before the home site's sunset"),
        defineChoice("post", "On which nights", ["go", "marginal", "every-night"]),
        defineChoice("units", "Of wind, temperature and rain", ["metric", "imperial"]),
        defineText("rig", "What its proposals are for, such as 400mm f/5.6, 23.5x15.7mm, 3.76um"),
        ORGANISERS,
      ]),
      defineSubcommand("limits", "Change what weather counts as good", [
        ...LIMIT_OPTIONS,
        defineFlag("reset", "Back to the usual limits first"),
      ]),
      defineSubcommand("stop", "No evening post any more"),
    ],
    defaultSubcommand: "show",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "set":
        return set(request, context);
      case "limits":
        return limits(request, context);
      case "stop":
        return stop(request, context);
      default:
        return show(request, context, "How the club is set");
    }
  },
};

function refuseOthers(request: Request): void {
  if (request.member.organiser) return;
  throw new AskError(
    "not-an-organiser",
    null,
    "Only those who may manage the server, or hold the club's organiser role, may change this.",
  );
}

async function set(request: Request, context: Context): Promise<Answer> {
  refuseOthers(request);
  const changes: Partial<ClubSettings> = {
    ...channelChange(request, context),
    ...(await siteChange(request, context)),
    ...plainChanges(request),
  };
  if (Object.keys(changes).length === 0) {
    throw new AskError("nothing-to-change", null, "Say what to change: a channel, sites, hours, a role.");
  }
  await context.books.clubs.change(request.club, changes);
  return show(request, context, "The club is set");
}

function channelChange(request: Request, context: Context): Partial<ClubSettings> {
  const channelId = textOption(request, "channel");
  if (channelId === null) return {};
  const trouble = context.channelTrouble?.(request.club, channelId) ?? null;
  if (trouble !== null) throw new AskError("closed-channel", "channel", trouble);
  return { channelId, trouble: null, troubleTold: false };
}

async function siteChange(request: Request, context: Context): Promise<Partial<ClubSettings>> {
  const text = textOption(request, "sites");
  if (text === null) return {};
  const shared = await sharedSites(request, context);
  const names = text
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
  if (names.length === 0 || names.length > CLUB_SITES_AT_MOST) {
    throw new AskError(
      "too-many",
      "sites",
      `“sites” needs 1 to ${CLUB_SITES_AT_MOST} names, with commas between.`,
    );
  }
  return { sites: names.map((name) => sharedName(name, shared)) };
}

function sharedName(name: string, shared: readonly SavedSite[]): string {
  const found = shared.find(({ site }) => matchKey(site.name) === matchKey(name));
  if (found) return found.site.name;
  const known = nearestNames(
    name,
    shared.map(({ site }) => site.name),
  );
  const choices = known.length === 0 ? "None is shared yet" : `Shared are ${listWords(known)}`;
  throw new AskError(
    "unknown-site",
    "sites",
    `“sites”: no site called “${name.slice(0, 40)}” is shared in the club. ${choices}; share one with “site share”.`,
  );
}

function plainChanges(request: Request): Partial<ClubSettings> {
  const hours = numberOption(request, "hours", { ...HOURS_BEFORE_SUNSET_RANGE, unit: "hours" });
  const postOn = textOption(request, "post");
  const units = textOption(request, "units");
  const rig = textOption(request, "rig");
  const organisers = textOption(request, "organisers");
  if (rig !== null) parseRigDescription("rig", rig);
  return {
    ...(hours === null ? {} : { hoursBeforeSunset: hours }),
    ...(postOn === "go" || postOn === "marginal" || postOn === "every-night" ? { postOn } : {}),
    ...(units === "metric" || units === "imperial" ? { units } : {}),
    ...(rig === null ? {} : { rig }),
    ...(organisers === null ? {} : { organiserRoleId: organisers }),
  };
}

async function limits(request: Request, context: Context): Promise<Answer> {
  refuseOthers(request);
  const before = flagOption(request, "reset")
    ? {}
    : (await context.books.clubs.settings(request.club)).limits;
  const changes = changedLimits(request);
  if (Object.keys(changes).length === 0 && !flagOption(request, "reset")) {
    throw new AskError("nothing-to-change", null, "Say which limit to change, such as cloud 40.");
  }
  await context.books.clubs.change(request.club, { limits: { ...before, ...changes } });
  return show(request, context, "The club's limits are set");
}

async function stop(request: Request, context: Context): Promise<Answer> {
  refuseOthers(request);
  await context.books.clubs.change(request.club, { channelId: null, trouble: null, troubleTold: false });
  return show(request, context, "No evening post goes out any more");
}

async function sharedSites(request: Request, context: Context): Promise<readonly SavedSite[]> {
  const saved = await context.books.sites.list(request.club, request.member.id);
  return saved.filter(({ shared }) => shared);
}

async function show(request: Request, context: Context, title: string): Promise<Answer> {
  const settings = await context.books.clubs.settings(request.club);
  const shared = (await sharedSites(request, context)).map(({ site }) => site.name);
  const sites = settings.sites.length > 0 ? settings.sites : shared.slice(0, 1);
  return {
    title,
    summary: summaryOf(settings, sites),
    sections: [
      {
        heading: "Evening post",
        lines: [
          `Sites: ${sites.length === 0 ? "none is shared yet" : listWords(sites)}`,
          `Proposals for: ${settings.rig ?? `${CLUB_RIG} (assumed)`}`,
          settings.organiserRoleId === null
            ? "Run by those who may manage the server"
            : "Run by those who may manage the server, and the organiser role",
          ...(settings.trouble === null ? [] : [settings.trouble]),
        ],
      },
      { heading: "Weather that counts as good", lines: [limitsLine(await limitsOf(request, context))] },
    ],
    charts: [],
    cautions: [],
    next: [],
    figures: {
      channelId: settings.channelId,
      sites,
      hoursBeforeSunset: settings.hoursBeforeSunset,
      post: settings.postOn,
      units: settings.units,
      rig: settings.rig,
      organiserRoleId: settings.organiserRoleId,
      limits: { ...settings.limits },
      trouble: settings.trouble,
    },
    credits: [],
  };
}

function summaryOf(settings: ClubSettings, sites: readonly string[]): string {
  if (settings.channelId === null) return "No evening post goes out: set a channel with “club set”.";
  if (sites.length === 0) return "No evening post goes out before a site is shared: “site share”.";
  const when = durationWords(settings.hoursBeforeSunset);
  return `The evening post goes out ${when} before sunset at ${sites[0]}, on ${POST_ON[settings.postOn]}.`;
}
