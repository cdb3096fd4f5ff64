/**
 * How long a camera that does not follow the sky may expose: two rules.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "../sky/angles.ts";

/** Diagonal of the format that the 500 rule counts in, millimetres. */
const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

export type UntrackedCamera = {
  readonly focalLengthMm: number;
  readonly focalRatio: number;
  readonly pixelUm: number;
  readonly sensorDiagonalMm: number;
};

/**
 * The 500 rule: 500 over the focal length in full-frame millimetres, seconds.
 *
 * Common practice; it knows neither pixel nor declination.
 */
export function fiveHundredRuleSeconds(
  camera: Pick<UntrackedCamera, "focalLengthMm" | "sensorDiagonalMm">,
): number {
  return 500 / (camera.focalLengthMm * (FULL_FRAME_DIAGONAL_MM / camera.sensorDiagonalMm));
}

/**
 * F. Michaud's rule with aperture and pixel: (35 N + 30 p)/f seconds at the equator.
 *
 * @param decDeg - stars further from the equator trail more slowly; 0 for the published rule
 */
export function michaudSeconds(camera: Omit<UntrackedCamera, "sensorDiagonalMm">, decDeg: number): number {
  const atEquator = (35 * camera.focalRatio + 30 * camera.pixelUm) / camera.focalLengthMm;
  return atEquator / Math.max(Math.cos(decDeg * RAD_PER_DEG), 1e-3);
}
