/**
 * What is worth showing of Sun, Moon and planets, and when: chosen here unless a line says whose.
 *
 * @packageDocumentation
 */
import type { TerminatorBand } from "../core/outreach/lunar-terminator.ts";

/** The Sun stands so high over a lunar feature when its shadows are long (common practice). */
export const TERMINATOR: TerminatorBand = { lowestDeg: 0.5, highestDeg: 8 };

/** Sine of the Earth's least altitude over a lunar feature: nearer the limb it is a mere line. */
export const LEAST_TOWARDS_US = 0.1;
