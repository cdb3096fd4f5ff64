/**
 * A feature of the Moon by its name.
 *
 * @packageDocumentation
 */
import { MOON_FEATURES } from "../../config/moon-features.ts";
import type { LunarFeature } from "../../core/outreach/lunar-terminator.ts";
import { AskError } from "../ask-error.ts";
import type { Completion } from "../command.ts";
import type { Request } from "../request.ts";
import { listWords } from "../words/sky.ts";
import { matchKey, nearestNames } from "./names.ts";
import { textOption } from "./numbers.ts";
import { defineCompleted } from "./options.ts";
import { said } from "./said.ts";

export const FEATURE = defineCompleted("feature", "A named feature, such as Copernicus: when it shows best");

const COMPLETIONS_AT_MOST = 25;

/**
 * The feature named; `null` when none was.
 *
 * @throws AskError with the nearest names
 */
export function featureOf(request: Request): LunarFeature | null {
  const text = textOption(request, "feature");
  if (text === null) return null;
  const found = MOON_FEATURES.find(({ name }) => matchKey(name) === matchKey(text));
  if (found !== undefined) return found;
  const names = nearestNames(
    text,
    MOON_FEATURES.map(({ name }) => name),
  );
  throw new AskError(
    "unknown-feature",
    "feature",
    `“feature”: no feature of the Moon here is called “${said(text)}”. The nearest names are ${listWords(names)}.`,
  );
}

/** Names that begin with, then contain, what was typed. */
export function featureCompletions(typed: string): Completion[] {
  const key = matchKey(typed);
  const names = MOON_FEATURES.map(({ name }) => name);
  const begin = names.filter((name) => matchKey(name).startsWith(key));
  const hold = names.filter((name) => matchKey(name).includes(key) && !begin.includes(name));
  return [...begin, ...hold].slice(0, COMPLETIONS_AT_MOST).map((name) => ({ name, value: name }));
}
