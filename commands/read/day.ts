/**
 * Which local day, and which hour of it, a question about the Sun is about.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { Site } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { parseDate } from "./night.ts";
import { textOption } from "./numbers.ts";
import { defineText } from "./options.ts";

export const DATE = defineText("date", "The local date, YYYY-MM-DD; default: today", { maxLength: 10 });

export const DAY_TIME = defineText(
  "time",
  "The clock at the site, HH:MM; default: now, or the best of the day",
  {
    maxLength: 5,
  },
);

/**
 * The local date named; `null` when none was.
 *
 * @throws AskError when it does not exist
 */
export function dateOption(request: Request, option = "date"): string | null {
  const text = textOption(request, option);
  return text === null ? null : parseDate(option, text);
}

/** The local date of an instant at a site. */
export function localDate(at: Date, site: Site): string {
  return DateTime.fromJSDate(at, { zone: site.timeZone }).toFormat("yyyy-MM-dd");
}

/** The date after a date. */
export function dayAfter(date: string): string {
  return DateTime.fromISO(date, { zone: "utc" }).plus({ days: 1 }).toFormat("yyyy-MM-dd");
}

/**
 * The wall clock named, on a local date; `null` when none was.
 *
 * @throws AskError when it is no time of day
 */
export function clockOption(request: Request, date: string, site: Site): Date | null {
  const text = textOption(request, "time");
  if (text === null) return null;
  const clock = DateTime.fromISO(`${date}T${text.padStart(5, "0")}`, { zone: site.timeZone });
  if (!/^\d{1,2}:\d{2}$/.test(text) || !clock.isValid) {
    throw new AskError("not-a-time", "time", "“time” needs a time of day, HH:MM, such as 14:30.");
  }
  return clock.toJSDate();
}
