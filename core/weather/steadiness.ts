/**
 * How steady the stars may stand, guessed from the wind near 250 hPa. Rough, and said to be:
 * it knows nothing of the air near the ground.
 *
 * @packageDocumentation
 */

export type Steadiness = "steady" | "fair" | "unsteady";

export type SteadinessLimits = {
  readonly steadyBelowMetresPerSecond: number;
  readonly unsteadyAboveMetresPerSecond: number;
};

/**
 * The word for an upper-air wind.
 *
 * @param upperWindMetresPerSecond - wind near 250 hPa, 0 or more
 * @returns `steady` below the lower limit, `unsteady` above the upper one, `fair` at and between them
 *
 * @remarks Source: common practice.
 */
export function steadinessOf(upperWindMetresPerSecond: number, limits: SteadinessLimits): Steadiness {
  if (upperWindMetresPerSecond < limits.steadyBelowMetresPerSecond) return "steady";
  return upperWindMetresPerSecond > limits.unsteadyAboveMetresPerSecond ? "unsteady" : "fair";
}
