/**
 * Calibration sets and what they lack, as figures.
 *
 * @packageDocumentation
 */
import type { OwedFrames } from "../core/log/calibration-owed.ts";
import type { CalibrationSet, Need } from "../core/log/calibration-sets.ts";
import type { Figure } from "./answer.ts";
import { libraryFigures } from "./log-figures.ts";

export function setFigures(set: CalibrationSet): Figure {
  const { needs, ...settings } = set;
  return {
    ...settings,
    dark: needFigures(needs.dark),
    flat: needFigures(needs.flat),
    bias: needFigures(needs.bias),
  };
}

function needFigures({ matched, have, owed }: Need): Figure {
  return { have, owed, matched: matched.map(libraryFigures) };
}

export function owedFigures(frames: OwedFrames): Figure {
  return { ...frames };
}
