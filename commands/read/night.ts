/**
 * Which night a question is about.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { NIGHTS_AT_MOST, YEARS } from "../../config/input-limits.ts";
import { nightHolding, nightOn, nightsFrom } from "../../core/night/local-night.ts";
import type { Night } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { textOption, wholeNumberOption } from "./numbers.ts";

/**
 * The night named, else tonight: the night that holds the clock, or the coming one once the Sun is up.
 *
 * @throws AskError when the date does not exist
 */
export function nightOf(request: Request, site: Site): Night {
  const text = textOption(request, "night");
  return text === null ? nightHolding(request.at, site) : nightOn(parseDate("night", text), site.timeZone);
}

/**
 * That night and the following ones.
 *
 * @param most - the most nights the command can answer for
 * @returns one night when `nights` was not given
 */
export function nightsOf(request: Request, site: Site, most: number = NIGHTS_AT_MOST): Night[] {
  const count = wholeNumberOption(request, "nights", { min: 1, max: most, unit: "nights" });
  return [...nightsFrom(nightOf(request, site), count ?? 1)];
}

/**
 * A date that exists, `YYYY-MM-DD`.
 *
 * @param option - the option it came from, for the message
 */
export function parseDate(option: string, text: string): string {
  const read = DateTime.fromISO(text, { zone: "utc" });
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) {
    throw new AskError(
      "not-a-date",
      option,
      `“${option}” needs a date written YYYY-MM-DD, such as 2026-10-03.`,
    );
  }
  if (!read.isValid) {
    throw new AskError(
      "no-such-date",
      option,
      `${text} does not exist: “${option}” needs a day of the calendar.`,
    );
  }
  if (read.year < YEARS.min || read.year > YEARS.max) {
    throw new AskError(
      "out-of-range",
      option,
      `“${option}” must lie in the years ${YEARS.min} to ${YEARS.max}.`,
    );
  }
  return text;
}
