/**
 * Cautions as a message shows them: first, and whole.
 *
 * They fill the message's own text, which stands above everything else; what has no room
 * there heads the embed. None is ever cut, dropped or moved behind the answer.
 *
 * @packageDocumentation
 */
import { CONTENT_LENGTH, EMBED_DESCRIPTION_LENGTH } from "../../config/discord-limits.ts";
import type { Caution } from "../../core/cautions.ts";
import { escaped } from "./plain-text.ts";

export type PlacedCautions = {
  /** For the message's own text. */
  readonly above: readonly string[];
  /** For the head of the embed. */
  readonly within: readonly string[];
};

const BETWEEN = "\n\n";

/**
 * @param taken - characters of the message's own text that something else needs
 * @throws RangeError when the cautions do not fit a message: a fault in their texts
 */
export function placeCautions(cautions: readonly Caution[], taken: number): PlacedCautions {
  const texts = cautions.map(({ text }) => `**Caution.** ${escaped(text)}`);
  let used = taken;
  let count = 0;
  for (const text of texts) {
    const next = used + text.length + BETWEEN.length;
    if (next > CONTENT_LENGTH) break;
    used = next;
    count += 1;
  }
  const within = texts.slice(count);
  if (within.join(BETWEEN).length + BETWEEN.length > EMBED_DESCRIPTION_LENGTH / 2) {
    throw new RangeError("the cautions of one answer do not fit a message");
  }
  return { above: texts.slice(0, count), within };
}
