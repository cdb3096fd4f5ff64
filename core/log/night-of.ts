/**
 * The night to which an instant belongs, in the log.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";

const NOON_HOUR = 12;

/**
 * The local date on which the night began: before local noon, the day before.
 *
 * @param timeZone - IANA name
 * @returns `YYYY-MM-DD`
 */
export function nightOfInstant(at: Date, timeZone: string): string {
  const local = DateTime.fromJSDate(at, { zone: timeZone });
  const began = local.hour >= NOON_HOUR ? local : local.minus({ days: 1 });
  return began.toFormat("yyyy-MM-dd");
}

/**
 * The instant of a wall clock during a night: after noon on its date, before noon on the next.
 *
 * @param night - `YYYY-MM-DD`
 * @param clock - `HH:MM` or `HH:MM:SS`
 * @returns `null` when the text is no time of day, or no such night exists
 */
export function instantInNight(night: string, clock: string, timeZone: string): Date | null {
  const evening = DateTime.fromISO(`${night}T${clock.padStart(5, "0")}`, { zone: timeZone });
  if (!evening.isValid) return null;
  return (evening.hour >= NOON_HOUR ? evening : evening.plus({ days: 1 })).toJSDate();
}

/** The night `count` nights before another. */
export function nightsBefore(night: string, count: number): string {
  return DateTime.fromISO(night, { zone: "utc" }).minus({ days: count }).toFormat("yyyy-MM-dd");
}
