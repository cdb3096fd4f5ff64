/**
 * How a rig looks at the sky tonight: its pass bands, its subs, the least altitude.
 *
 * @packageDocumentation
 */
import { EXPOSURE_RULES } from "../config/exposure-rules.ts";
import { PHOTOMETRY } from "../config/photometry.ts";
import { LEAST_ALTITUDE_DEG } from "../config/ranking.ts";
import { bandResponses } from "../core/rig/band-response.ts";
import type { Filter, Rig } from "../core/rig/rig.ts";
import { usualSubSeconds } from "../core/rig/usual-sub.ts";
import type { Site } from "../core/site.ts";
import type { ObservingConditions } from "../core/targets/observing-conditions.ts";
import type { Looking } from "../core/targets/target-night.ts";
import type { Clearance } from "../core/targets/visibility.ts";
import { AskError } from "./ask-error.ts";

export type RigTonight = {
  readonly rig: Rig;
  readonly filter: Filter;
  readonly looking: Looking;
  readonly clearance: Clearance;
};

/** What an object must clear for a rig: lower for the eye than for a camera. */
export function clearanceOf(rig: Rig, site: Site): Clearance {
  const leastAltitudeDeg = rig.kind === "visual" ? LEAST_ALTITUDE_DEG.visual : LEAST_ALTITUDE_DEG.imaging;
  return { skyline: site.skyline, leastAltitudeDeg };
}

/**
 * A rig behind a filter under the night's conditions.
 *
 * @throws AskError when no pixel of the rig sees anything through the filter
 */
export function rigTonight(rig: Rig, filter: Filter, conditions: ObservingConditions, at: Date): RigTonight {
  const clearance = clearanceOf(rig, conditions.site);
  if (rig.kind === "visual") return { rig, filter, looking: { kind: "eye" }, clearance };
  const bands = bandResponses(rig, filter, PHOTOMETRY);
  if (bands.length === 0) {
    throw new AskError(
      "blind-filter",
      "filter",
      `“filter”: the sensor of ${rig.name} sees nothing through ${filter.name}; name another filter, or none.`,
    );
  }
  const subSeconds = usualSubSeconds(rig, filter, bands, conditions, at, EXPOSURE_RULES);
  return {
    rig,
    filter,
    looking: { kind: "camera", works: bands.map((band) => ({ rig, band, subSeconds })) },
    clearance,
  };
}
