/**
 * A year of one object: dark, Moon-free hours above the skyline, night by night.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { Site } from "../site.ts";
import { placeOfDate } from "../sky/place.ts";
import { MS_PER_HOUR } from "../sky/time.ts";
import { heightTrack, horizonTrack } from "../sky/topocentric.ts";
import { type FixedPlace, fixedTrack } from "./placer.ts";
import { type Clearance, clearanceDeg } from "./visibility.ts";

export type SeasonNight = {
  /** `YYYY-MM-DD`, the local date on which it begins. */
  readonly date: string;
  /** Dark (Sun below −18°), Moon down, object clear of the skyline. */
  readonly moonFreeHours: number;
  /** The same with the Moon or without. */
  readonly darkHours: number;
};

/** Every so many nights is looked at: the hours change by minutes from one to the next. */
const NIGHTS_APART = 2;
const STEP_MS = 12 * 60_000;
const DARK_SUN_DEG = -18;

/**
 * Hours of one object through a year.
 *
 * @param firstDate - `YYYY-MM-DD`, the first night
 * @param nights - how many nights the year has
 * @returns every second night, in order; hours to about a tenth
 *
 * @remarks
 * Moonrise is taken at the level horizon, airless: a few minutes from the almanac's.
 */
export function seasonNights(
  site: Site,
  place: FixedPlace,
  clearance: Clearance,
  firstDate: string,
  nights: number,
): SeasonNight[] {
  const moon = horizonTrack("Moon", site);
  const sun = heightTrack("Sun", site);
  const first = DateTime.fromISO(firstDate, { zone: site.timeZone });
  const season: SeasonNight[] = [];
  for (let night = 0; night < nights; night += NIGHTS_APART) {
    const begun = first.plus({ days: night });
    // The Sun is lowest at local mean midnight, within the equation of time.
    const middleMs = meanMidnightMs(begun, site.longitudeDeg);
    const dark = darkSpanMs((ms) => sun(ms).altitudeDeg, middleMs);
    const track = fixedTrack(site, place, new Date(middleMs));
    const steps = Math.ceil((dark.endMs - dark.startMs) / STEP_MS);
    let darkMs = 0;
    let moonFreeMs = 0;
    let before = { clear: 0, moonUp: 0 };
    for (let step = 0; step <= steps; step++) {
      const ms = dark.startMs + ((dark.endMs - dark.startMs) * step) / Math.max(1, steps);
      const now = { clear: clearanceDeg(track(ms), clearance), moonUp: moon(ms).up };
      if (step > 0) {
        const clearMs = (shareAbove(before.clear, now.clear) * (dark.endMs - dark.startMs)) / steps;
        darkMs += clearMs;
        moonFreeMs += clearMs * shareAbove(-before.moonUp, -now.moonUp);
      }
      before = now;
    }
    season.push({
      date: begun.toFormat("yyyy-MM-dd"),
      darkHours: darkMs / MS_PER_HOUR,
      moonFreeHours: moonFreeMs / MS_PER_HOUR,
    });
  }
  return season;
}

/** Mean midnight at a longitude, of the night that begins on a local date. */
function meanMidnightMs(begun: DateTime, longitudeDeg: number): number {
  const utcDay = Date.UTC(begun.year, begun.month - 1, begun.day + 1);
  return utcDay - (longitudeDeg / 15) * MS_PER_HOUR;
}

/** The dark span around midnight; empty when the Sun stays above −18°. */
function darkSpanMs(sunAltitude: (ms: number) => number, middleMs: number) {
  if (sunAltitude(middleMs) > DARK_SUN_DEG) return { startMs: middleMs, endMs: middleMs };
  return {
    startMs: middleMs - darkSideMs((ms) => sunAltitude(middleMs - ms)),
    endMs: middleMs + darkSideMs((ms) => sunAltitude(middleMs + ms)),
  };
}

/** How long it stays dark to one side of midnight, to a minute; half a day where it never ends. */
function darkSideMs(sunAltitude: (ms: number) => number): number {
  let dark = 0;
  let light = 12 * MS_PER_HOUR;
  if (sunAltitude(light) <= DARK_SUN_DEG) return light;
  while (light - dark > 60_000) {
    const tried = (dark + light) / 2;
    if (sunAltitude(tried) <= DARK_SUN_DEG) dark = tried;
    else light = tried;
  }
  return dark;
}

/** Part of a step in which a quantity that runs straight from one value to the other is above 0. */
function shareAbove(from: number, to: number): number {
  if (from >= 0 && to >= 0) return 1;
  if (from < 0 && to < 0) return 0;
  return Math.max(from, to) / Math.abs(to - from);
}

export type SeasonMonth = {
  /** `YYYY-MM`. */
  readonly month: string;
  /** Means a night. */
  readonly moonFreeHours: number;
  readonly darkHours: number;
};

/** Means by calendar month, in order. */
export function seasonMonths(nights: readonly SeasonNight[]): SeasonMonth[] {
  const months = new Map<string, SeasonNight[]>();
  for (const night of nights) {
    const month = night.date.slice(0, 7);
    months.set(month, [...(months.get(month) ?? []), night]);
  }
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return [...months].map(([month, its]) => ({
    month,
    moonFreeHours: mean(its.map((night) => night.moonFreeHours)),
    darkHours: mean(its.map((night) => night.darkHours)),
  }));
}

/** A month and a half around its middle: longer than a lunation, so that the Moon's phase averages out. */
const SMOOTHING_NIGHTS = 22;
/** The best weeks reach this share of the best. */
const BEST_SHARE = 0.85;

export type BestWeeks = {
  /** First and last night of the run around the best one. */
  readonly from: string;
  readonly to: string;
  readonly hoursPerNight: number;
};

/**
 * The weeks in which the object gets the most hours, the Moon's phases averaged out.
 *
 * @param nights - of one whole year, in order; the year is taken as a ring, so that a season which
 *   runs across its first night is not cut in two: it then begins in the year before
 * @returns `null` when the object never gets any hours
 */
export function bestWeeks(nights: readonly SeasonNight[]): BestWeeks | null {
  const all = nights.length;
  const half = SMOOTHING_NIGHTS / 2;
  const onRing = (index: number) => nights[(index + all) % all];
  const smooth = nights.map((_, index) => {
    let sum = 0;
    for (let aside = -half; aside <= half; aside++) sum += onRing(index + aside)?.darkHours ?? 0;
    return sum / (2 * half + 1);
  });
  const most = Math.max(...smooth);
  if (!(most > 0)) return null;
  const good = (index: number) => (smooth[(index + all) % all] ?? 0) >= BEST_SHARE * most;
  let from = smooth.indexOf(most);
  let to = from;
  while (to - from < all - 1 && good(from - 1)) from--;
  while (to - from < all - 1 && good(to + 1)) to++;
  const first = onRing(from);
  const last = onRing(to);
  if (first === undefined || last === undefined) return null;
  const acrossTheFirst = from < 0 || to >= all;
  return {
    from: acrossTheFirst ? yearBefore(first.date) : first.date,
    to: last.date,
    hoursPerNight: most,
  };
}

function yearBefore(date: string): string {
  return DateTime.fromISO(date, { zone: "utc" }).minus({ years: 1 }).toFormat("yyyy-MM-dd");
}

/** Whether an object never clears what it must at this site, whatever the hour. */
export function neverClears(site: Site, place: FixedPlace, clearance: Clearance, at: Date): boolean {
  const { decDeg } = placeOfDate(place.raDeg, place.decDeg, at, place.properMotion ?? null);
  const highestDeg = 90 - Math.abs(site.latitudeDeg - decDeg);
  if (highestDeg < clearance.leastAltitudeDeg) return true;
  const track = fixedTrack(site, place, at);
  const turnMs = 24 * MS_PER_HOUR;
  for (let ms = 0; ms < turnMs; ms += STEP_MS / 2) {
    if (clearanceDeg(track(at.getTime() + ms), clearance) >= 0) return false;
  }
  return true;
}
