/**
 * From when to when a public session lasts on one date.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { Interval } from "../interval.ts";
import { instantInNight } from "../log/night-of.ts";
import type { NightTimes } from "../night/night.ts";
import type { AudienceRules } from "./audience.ts";

/** Clock times at the site, `HH:MM`. */
export type SessionHours = { readonly from: string; readonly to: string };

export type Session = Interval & {
  /** How long it runs past the time at which this audience has to leave; 0 when hours were given. */
  readonly pastLeaveHours: number;
};

const MS_PER_HOUR = 3_600_000;
const FIVE_MINUTES_MS = 300_000;

/**
 * The session of an evening.
 *
 * @param hours - as asked; `null` for the audience's own: until they leave, from sunset on, but not before
 *   they come
 * @param length - hours that such an evening of their own lasts, at least and at most
 * @returns `null` when the hours end before they begin, or when the Sun does not set
 */
export function eveningSession(
  times: NightTimes,
  hours: SessionHours | null,
  audience: AudienceRules,
  length: { readonly min: number; readonly max: number },
): Session | null {
  const clock = (text: string) => instantInNight(times.night.date, text, times.night.timeZone);
  if (hours !== null) {
    const [start, end] = [clock(hours.from), clock(hours.to)];
    return start === null || end === null || end <= start ? null : { start, end, pastLeaveHours: 0 };
  }
  const [notBefore, leave] = [clock(audience.notBefore), clock(audience.leave)];
  if (notBefore === null || leave === null || neverSets(times)) return null;
  const sunset = times.sunset?.getTime() ?? 0;
  const start = Math.max(
    notBefore.getTime(),
    Math.ceil(sunset / FIVE_MINUTES_MS) * FIVE_MINUTES_MS,
    leave.getTime() - length.max * MS_PER_HOUR,
  );
  const end = Math.max(leave.getTime(), start + length.min * MS_PER_HOUR);
  return {
    start: new Date(start),
    end: new Date(end),
    pastLeaveHours: (end - Math.max(start, leave.getTime())) / MS_PER_HOUR,
  };
}

/** Whether the Sun stays up through the whole night. */
export function neverSets(times: NightTimes): boolean {
  return times.sunset === null && times.sunrise === null && times.workingWindows.length === 0;
}

/**
 * A session in daylight, both clock times on one local date.
 *
 * @returns `null` when it ends before it begins
 */
export function daySession(date: string, hours: SessionHours, timeZone: string): Interval | null {
  const clock = (text: string) => DateTime.fromISO(`${date}T${text.padStart(5, "0")}`, { zone: timeZone });
  const [start, end] = [clock(hours.from), clock(hours.to)];
  if (!start.isValid || !end.isValid || end <= start) return null;
  return { start: start.toJSDate(), end: end.toJSDate() };
}

/** Day of the week of a `YYYY-MM-DD` date: 1 Monday to 7 Sunday. */
export function weekdayOf(date: string): number {
  // Days since a Thursday, 1970-01-01.
  const days = Math.floor(Date.parse(`${date}T00:00:00Z`) / (24 * MS_PER_HOUR));
  return ((((days + 3) % 7) + 7) % 7) + 1;
}
