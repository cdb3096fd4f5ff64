/**
 * How much air a line of sight crosses, against straight up.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "../sky/angles.ts";

/**
 * Relative air mass of an object.
 *
 * @param altitudeDeg - airless altitude in [0, 90]; below the horizon the value there is kept, so
 *   that sums over a track stay finite
 * @returns 0.9997 at the zenith, 37.92 at the horizon
 *
 * @remarks
 * Error: under 0.07 % from 1° upward (ibid.), for a standard atmosphere.
 *
 * Source: F. Kasten & A. T. Young 1989, Applied Optics 28, 4735.
 */
export function airmass(altitudeDeg: number): number {
  const altitude = Math.max(0, altitudeDeg);
  return 1 / (Math.sin(altitude * RAD_PER_DEG) + 0.50572 * (altitude + 6.07995) ** -1.6364);
}

/**
 * Path of scattered light through the air, against straight up: for glow and moonlight.
 *
 * @param zenithDistanceDeg - in [0, 90]; beyond, the horizon's 5 is kept
 *
 * @remarks
 * Scattered light reaches us from a layer of finite depth, so this stays at 5 on the
 * horizon, where the air mass of an object goes to 38.
 *
 * Source: K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033, equation 3.
 */
export function scatteringPath(zenithDistanceDeg: number): number {
  return scatteringPathAtSine(Math.cos(Math.min(90, Math.max(0, zenithDistanceDeg)) * RAD_PER_DEG));
}

/** {@link scatteringPath} for loops that hold the sine of the altitude already. */
export function scatteringPathAtSine(sineOfAltitude: number): number {
  const sine = Math.max(0, sineOfAltitude);
  return 1 / Math.sqrt(1 - 0.96 * (1 - sine * sine));
}
