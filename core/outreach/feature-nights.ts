/**
 * Nights on which a feature of the Moon stands on the terminator while the Moon can be seen.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { Night } from "../night/night.ts";
import type { Site } from "../site.ts";
import { halfTurnDeg } from "../sky/angles.ts";
import { targetTrack } from "../targets/placer.ts";
import { visibleIntervals } from "../targets/visibility.ts";
import { SUN_DOWN, spansSunBelow } from "./body-night.ts";
import { globeSeen } from "./globe.ts";
import {
  isLunarMorning,
  type LunarFeature,
  sunAltitudeOnMoonDeg,
  type TerminatorBand,
  turnedTowardsUs,
} from "./lunar-terminator.ts";
import { lunarSun } from "./moon-disc.ts";

export type FeatureRules = {
  readonly band: TerminatorBand;
  /** Sine of the Earth's least altitude over the feature. */
  readonly leastTowardsUs: number;
  /** Of the Moon, degrees. */
  readonly leastAltitudeDeg: number;
};

export type FeatureNight = {
  readonly night: Night;
  /** The Moon clear of the skyline, the Sun down, the feature on the terminator. */
  readonly window: Interval;
  /** When the Moon stands highest in it. */
  readonly best: Date;
  readonly moonAltitudeDeg: number;
  /** Of the Sun over the feature, then. */
  readonly sunAltitudeDeg: number;
  readonly morning: boolean;
};

const STEP_MS = 10 * 60_000;
/** The Sun climbs 12.2° a day over the Moon: half a night, and a bit of libration. */
const HALF_NIGHT_DEG = 6.5;

/** Of some nights, those that show a feature well, in order. */
export function featureNights(
  site: Site,
  feature: LunarFeature,
  nights: readonly Night[],
  rules: FeatureRules,
): FeatureNight[] {
  return nights.flatMap((night) => {
    const found = mayShow(feature, night, rules.band) ? featureNight(site, feature, night, rules) : null;
    return found === null ? [] : [found];
  });
}

/** Whether the Sun can come into the band over the feature during a night. */
function mayShow(feature: LunarFeature, night: Night, band: TerminatorBand): boolean {
  const middle = new Date((night.noon.getTime() + night.nextNoon.getTime()) / 2);
  const altitudeDeg = sunAltitudeOnMoonDeg(lunarSun(middle), feature);
  return altitudeDeg >= band.lowestDeg - HALF_NIGHT_DEG && altitudeDeg <= band.highestDeg + HALF_NIGHT_DEG;
}

function featureNight(
  site: Site,
  feature: LunarFeature,
  night: Night,
  rules: FeatureRules,
): FeatureNight | null {
  const track = targetTrack(site, { kind: "body", body: "Moon" }, night.noon);
  const clearance = { skyline: site.skyline, leastAltitudeDeg: rules.leastAltitudeDeg };
  const moonUp = visibleIntervals(
    (at) => track(at.getTime()),
    clearance,
    spansSunBelow(site, night, SUN_DOWN),
  );
  const shown: { at: Date; moonAltitudeDeg: number; sunAltitudeDeg: number; morning: boolean }[] = [];
  for (const { start, end } of moonUp) {
    for (let ms = start.getTime(); ms <= end.getTime(); ms += STEP_MS) {
      const at = new Date(ms);
      const sun = lunarSun(at);
      const sunAltitudeDeg = sunAltitudeOnMoonDeg(sun, feature);
      if (sunAltitudeDeg < rules.band.lowestDeg || sunAltitudeDeg > rules.band.highestDeg) continue;
      const moonAltitudeDeg = track(ms).altitudeDeg;
      shown.push({ at, moonAltitudeDeg, sunAltitudeDeg, morning: isLunarMorning(sun, feature) });
    }
  }
  const [first, ...rest] = shown;
  if (first === undefined) return null;
  const best = rest.reduce(
    (high, each) => (each.moonAltitudeDeg > high.moonAltitudeDeg ? each : high),
    first,
  );
  const { longitudeDeg, latitudeDeg } = globeSeen("Moon", site, best.at).centre;
  const libration = { longitudeDeg: halfTurnDeg(longitudeDeg), latitudeDeg };
  if (turnedTowardsUs(libration, feature) < rules.leastTowardsUs) return null;
  return {
    night,
    window: { start: first.at, end: rest.at(-1)?.at ?? first.at },
    best: best.at,
    moonAltitudeDeg: best.moonAltitudeDeg,
    sunAltitudeDeg: best.sunAltitudeDeg,
    morning: best.morning,
  };
}
