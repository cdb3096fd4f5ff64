/**
 * `target` as figures.
 *
 * @packageDocumentation
 */
import type { Target } from "../core/targets/sky-object.ts";
import type { TargetNight } from "../core/targets/target-night.ts";
import type { TrackPoint } from "../core/targets/target-track.ts";
import type { Figure } from "./answer.ts";
import { isoOrNull } from "./answer.ts";
import { objectFigures, siteFigures, spanFigures } from "./object-figures.ts";
import type { Situation } from "./situation.ts";
import { sizeWords, targetKind } from "./words/target-words.ts";

/**
 * All that `target` tells, by number.
 *
 * @param placeAt - the instant for which a moving target's place stands in `object`
 */
export function targetFigures(
  situation: Situation,
  what: Target,
  found: TargetNight,
  track: readonly TrackPoint[],
  placeAt: Date,
  assumptions: readonly string[],
): { readonly [name: string]: Figure } {
  const { site, times, conditions } = situation;
  const size = what.kind === "object" ? sizeWords(what.object) : null;
  return {
    object: objectFigures(what, site, placeAt),
    ...(what.kind === "body" ? { placeAt: placeAt.toISOString() } : {}),
    kindWords: targetKind(what),
    sizeWords: size,
    night: times.night.date,
    site: siteFigures(site),
    zenithSkyMagArcsec2: conditions.zenithMagArcsec2,
    track: track.map((point) => ({ ...point, at: point.at.toISOString() })),
    transit:
      found.transit === null
        ? null
        : { at: found.transit.at.toISOString(), altitudeDeg: found.transit.altitudeDeg },
    windows: spanFigures(found.windows),
    usableHours: found.counted.usableHours,
    countingHours: found.counted.countingHours,
    moonCost: found.counted.moonCost,
    bands: found.bands.map(({ name, counted }) => ({
      name,
      countingHours: counted.countingHours,
      moonCost: counted.moonCost,
    })),
    meridianFlip: isoOrNull(found.meridianFlip),
    assumptions: [...assumptions],
  };
}
