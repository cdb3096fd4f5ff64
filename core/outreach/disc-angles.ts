/**
 * Position angles on the sky: from north through east, as a disc is drawn.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD, type EquatorialPlace, halfTurnDeg, RAD_PER_DEG, turnDeg } from "../sky/angles.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { localSiderealDeg } from "../sky/time.ts";

/**
 * In which direction one place lies from another, both of one equinox.
 *
 * @returns degrees from north through east, in [0, 360); 0 where the two are one
 */
export function positionAngleDeg(from: EquatorialPlace, to: EquatorialPlace): number {
  const ahead = (to.raDeg - from.raDeg) * RAD_PER_DEG;
  const fromDec = from.decDeg * RAD_PER_DEG;
  const toDec = to.decDeg * RAD_PER_DEG;
  const east = Math.cos(toDec) * Math.sin(ahead);
  const north = Math.sin(toDec) * Math.cos(fromDec) - Math.cos(toDec) * Math.sin(fromDec) * Math.cos(ahead);
  return turnDeg(Math.atan2(east, north) * DEG_PER_RAD);
}

/**
 * The parallactic angle: the position angle in which the zenith lies.
 *
 * @param place - apparent, of date
 * @returns degrees, in [-180, 180): positive west of the meridian, for the northern hemisphere
 *
 * @remarks
 * A picture turned by minus this angle has the zenith at its top. Without meaning within
 * an arcminute of the zenith.
 *
 * Source: Meeus, *Astronomical Algorithms*, 2nd ed., formula 14.1.
 */
export function parallacticAngleDeg(position: GroundPosition, place: EquatorialPlace, at: Date): number {
  const hourAngle = (localSiderealDeg(at, position.longitudeDeg) - place.raDeg) * RAD_PER_DEG;
  const latitude = position.latitudeDeg * RAD_PER_DEG;
  const dec = place.decDeg * RAD_PER_DEG;
  const east = Math.cos(latitude) * Math.sin(hourAngle);
  const north = Math.sin(latitude) * Math.cos(dec) - Math.cos(latitude) * Math.sin(dec) * Math.cos(hourAngle);
  return halfTurnDeg(Math.atan2(east, north) * DEG_PER_RAD);
}
