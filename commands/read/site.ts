/**
 * Where a question is asked from.
 *
 * @packageDocumentation
 */
import { DEFAULT_ELEVATION_METRES } from "../../config/site-defaults.ts";
import type { Site } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import type { SavedSite } from "../books.ts";
import type { Context } from "../context.ts";
import type { Request } from "../request.ts";
import { listWords } from "../words/sky.ts";
import { coordinateWords, isNumbersAlone, parseCoordinates } from "./coordinates.ts";
import { matchKey, nearestNames } from "./names.ts";
import { textOption } from "./numbers.ts";
import { said } from "./said.ts";

/** Longest text that could be a site's or a place's name. */
const NAME_AT_MOST = 100;

/**
 * The site named: a saved or shared one, coordinates, or a place; else the member's default.
 *
 * @param option - which option names it
 * @throws AskError when it is unknown, out of range, or nothing is saved and nothing was named
 */
export async function siteOf(request: Request, context: Context, option = "site"): Promise<Site> {
  const text = textOption(request, option);
  if (text === null) return (await defaultSite(request, context)).site;
  if (isNumbersAlone(text)) return siteAtCoordinates(option, text, context);

  const saved = await context.books.sites.list(request.club, request.member.id);
  const known = saved.find(({ site }) => matchKey(site.name) === matchKey(text));
  if (known) return known.site;

  const [place] = text.length <= NAME_AT_MOST && matchKey(text) !== "" ? await context.places.find(text) : [];
  if (place) {
    return bareSite({ ...place });
  }
  throw unknownSite(option, text, saved);
}

/**
 * The member's default site, else the club's first shared one.
 *
 * @throws AskError when there is none
 */
export async function defaultSite(request: Request, context: Context): Promise<SavedSite> {
  const saved = await context.books.sites.list(request.club, request.member.id);
  const own = saved.filter(({ ownerId }) => ownerId === request.member.id);
  const chosen = own.find(({ isDefault }) => isDefault) ?? own[0] ?? saved[0];
  if (chosen) return chosen;
  throw new AskError(
    "no-site",
    "site",
    "No “site” is saved yet: name a place or latitude, longitude, or keep one with “site add”.",
  );
}

/**
 * One of the member's own saved sites, by name.
 *
 * @throws AskError naming the nearest of them; somebody else's shared site is not one's own
 */
export async function ownSite(request: Request, context: Context, option = "site"): Promise<SavedSite> {
  const text = textOption(request, option);
  const saved = await context.books.sites.list(request.club, request.member.id);
  const own = saved.filter(({ ownerId }) => ownerId === request.member.id);
  if (text === null)
    throw new AskError("no-site", option, `“${option}” is missing: the name of a saved site.`);
  const known = own.find(({ site }) => matchKey(site.name) === matchKey(text));
  if (known) return known;
  throw unknownSite(option, text, own);
}

function siteAtCoordinates(option: string, text: string, context: Context): Site {
  const { latitudeDeg, longitudeDeg, elevationMetres } = parseCoordinates(option, text);
  return bareSite({
    name: coordinateWords(latitudeDeg, longitudeDeg),
    latitudeDeg,
    longitudeDeg,
    elevationMetres: elevationMetres ?? DEFAULT_ELEVATION_METRES,
    timeZone: context.timeZoneAt(latitudeDeg, longitudeDeg),
  });
}

/** A site of which only the place is known. */
export function bareSite(
  place: Pick<Site, "name" | "latitudeDeg" | "longitudeDeg" | "elevationMetres" | "timeZone">,
): Site {
  return {
    name: place.name,
    latitudeDeg: place.latitudeDeg,
    longitudeDeg: place.longitudeDeg,
    elevationMetres: place.elevationMetres,
    timeZone: place.timeZone,
    skyline: [],
    sky: null,
    brightDirections: [],
    seeingArcsec: null,
  };
}

/** What is wrong with a site's name, and the nearest that are known. */
export function unknownSite(option: string, text: string, saved: readonly SavedSite[]): AskError {
  const names = nearestNames(
    text,
    saved.map(({ site }) => site.name),
  );
  const choices = names.length > 0 ? `Saved: ${listWords(names)}. ` : "";
  return new AskError(
    "unknown-site",
    option,
    `“${option}”: there is no site or place called “${said(text)}”. ${choices}Or give latitude, longitude, such as 54.5, -2.6.`,
  );
}
