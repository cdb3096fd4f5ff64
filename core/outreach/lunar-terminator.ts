/**
 * Light and shadow on the Moon: how high the Sun stands over a feature, and what the
 * terminator shows.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD, RAD_PER_DEG } from "../sky/angles.ts";
import type { Libration, LunarSun } from "./moon-disc.ts";

/** A named place on the Moon. */
export type LunarFeature = {
  /** As the IAU writes it. */
  readonly name: string;
  /** Selenographic, east positive, in [-180, 180]. */
  readonly longitudeDeg: number;
  readonly latitudeDeg: number;
  readonly diameterKm: number;
  readonly kind: LunarFeatureKind;
  /** One plain sentence about it. */
  readonly line: string;
};

export type LunarFeatureKind =
  | "crater"
  | "sea"
  | "bay"
  | "mountains"
  | "mountain"
  | "scarp"
  | "rille"
  | "valley"
  | "swirl"
  | "cape"
  | "landing-site";

/** How high the Sun stands for shadows to be long and the feature yet lit. */
export type TerminatorBand = { readonly lowestDeg: number; readonly highestDeg: number };

export type LitFeature = {
  readonly feature: LunarFeature;
  /** Of the Sun's centre over the feature's level horizon. */
  readonly sunAltitudeDeg: number;
  /** The Sun is rising there: the morning terminator. */
  readonly morning: boolean;
};

/**
 * How high the Sun stands over a place on the Moon.
 *
 * @returns degrees of the Sun's centre; the Sun's disc is half a degree wide there too
 *
 * @remarks
 * sin h = sin b sin β + cos b cos β sin(c + λ), with b the Sun's selenographic latitude and
 * c its colongitude. Source: Meeus, *Astronomical Algorithms*, 2nd ed., chapter 53.
 */
export function sunAltitudeOnMoonDeg(
  sun: LunarSun,
  place: { readonly longitudeDeg: number; readonly latitudeDeg: number },
): number {
  const latitude = place.latitudeDeg * RAD_PER_DEG;
  const sunLatitude = sun.sunLatitudeDeg * RAD_PER_DEG;
  const hour = (sun.colongitudeDeg + place.longitudeDeg) * RAD_PER_DEG;
  const sine =
    Math.sin(sunLatitude) * Math.sin(latitude) + Math.cos(sunLatitude) * Math.cos(latitude) * Math.sin(hour);
  return Math.asin(Math.min(1, Math.max(-1, sine))) * DEG_PER_RAD;
}

/** Whether the Sun climbs there: it does for half a lunar day, from a feature's midnight to its noon. */
export function isLunarMorning(sun: LunarSun, place: { readonly longitudeDeg: number }): boolean {
  return Math.cos((sun.colongitudeDeg + place.longitudeDeg) * RAD_PER_DEG) > 0;
}

/** How far a place lies from the limb towards us: the sine of the Earth's altitude there; negative behind. */
export function turnedTowardsUs(
  libration: Libration,
  place: { readonly longitudeDeg: number; readonly latitudeDeg: number },
): number {
  const latitude = place.latitudeDeg * RAD_PER_DEG;
  const tilt = libration.latitudeDeg * RAD_PER_DEG;
  const beyond = (place.longitudeDeg - libration.longitudeDeg) * RAD_PER_DEG;
  return Math.sin(latitude) * Math.sin(tilt) + Math.cos(latitude) * Math.cos(tilt) * Math.cos(beyond);
}

/**
 * Which of some features stand on the terminator and are turned towards us, from north to south.
 *
 * @param leastTowardsUs - the sine of the least altitude the Earth must have there: nearer the
 *   limb a feature is a mere line
 */
export function featuresOnTerminator(
  features: readonly LunarFeature[],
  sun: LunarSun,
  libration: Libration,
  band: TerminatorBand,
  leastTowardsUs: number,
): LitFeature[] {
  return features
    .map((feature) => ({
      feature,
      sunAltitudeDeg: sunAltitudeOnMoonDeg(sun, feature),
      morning: isLunarMorning(sun, feature),
    }))
    .filter(
      ({ feature, sunAltitudeDeg }) =>
        sunAltitudeDeg >= band.lowestDeg &&
        sunAltitudeDeg <= band.highestDeg &&
        turnedTowardsUs(libration, feature) >= leastTowardsUs,
    )
    .sort((one, other) => other.feature.latitudeDeg - one.feature.latitudeDeg);
}
