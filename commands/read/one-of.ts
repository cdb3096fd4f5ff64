/**
 * One of a few words.
 *
 * @packageDocumentation
 */
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { listWords } from "../words/sky.ts";
import { textOption } from "./numbers.ts";

/**
 * The word given, whatever its case; `null` when none was.
 *
 * @throws AskError naming the words there are
 */
export function oneOfWords<Word extends string>(
  request: Request,
  option: string,
  words: readonly Word[],
): Word | null {
  const text = textOption(request, option);
  if (text === null) return null;
  const found = words.find((word) => word.toLowerCase() === text.toLowerCase());
  if (found !== undefined) return found;
  throw new AskError("not-a-choice", option, `“${option}” must be one of ${listWords(words)}.`);
}
