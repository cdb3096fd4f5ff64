/**
 * Names that people give, and finding them again.
 *
 * @packageDocumentation
 */
import { NAME_LENGTH } from "../../config/input-limits.ts";
import { AskError } from "../ask-error.ts";

/** Control, format and line-break characters; a name is one plain line. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u;

/** What a chat turns into a mention, a link, code or a time: `@`, `<…>`, backticks. */
const MEANT_FOR_A_CHAT = /[@<>`]/;

/**
 * A name fit to be stored and shown: one line of plain words.
 *
 * @param option - the option it came from, for the message
 * @throws AskError for a mention, a control character, nothing at all, too many characters
 * or numbers alone (which are read as coordinates)
 */
export function cleanName(option: string, text: string): string {
  const name = text
    .normalize("NFC")
    .replace(/\s+/g, (gap) => (/[\r\n]/.test(gap) ? gap : " "))
    .trim();
  if (UNPRINTABLE.test(name) || MEANT_FOR_A_CHAT.test(name)) {
    throw new AskError(
      "unfit-name",
      option,
      `“${option}” must be one line of plain words, without mentions (@, <, >), backticks or control characters.`,
    );
  }
  if (matchKey(name).length < NAME_LENGTH.min || [...name].length > NAME_LENGTH.max) {
    throw new AskError(
      "unfit-name",
      option,
      `“${option}” must have ${NAME_LENGTH.min} to ${NAME_LENGTH.max} characters, a letter among them.`,
    );
  }
  if (!/\p{L}/u.test(name)) {
    throw new AskError(
      "unfit-name",
      option,
      `“${option}” must have a letter in it: numbers alone are read as coordinates.`,
    );
  }
  return name;
}

/** A name as it is compared: case, accents, spaces, hyphens and apostrophes do not matter. */
export function matchKey(name: string): string {
  return name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[\s\-‐‑–—_'’‘`.]/gu, "");
}

/**
 * The names most like what was typed, nearest first.
 *
 * @param limit - at most so many
 */
export function nearestNames(typed: string, names: readonly string[], limit = 3): string[] {
  const wanted = matchKey(typed).slice(0, 60);
  return names
    .map((name) => ({ name, distance: editDistance(wanted, matchKey(name)) }))
    .sort((one, other) => one.distance - other.distance || one.name.localeCompare(other.name, "en"))
    .slice(0, limit)
    .map(({ name }) => name);
}

/** Letters to change, add, drop or swap with their neighbour (Damerau's distance, restricted). */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let least = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      if (row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]) {
        least = Math.min(least, (beforeLast[column - 2] ?? 0) + 1);
      }
      current.push(least);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}
