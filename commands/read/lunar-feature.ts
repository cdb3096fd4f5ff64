/**
 * A feature of the Moon by its name.
 *
 * @packageDocumentation
 */
import { MOON_FEATURES } from "../../config/moon-features.ts";
import { MOON_NAMES } from "../../config/moon-names.ts";
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

/** IAU names, then those in common use. */
const ALL_NAMES: readonly string[] = [...MOON_FEATURES.map(({ name }) => name), ...Object.keys(MOON_NAMES)];

/**
 * The feature named; `null` when none was.
 *
 * @throws AskError with the nearest names
 */
export function featureOf(request: Request): LunarFeature | null {
  const text = textOption(request, "feature");
  if (text === null) return null;
  const common = Object.keys(MOON_NAMES).find((name) => matchKey(name) === matchKey(text));
  const wanted = matchKey((common === undefined ? undefined : MOON_NAMES[common]) ?? text);
  const found = MOON_FEATURES.find(({ name }) => matchKey(name) === wanted);
  if (found !== undefined) return found;
  const names = nearestNames(text, ALL_NAMES);
  throw new AskError(
    "unknown-feature",
    "feature",
    `“feature”: no feature of the Moon here is called “${said(text)}”. The nearest names are ${listWords(names)}.`,
  );
}

/** Names that begin with, then contain, what was typed. */
export function featureCompletions(typed: string): Completion[] {
  const key = matchKey(typed);
  const begin = ALL_NAMES.filter((name) => matchKey(name).startsWith(key));
  const hold = ALL_NAMES.filter((name) => matchKey(name).includes(key) && !begin.includes(name));
  return [...begin, ...hold].slice(0, COMPLETIONS_AT_MOST).map((name) => ({ name, value: name }));
}
