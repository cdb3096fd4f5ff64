/**
 * How an altazimuth mount turns the field, and how long a sub may last for it.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "../sky/angles.ts";

/** The sky's turning, arcseconds a second of civil time. */
const SKY_ARCSEC_PER_SECOND = (360 * 3600) / 86_164.0905;

const ARCSEC_PER_RADIAN = 206_264.806;

/**
 * How fast the field turns: the rate of the parallactic angle.
 *
 * @param azimuthDeg - from north through east
 * @returns arcseconds of turn a second, positive while the angle grows; without bound at the zenith
 *
 * @remarks
 * Source: the derivative of the parallactic angle (Meeus, Astronomical Algorithms,
 * 2nd ed., chapter 14) in time: ω cos φ cos A/cos h, A from the north, sign reversed.
 */
export function fieldTurnRate(latitudeDeg: number, altitudeDeg: number, azimuthDeg: number): number {
  return (
    (-SKY_ARCSEC_PER_SECOND * Math.cos(latitudeDeg * RAD_PER_DEG) * Math.cos(azimuthDeg * RAD_PER_DEG)) /
    Math.cos(altitudeDeg * RAD_PER_DEG)
  );
}

/**
 * The longest sub before a star in the corner trails.
 *
 * @param rate - arcseconds of turn a second, either sign
 * @param cornerPx - from the centre of the field to its corner, pixels
 * @param trailPx - longest trail to put up with, pixels
 * @returns seconds; infinite when the field does not turn
 */
export function longestUnturnedSeconds(rate: number, cornerPx: number, trailPx: number): number {
  return (trailPx / cornerPx) * (ARCSEC_PER_RADIAN / Math.abs(rate));
}
