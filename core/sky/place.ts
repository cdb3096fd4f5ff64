/**
 * Places on the sphere: apparent places of date and separations.
 *
 * @packageDocumentation
 */
import { Body, C_AUDAY, HelioState, RotateVector, Rotation_EQJ_EQD, Vector } from "astronomy-engine";
import {
  angleBetweenDeg,
  type EquatorialPlace,
  placeOfVector,
  RAD_PER_DEG,
  turnDeg,
  type Vector3,
} from "./angles.ts";
import { engineTime, yearsSinceJ2000 } from "./time.ts";

/** Arcseconds a year; in right ascension already times the cosine of the declination. */
export type ProperMotion = { readonly raArcsec: number; readonly decArcsec: number };

const DEG_PER_ARCSEC = 1 / 3600;

/** The direction of a place, in the axes of its own equator and equinox. */
export function unitVector(raDeg: number, decDeg: number): Vector3 {
  const ra = raDeg * RAD_PER_DEG;
  const dec = decDeg * RAD_PER_DEG;
  return [Math.cos(dec) * Math.cos(ra), Math.cos(dec) * Math.sin(ra), Math.sin(dec)];
}

/**
 * A J2000 place moved by its proper motion to an instant, still in J2000 axes.
 *
 * Along the tangent plane, so it holds beside the pole too; radial motion is left out.
 */
export function movedPlace(
  raDeg: number,
  decDeg: number,
  at: Date,
  properMotion: ProperMotion | null | undefined,
): EquatorialPlace {
  if (!properMotion) return { raDeg: turnDeg(raDeg), decDeg };
  const years = yearsSinceJ2000(at);
  const east = properMotion.raArcsec * DEG_PER_ARCSEC * RAD_PER_DEG * years;
  const north = properMotion.decArcsec * DEG_PER_ARCSEC * RAD_PER_DEG * years;
  const ra = raDeg * RAD_PER_DEG;
  const dec = decDeg * RAD_PER_DEG;
  const [x, y, z] = unitVector(raDeg, decDeg);
  return placeOfVector([
    x - east * Math.sin(ra) - north * Math.sin(dec) * Math.cos(ra),
    y + east * Math.cos(ra) - north * Math.sin(dec) * Math.sin(ra),
    z + north * Math.cos(dec),
  ]);
}

/**
 * Apparent place of date: proper motion, annual aberration, precession and nutation.
 *
 * @param raDeg - J2000
 * @param decDeg - J2000
 * @returns of the true equator and equinox of date, geocentric; within 1″ of SOFA
 */
export function placeOfDate(
  raDeg: number,
  decDeg: number,
  at: Date,
  properMotion?: ProperMotion | null,
): EquatorialPlace {
  const time = engineTime(at);
  const moved = movedPlace(raDeg, decDeg, at, properMotion);
  const [x, y, z] = unitVector(moved.raDeg, moved.decDeg);
  const earth = HelioState(Body.Earth, time);
  const seen = new Vector(x + earth.vx / C_AUDAY, y + earth.vy / C_AUDAY, z + earth.vz / C_AUDAY, time);
  const ofDate = RotateVector(Rotation_EQJ_EQD(time), seen);
  return placeOfVector([ofDate.x, ofDate.y, ofDate.z]);
}

/**
 * The angle between two places of one equinox.
 *
 * @returns degrees, in [0, 180]
 */
export function separationDeg(a: EquatorialPlace, b: EquatorialPlace): number {
  return angleBetweenDeg(unitVector(a.raDeg, a.decDeg), unitVector(b.raDeg, b.decDeg));
}
