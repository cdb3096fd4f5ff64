/**
 * Names that people give, and finding them again.
 *
 * @packageDocumentation
 */
import { NAME_LENGTH } from "../../config/input-limits.ts";
import { editDistance } from "../../core/targets/edit-distance.ts";
import { AskError } from "../ask-error.ts";

/** Control, format and line-break characters; a name is one plain line. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u;

/** Only so much of what was typed is compared with names. */
const COMPARED_LENGTH = 60;

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
  const wanted = matchKey(typed).slice(0, COMPARED_LENGTH);
  return names
    .map((name) => ({ name, distance: editDistance(wanted, matchKey(name), 2 * COMPARED_LENGTH) }))
    .sort((one, other) => one.distance - other.distance || one.name.localeCompare(other.name, "en"))
    .slice(0, limit)
    .map(({ name }) => name);
}
