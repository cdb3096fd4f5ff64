/**
 * Instants and spans in the words of a site's own clock.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { Interval } from "../../core/interval.ts";
import { MS_PER_MINUTE } from "../../core/sky/time.ts";

/** `22:40`, in the zone, to the nearest minute. */
export function clockTime(at: Date, zone: string): string {
  const nearest = Math.round(at.getTime() / MS_PER_MINUTE) * MS_PER_MINUTE;
  return DateTime.fromMillis(nearest, { zone }).setLocale("en-GB").toFormat("HH:mm");
}

/** `22:40`, or `–` when there is none. */
export function clockTimeOrDash(at: Date | null, zone: string): string {
  return at === null ? "–" : clockTime(at, zone);
}

/** `22:40 to 02:10`. */
export function clockSpan(span: Interval, zone: string): string {
  return `${clockTime(span.start, zone)} to ${clockTime(span.end, zone)}`;
}

/**
 * Hours between the minutes that the clock shows, so that a length agrees with the times beside it.
 *
 * @param spans - added up
 */
export function clockHours(spans: readonly Interval[]): number {
  const minute = (at: Date) => Math.round(at.getTime() / MS_PER_MINUTE);
  return spans.reduce((sum, { start, end }) => sum + minute(end) - minute(start), 0) / 60;
}

/** `Friday 3 October`, of a `YYYY-MM-DD` date. */
export function dateWords(date: string): string {
  return DateTime.fromISO(date, { zone: "utc" }).setLocale("en-GB").toFormat("cccc d LLLL");
}

/** `Fri 3 Oct`. */
export function shortDateWords(date: string): string {
  return DateTime.fromISO(date, { zone: "utc" }).setLocale("en-GB").toFormat("ccc d LLL");
}

/** `3 h 20 min`, `50 min`, `4 h`; rounded to the minute. */
export function durationWords(hours: number): string {
  const minutes = Math.round(hours * 60);
  const whole = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}
