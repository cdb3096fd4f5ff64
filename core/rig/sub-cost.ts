/**
 * Hours that a choice of sub costs: to reading out, and to read noise.
 *
 * @packageDocumentation
 */
import { variancePerSecond } from "./electrons.ts";
import type { ExposureRules } from "./exposure-rules.ts";
import type { PixelRates } from "./signal-to-noise.ts";
import { cycleSeconds } from "./sub-length.ts";

/**
 * Hours lost, of the hours at hand, against a camera without read noise or download.
 *
 * @param hours - clock time at hand
 * @returns hours in [0, hours]
 */
export function hoursLost(
  rates: PixelRates,
  subSeconds: number,
  hours: number,
  rules: ExposureRules,
): number {
  const exposing = subSeconds / cycleSeconds(subSeconds, rules);
  const quiet = variancePerSecond({ ...rates, readNoiseElectrons: 0, subSeconds });
  const noisy = variancePerSecond({ ...rates, subSeconds });
  return hours * (1 - exposing * (quiet / noisy));
}
