/**
 * Refraction: how far the air lifts what is seen.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "./angles.ts";

/** The almanacs' refraction at the horizon for rise and set, degrees: 34′. */
export const HORIZON_REFRACTION_DEG = 34 / 60;

/**
 * How far ordinary air (10 °C, 1010 hPa) lifts a true altitude.
 *
 * @param trueAltitudeDeg - airless; below −1° nothing is seen and the lift of −1° fades to none at −90°
 * @returns degrees to add
 *
 * @remarks
 * Real air differs by arcminutes at the horizon.
 *
 * Source: G. G. Bennett's formula turned to true altitudes by Þ. Sæmundsson, *Sky and
 * Telescope* 72, 70 (1986); Meeus, *Astronomical Algorithms* 16.4. Agrees to 0.1′.
 */
export function refractionDeg(trueAltitudeDeg: number): number {
  const height = Math.max(trueAltitudeDeg, -1);
  const minutes = 1.02 / Math.tan((height + 10.3 / (height + 5.11)) * RAD_PER_DEG);
  // The formula misses zero at the zenith by a hair; Meeus adds the same 0.0019279′.
  const lift = Math.max(0, minutes + 0.0019279) / 60;
  return trueAltitudeDeg < -1 ? (lift * (trueAltitudeDeg + 90)) / 89 : lift;
}

/** Altitude as seen through ordinary air, of a true one. */
export function apparentAltitudeDeg(trueAltitudeDeg: number): number {
  return trueAltitudeDeg + refractionDeg(trueAltitudeDeg);
}
