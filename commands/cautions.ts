/**
 * Cautions with their words, for an answer.
 *
 * @packageDocumentation
 */
import { CAUTION_TEXTS } from "../config/caution-texts.ts";
import { type Caution, cautionsOf, type Occasion, QUIET_OCCASION } from "../core/cautions.ts";

/** The cautions that apply to an occasion, the solar one first, each with its text. */
export function cautionsFor(occasion: Partial<Occasion>): readonly Caution[] {
  return cautionsOf({ ...QUIET_OCCASION, ...occasion }).map((id) => ({ id, text: CAUTION_TEXTS[id] }));
}
