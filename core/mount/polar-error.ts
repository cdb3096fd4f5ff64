/**
 * What a polar axis that points beside the pole does to a picture.
 *
 * The figures are the worst over the sky, for a small error: a star drifts in
 * declination, and the field turns about the star that is guided on.
 *
 * Source of every formula: R. N. Hook 1989, J. Brit. Astron. Assoc. 99, 19.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD, RAD_PER_DEG } from "../sky/angles.ts";

/** The sky's turning, radians a minute of civil time: a turn in 1436.068 minutes. */
const SKY_RADIANS_PER_MINUTE = (2 * Math.PI) / 1436.068;

const ARCSEC_PER_ARCMIN = 60;
const ARCMIN_PER_RADIAN = DEG_PER_RAD * 60;

/**
 * The most a star drifts in declination: 0.2625″ a minute per arcminute.
 *
 * @param errorArcmin - between the mount's axis and the pole, small
 * @param seconds - how long
 * @returns arcseconds
 */
export function declinationDriftArcsec(errorArcmin: number, seconds: number): number {
  return errorArcmin * ARCSEC_PER_ARCMIN * SKY_RADIANS_PER_MINUTE * (seconds / 60);
}

/**
 * The most the field turns about the guide star.
 *
 * @param decDeg - of the guide star, short of the pole
 * @returns arcseconds of turn, which a guided exposure suffers too
 */
export function fieldTurnArcsec(errorArcmin: number, seconds: number, decDeg: number): number {
  return declinationDriftArcsec(errorArcmin, seconds) / Math.cos(decDeg * RAD_PER_DEG);
}

/**
 * The trail that turn draws at a distance from the guide star, in the same unit as the distance.
 *
 * @param distance - from the guide star, in pixels or any length on the sensor
 */
export function turnTrail(turnArcsec: number, distance: number): number {
  return (turnArcsec / ARCSEC_PER_ARCMIN / ARCMIN_PER_RADIAN) * distance;
}

/** What limits the error that a guided exposure forgives. */
export type TrailLimit = {
  /** Longest trail to put up with, micrometres on the sensor. */
  readonly trailUm: number;
  readonly exposureMinutes: number;
  readonly decDeg: number;
  readonly focalLengthMm: number;
  /** From the guide star to the farthest corner, degrees. */
  readonly guideToEdgeDeg: number;
};

/**
 * The polar error a guided exposure forgives: 45 000 S cos D/(T F A).
 *
 * @returns arcminutes
 */
export function forgivenErrorArcmin(limit: TrailLimit): number {
  const distanceUm = limit.focalLengthMm * 1000 * limit.guideToEdgeDeg * RAD_PER_DEG;
  const turnRadians = limit.trailUm / distanceUm;
  return (
    (turnRadians * Math.cos(limit.decDeg * RAD_PER_DEG) * ARCMIN_PER_RADIAN) /
    (SKY_RADIANS_PER_MINUTE * limit.exposureMinutes)
  );
}
