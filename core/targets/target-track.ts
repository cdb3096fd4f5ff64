/**
 * A target's path, point by point, with all that is asked of each point.
 *
 * @packageDocumentation
 */
import { magArcsec2 } from "../night/sky-brightness.ts";
import { airmass } from "./airmass.ts";
import { V_BAND_NM } from "./extinction.ts";
import { type ObservingConditions, skyLight } from "./observing-conditions.ts";
import { targetTrack } from "./placer.ts";
import type { Target } from "./sky-object.ts";
import { skylineAltitudeDeg } from "./skyline.ts";

export type TrackPoint = {
  readonly at: Date;
  /** Airless. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  /** `null` below the horizon. */
  readonly airmass: number | null;
  /** −180…180, west positive. */
  readonly hourAngleDeg: number;
  readonly moonSeparationDeg: number;
  readonly moonAltitudeDeg: number;
  /** Sky beside the target, Moon and twilight included; `null` below the horizon and by day. */
  readonly skyMagArcsec2: number | null;
  /** Above the skyline and the level horizon. */
  readonly clearOfHorizon: boolean;
};

/** With the Sun's upper limb on the horizon no model of the night sky holds. */
const DAY_SUN_DEG = -0.833;

/** One point of a target's path; good at any instant, by day too. */
function trackPoint(conditions: ObservingConditions, target: Target, at: Date): TrackPoint {
  const place = targetTrack(conditions.site, target, at)(at.getTime());
  const up = place.altitudeDeg > 0;
  const { glow, twilight, moonAt, moonSeparationDeg, light } = skyLight(conditions, place, at.getTime());
  const night = light.sunAltitudeDeg < DAY_SUN_DEG;
  const isMoon = target.kind === "body" && target.body === "Moon";
  return {
    at,
    altitudeDeg: place.altitudeDeg,
    azimuthDeg: place.azimuthDeg,
    airmass: up ? airmass(place.altitudeDeg) : null,
    hourAngleDeg: place.hourAngleDeg,
    moonSeparationDeg: isMoon ? 0 : moonSeparationDeg,
    moonAltitudeDeg: light.moonAltitudeDeg,
    skyMagArcsec2: up && night && !isMoon ? magArcsec2(glow + twilight + moonAt(V_BAND_NM)) : null,
    clearOfHorizon: up && place.altitudeDeg >= skylineAltitudeDeg(conditions.site.skyline, place.azimuthDeg),
  };
}

/**
 * A path from one instant to another.
 *
 * @returns points from exactly `from`, a step apart, not past `to`; one point when both are equal
 */
export function trackBetween(
  conditions: ObservingConditions,
  target: Target,
  from: Date,
  to: Date,
  stepMinutes: number,
): TrackPoint[] {
  const points: TrackPoint[] = [];
  for (let ms = from.getTime(); ms <= to.getTime(); ms += stepMinutes * 60_000) {
    points.push(trackPoint(conditions, target, new Date(ms)));
  }
  return points;
}
