/**
 * A span of local days that a question is about.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { NIGHTS_AT_MOST } from "../../config/input-limits.ts";
import type { Interval } from "../../core/interval.ts";
import { localDay } from "../../core/outreach/sun-day.ts";
import type { Site } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { dateOption, localDate } from "./day.ts";
import { parseInstant, textOption, wholeNumberOption } from "./numbers.ts";
import { defineText } from "./options.ts";

export const FROM_DATE = defineText("from", "The first local date, YYYY-MM-DD; default: today");

export const TO_DATE = defineText("to", "The last local date, YYYY-MM-DD");

/** The first date of a span, its days, and the instants at its ends. */
export type DaySpan = Interval & { readonly date: string; readonly days: number };

/**
 * From `from` (or `night`, or today) to `to`, or for `nights`, or for a usual number of days.
 *
 * @throws AskError when `to` lies before `from`, two options say the same end, or it is too long
 */
export function daySpanOf(request: Request, site: Site, usualDays: number): DaySpan {
  if (request.options.from !== undefined && request.options.night !== undefined) {
    throw new AskError(
      "two-beginnings",
      "night",
      "“night” and “from” both say where to begin: give one of them.",
    );
  }
  const date =
    dayOption(request, "from", site) ?? dateOption(request, "night") ?? localDate(request.at, site);
  const last = dayOption(request, "to", site);
  const nights = wholeNumberOption(request, "nights", { min: 1, max: NIGHTS_AT_MOST, unit: "nights" });
  if (last !== null && nights !== null) {
    throw new AskError("two-lengths", "nights", "“nights” and “to” both say how far: give one of them.");
  }
  const first = DateTime.fromISO(date, { zone: "utc" });
  const days =
    last === null
      ? (nights ?? usualDays)
      : DateTime.fromISO(last, { zone: "utc" }).diff(first, "days").days + 1;
  if (days < 1) {
    throw new AskError("range-backwards", "to", `“to” must not lie before ${date}.`);
  }
  if (days > NIGHTS_AT_MOST) {
    throw new AskError(
      "span-too-long",
      "to",
      `“to”: ${Math.round(days)} days are too many at once; ask for ${NIGHTS_AT_MOST} at most.`,
    );
  }
  const lastDate = first.plus({ days: days - 1 }).toFormat("yyyy-MM-dd");
  return {
    date,
    days,
    start: localDay(date, site.timeZone).start,
    end: localDay(lastDate, site.timeZone).end,
  };
}

/** A local date; of an instant with its offset, the date it falls on at the site. */
function dayOption(request: Request, option: string, site: Site): string | null {
  const text = textOption(request, option);
  if (text === null || !text.includes("T")) return dateOption(request, option);
  return localDate(parseInstant(option, text), site);
}
