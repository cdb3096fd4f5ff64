/**
 * Numbers, words, flags and instants from a request's options, each within its range.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { YEARS } from "../../config/input-limits.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";

/** A span both ends of which are allowed, and the unit shown beside it (`mm`, `°`, `seconds`). */
export type NumberLimits = { readonly min: number; readonly max: number; readonly unit?: string };

/**
 * A number option within its limits.
 *
 * @returns the number, or `null` when the option was not given
 * @throws AskError naming the option and its range when it is no finite number or lies outside
 */
export function numberOption(request: Request, name: string, limits: NumberLimits): number | null {
  const value = request.options[name];
  if (value === undefined) return null;
  const number = typeof value === "string" ? plainNumber(value) : value;
  if (typeof number !== "number") {
    throw new AskError("not-a-number", name, `“${name}” needs a number ${rangeWords(limits)}.`);
  }
  return withinRange(name, number, limits);
}

/** As {@link numberOption}, for whole numbers alone. */
export function wholeNumberOption(request: Request, name: string, limits: NumberLimits): number | null {
  const number = numberOption(request, name, limits);
  if (number !== null && !Number.isInteger(number)) {
    throw new AskError("not-whole", name, `“${name}” needs a whole number ${rangeWords(limits)}.`);
  }
  return number;
}

/**
 * The number itself when it lies within the limits.
 *
 * @param name - the option it came from, for the message
 * @throws AskError naming the option and its range
 */
export function withinRange(name: string, number: number, limits: NumberLimits): number {
  if (Number.isFinite(number) && number >= limits.min && number <= limits.max) return number;
  const said = Number.isFinite(number) ? `${shortNumber(number)} is out of range: ` : "";
  throw new AskError("out-of-range", name, `${said}“${name}” must be ${rangeWords(limits)}.`);
}

/** `from 4 to 400 mm`, `from -90 to 90° of latitude`. */
function rangeWords({ min, max, unit = "" }: NumberLimits): string {
  const space = unit === "" || unit.startsWith("° ") || unit === "°" ? "" : " ";
  return `from ${shortNumber(min)} to ${shortNumber(max)}${space}${unit}`;
}

/**
 * A number written out alone: sign, digits, one decimal point or comma, an exponent.
 *
 * @returns `null` for anything else, the empty text included
 */
export function plainNumber(text: string): number | null {
  const tidy = text.trim().replace(/^[−–]/, "-").replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(tidy) ? Number(tidy) : null;
}

/** The option's words without spaces around them, or `null` when it was not given. */
export function textOption(request: Request, name: string): string | null {
  const value = request.options[name];
  if (value === undefined) return null;
  if (typeof value === "object") {
    throw new AskError("not-words", name, `“${name}” needs words, not a file.`);
  }
  return String(value).trim();
}

/** Whether the option was given and is true. */
export function flagOption(request: Request, name: string): boolean {
  return request.options[name] === true;
}

/**
 * An instant with its offset, such as `2026-10-03T22:40+01:00` or one that ends in `Z`.
 *
 * @returns `null` when the option was not given
 */
export function instantOption(request: Request, name: string): Date | null {
  const text = textOption(request, name);
  return text === null ? null : parseInstant(name, text);
}

/**
 * An instant from ISO 8601 with its offset.
 *
 * @param name - the option it came from, for the message
 * @throws AskError when the offset is missing, the date does not exist or the year is out of reach
 */
export function parseInstant(name: string, text: string): Date {
  const shape = /^\d{4}-\d{2}-\d{2}T\d{2}:?\d{2}(:?\d{2}([.,]\d+)?)?(Z|[+-]\d{2}(:?\d{2})?)$/i;
  const read = DateTime.fromISO(text.replace(" ", "T"), { zone: "utc" });
  if (!shape.test(text.replace(" ", "T")) || !read.isValid) {
    throw new AskError(
      "not-an-instant",
      name,
      `“${name}” needs a date and time with its offset, such as 2026-10-03T22:40+01:00 or 2026-10-03T21:40Z.`,
    );
  }
  if (read.year < YEARS.min || read.year > YEARS.max) {
    throw new AskError("out-of-range", name, `“${name}” must lie in the years ${YEARS.min} to ${YEARS.max}.`);
  }
  return read.toJSDate();
}

function shortNumber(value: number): string {
  return String(Number(value.toPrecision(6)));
}
