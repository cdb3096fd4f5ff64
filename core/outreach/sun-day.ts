/**
 * A day of the Sun at a site: when it is up, when it clears the skyline, how high it climbs.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { type Interval, intersectIntervals } from "../interval.ts";
import type { Site } from "../site.ts";
import { sunAltitudeDeg } from "../sky/bodies.ts";
import { bodyCrossings, transitOfBody } from "../sky/crossings.ts";
import { targetTrack } from "../targets/placer.ts";
import { type Horizontal, visibleIntervals } from "../targets/visibility.ts";

/** When the air over land is usually steadiest: from this height of the Sun on, for so long. */
export type SteadyMorning = {
  readonly fromAltitudeDeg: number;
  /** Where the Sun stays low: from this share of its height at noon. */
  readonly ofNoonAltitude: number;
  readonly hours: number;
};

export type SunDayRules = {
  /** Lower than this the Sun is not worth a telescope, degrees. */
  readonly leastAltitudeDeg: number;
  readonly steady: SteadyMorning;
};

export type SunDay = {
  /** `YYYY-MM-DD`, local. */
  readonly date: string;
  readonly timeZone: string;
  /** Local midnight to midnight. */
  readonly whole: Interval;
  /** Upper limb on a level horizon; `null` when it does not come that day. */
  readonly sunrise: Date | null;
  readonly sunset: Date | null;
  readonly transit: { readonly at: Date; readonly altitudeDeg: number } | null;
  /** The Sun's upper limb over a level horizon. */
  readonly up: readonly Interval[];
  /** Its centre over the skyline and the least altitude. */
  readonly clear: readonly Interval[];
  /** The usually steadiest part of it; `null` when the Sun does not clear the skyline then. */
  readonly steady: Interval | null;
};

const MS_PER_HOUR = 3_600_000;
const RISE_SET = { kind: "rise-set" } as const;
/** The centre's altitude when the upper limb is on the horizon, near enough to tell day from night. */
const SUN_UP_DEG = -0.83;

/**
 * The Sun through one local day.
 *
 * @param date - `YYYY-MM-DD`
 * @throws RangeError when there is no such date or zone (a command checks both first)
 */
export function sunDay(site: Site, date: string, rules: SunDayRules): SunDay {
  const whole = localDay(date, site.timeZone);
  const crossings = bodyCrossings("Sun", site, RISE_SET, whole.start, whole.end);
  const sunrise = crossings.find(({ rising }) => rising)?.at ?? null;
  const sunset =
    crossings.find(({ rising, at }) => !rising && (sunrise === null || at > sunrise))?.at ?? null;
  const up: Interval[] = [];
  let since = sunAltitudeDeg({ ...site, elevationMetres: 0 }, whole.start) > SUN_UP_DEG ? whole.start : null;
  for (const { at, rising } of crossings) {
    if (!rising && since !== null && since < at) up.push({ start: since, end: at });
    since = rising ? at : null;
  }
  if (since !== null) up.push({ start: since, end: whole.end });

  const track = targetTrack(site, { kind: "body", body: "Sun" }, whole.start);
  const clearance = { skyline: site.skyline, leastAltitudeDeg: rules.leastAltitudeDeg };
  const heightAt = (at: Date) => track(at.getTime());
  const clear = visibleIntervals(heightAt, clearance, up);
  const noon = transitOfBody("Sun", site, whole.start, whole.end);
  const transit = noon === null ? null : { at: noon, altitudeDeg: heightAt(noon).altitudeDeg };
  return {
    date,
    timeZone: site.timeZone,
    whole,
    sunrise,
    sunset,
    transit,
    up,
    clear,
    steady: steadyPart(clear, transit, whole.start, heightAt, rules.steady),
  };
}

/** From when the morning Sun stands high enough until the ground heats, or noon. */
function steadyPart(
  clear: readonly Interval[],
  transit: SunDay["transit"],
  start: Date,
  heightAt: (at: Date) => Horizontal,
  rules: SteadyMorning,
): Interval | null {
  if (transit === null || transit.at <= start) return null;
  const leastAltitudeDeg = Math.min(rules.fromAltitudeDeg, rules.ofNoonAltitude * transit.altitudeDeg);
  const [high] = visibleIntervals(heightAt, { skyline: [], leastAltitudeDeg }, [{ start, end: transit.at }]);
  if (high === undefined) return null;
  const heated = high.start.getTime() + rules.hours * MS_PER_HOUR;
  const morning = { start: high.start, end: new Date(Math.min(high.end.getTime(), heated)) };
  return intersectIntervals(clear, [morning])[0] ?? null;
}

/** Local midnight to midnight. */
export function localDay(date: string, timeZone: string): Interval {
  const start = DateTime.fromISO(date, { zone: timeZone }).startOf("day");
  if (!start.isValid) throw new RangeError(`no such date or time zone: ${date}, ${timeZone}`);
  return { start: start.toJSDate(), end: start.plus({ days: 1 }).startOf("day").toJSDate() };
}

/**
 * The first day from a date on, of `limit` days, on which the Sun comes over a level horizon.
 *
 * @returns `null` when it stays down all those days
 */
export function nextSunnyDate(site: Site, date: string, limit: number): string | null {
  for (let ahead = 0; ahead < limit; ahead++) {
    const day = DateTime.fromISO(date, { zone: "utc" }).plus({ days: ahead });
    const { start, end } = localDay(day.toFormat("yyyy-MM-dd"), site.timeZone);
    const transit = transitOfBody("Sun", site, start, end);
    if (transit !== null && sunAltitudeDeg(site, transit) > SUN_UP_DEG) return day.toFormat("yyyy-MM-dd");
  }
  return null;
}
