/**
 * Sensors by their chip's code or format, or by size and pixel.
 *
 * @packageDocumentation
 */
import { CHIPS, UNKNOWN_CHIP } from "../../config/sensors.ts";
import type { Chip } from "../../core/rig/chip.ts";
import { AskError } from "../ask-error.ts";
import { listWords } from "../words/sky.ts";
import { matchKey, nearestNames } from "./names.ts";

/**
 * The chip called so, whatever the case, spaces and hyphens.
 *
 * @param option - the option it came from, for the message
 * @throws AskError naming the nearest codes
 */
export function chipCalled(option: string, name: string): Chip {
  const found = CHIPS.find(({ code }) => matchKey(code) === matchKey(name));
  if (found) return found;
  const codes = nearestNames(
    name,
    CHIPS.map(({ code }) => code),
  );
  throw new AskError(
    "unknown-sensor",
    option,
    `“${option}” needs width x height, such as 23.5x15.7mm, or a known chip or format; the nearest are ${listWords(codes)}.`,
  );
}

/** A chip of which only size and pixel are known. */
export function unknownChip(widthMm: number, heightMm: number, pixelUm: number): Chip {
  return { ...UNKNOWN_CHIP, code: `${widthMm} × ${heightMm} mm, ${pixelUm} µm`, widthMm, heightMm, pixelUm };
}
