/**
 * The sub a rig works with when nobody names one.
 *
 * @packageDocumentation
 */
import type { ObservingConditions } from "../targets/observing-conditions.ts";
import type { BandResponse } from "./band-response.ts";
import { backgroundElectrons } from "./exposure-plan.ts";
import type { ExposureRules } from "./exposure-rules.ts";
import type { CameraRig, Filter } from "./rig.ts";
import { recommendedSub, shortestSubSeconds, trackingCapSeconds } from "./sub-length.ts";
import { bandRates, lightAtZenith } from "./window-rates.ts";

const NO_BRIGHTNESS = { continuumMagArcsec2: null, rayleigh: {} } as const;

/**
 * The member's own sub for the filter, else what is recommended at the zenith without Moon.
 *
 * It is held through the night: the Moon's cost is counted with it, not with a sub chosen anew.
 *
 * @param bands - the rig's response through the filter
 * @returns seconds
 */
export function usualSubSeconds(
  rig: CameraRig,
  filter: Filter,
  bands: readonly BandResponse[],
  conditions: ObservingConditions,
  at: Date,
  rules: ExposureRules,
): number {
  const saved = rig.subSeconds[filter.name];
  if (saved !== undefined) return saved;
  const light = lightAtZenith(conditions, at);
  const shortest = bands.map((band) => {
    const { leading } = bandRates(rig, band, light, NO_BRIGHTNESS);
    return shortestSubSeconds(leading.readNoiseElectrons, backgroundElectrons(leading), rules.readNoiseShare);
  });
  const tracking = trackingCapSeconds(rig, rules, 0);
  return recommendedSub(Math.max(...shortest), { tracking }, rules).subSeconds;
}
