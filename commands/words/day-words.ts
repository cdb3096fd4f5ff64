/**
 * Instants as days of a site's calendar, the year with them: for what lies months ahead.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { clockTime } from "./clock.ts";

/** `Wednesday 12 August 2026`, in the zone. */
export function dayWords(at: Date, zone: string): string {
  return inZone(at, zone).toFormat("cccc d LLLL yyyy");
}

/** `Wed 12 Aug 2026`. */
export function shortDayWords(at: Date, zone: string): string {
  return inZone(at, zone).toFormat("ccc d LLL yyyy");
}

/** `12 August 2026, 18:17`. */
export function dayClockWords(at: Date, zone: string): string {
  return `${inZone(at, zone).toFormat("d LLLL yyyy")}, ${clockTime(at, zone)}`;
}

function inZone(at: Date, zone: string): DateTime {
  return DateTime.fromJSDate(at, { zone }).setLocale("en-GB");
}
