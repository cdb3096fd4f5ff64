/**
 * Sensors by their chip's code or format, or by size and pixel.
 *
 * @packageDocumentation
 */
import { CHIPS, UNKNOWN_CHIP } from "../../config/sensors.ts";
import type { Chip } from "../../core/rig/chip.ts";
import { matchKey } from "./names.ts";

/** The chip called so, whatever the case, spaces and hyphens, or `null`. */
export function chipCalled(name: string): Chip | null {
  return CHIPS.find(({ code }) => matchKey(code) === matchKey(name)) ?? null;
}

/** A chip of which only size and pixel are known. */
export function unknownChip(widthMm: number, heightMm: number, pixelUm: number): Chip {
  return { ...UNKNOWN_CHIP, code: `${widthMm} × ${heightMm} mm, ${pixelUm} µm`, widthMm, heightMm, pixelUm };
}
