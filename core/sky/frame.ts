/**
 * The sky over a site at one instant: from J2000 places to altitude and azimuth.
 *
 * Precession, nutation and sidereal time are one rotation; the observer's velocity
 * is one shift. Altitudes are airless. Stars and deep-sky objects come out within
 * 1 arcsecond of the IAU SOFA routines; light bending beside the Sun, parallax and
 * polar motion are left out.
 *
 * @packageDocumentation
 */
import { Body, C_AUDAY, HelioState, Observer, Rotation_EQJ_HOR } from "astronomy-engine";
import { DEG_PER_RAD, halfTurnDeg, RAD_PER_DEG, turnDeg, type Vector3 } from "./angles.ts";
import { unitVector } from "./place.ts";
import { engineTime, localSiderealDeg } from "./time.ts";

/** Where on the ground; a site is one. */
export type GroundPosition = {
  /** Degrees, north positive. */
  readonly latitudeDeg: number;
  /** Degrees, east positive. */
  readonly longitudeDeg: number;
  readonly elevationMetres: number;
};

export type HorizontalPlace = {
  /** True (airless) degrees above the level horizon. */
  readonly altitudeDeg: number;
  /** Degrees from north through east, in [0, 360). */
  readonly azimuthDeg: number;
};

export type SkyFrame = {
  readonly at: Date;
  /** J2000 to horizon, by rows: north, east, up. */
  readonly rotation: Float64Array;
  /** The observer's velocity over that of light, J2000 axes: added to a direction, it is aberration. */
  readonly aberration: Vector3;
  /** Local apparent sidereal time, degrees in [0, 360). */
  readonly siderealDeg: number;
};

/** Speed of the Earth's surface at the equator over that of light: diurnal aberration, 0.32″. */
const EQUATOR_SPEED_OF_LIGHT = 0.4651 / 299_792.458;

/** The sky over a place at an instant. */
export function skyFrame(position: GroundPosition, at: Date): SkyFrame {
  const time = engineTime(at);
  const observer = new Observer(position.latitudeDeg, position.longitudeDeg, position.elevationMetres);
  // The engine's matrix has the input's axes as its rows, and its second axis is west.
  const [fromX, fromY, fromZ] = Rotation_EQJ_HOR(time, observer).rot as [number[], number[], number[]];
  const row = (axis: number, sign: number): Vector3 => [
    sign * (fromX[axis] ?? 0),
    sign * (fromY[axis] ?? 0),
    sign * (fromZ[axis] ?? 0),
  ];
  const east = row(1, -1);
  const earth = HelioState(Body.Earth, time);
  const spin = EQUATOR_SPEED_OF_LIGHT * Math.cos(position.latitudeDeg * RAD_PER_DEG);
  return {
    at,
    rotation: Float64Array.of(...row(0, 1), ...east, ...row(2, 1)),
    aberration: [
      earth.vx / C_AUDAY + spin * east[0],
      earth.vy / C_AUDAY + spin * east[1],
      earth.vz / C_AUDAY + spin * east[2],
    ],
    siderealDeg: localSiderealDeg(at, position.longitudeDeg),
  };
}

/**
 * A J2000 direction as the moving Earth sees it, still in J2000 axes.
 *
 * To first order in the velocity: within 0.005″. Good for a whole night: the shift
 * turns by 0.4″ a day at most.
 */
export function aberrated(frame: SkyFrame, [x, y, z]: Vector3): Vector3 {
  const shiftedX = x + frame.aberration[0];
  const shiftedY = y + frame.aberration[1];
  const shiftedZ = z + frame.aberration[2];
  const length = Math.hypot(shiftedX, shiftedY, shiftedZ);
  return [shiftedX / length, shiftedY / length, shiftedZ / length];
}

/**
 * Altitude and azimuth of a J2000 place.
 *
 * @param raDeg - J2000, moved by proper motion beforehand where it matters
 * @param decDeg - likewise
 */
export function horizontalOf(frame: SkyFrame, raDeg: number, decDeg: number): HorizontalPlace {
  const [x, y, z] = aberrated(frame, unitVector(raDeg, decDeg));
  const turn = frame.rotation;
  const along = (row: number) => (turn[row] ?? 0) * x + (turn[row + 1] ?? 0) * y + (turn[row + 2] ?? 0) * z;
  const north = along(0);
  const east = along(3);
  return {
    altitudeDeg: Math.atan2(along(6), Math.hypot(north, east)) * DEG_PER_RAD,
    azimuthDeg: turnDeg(Math.atan2(east, north) * DEG_PER_RAD),
  };
}

/**
 * Sine of the altitude of a J2000 unit vector: three multiply-adds, for loops over
 * the whole catalogue.
 *
 * Give it directions `aberrated` once for the night; without that it is up to 21″ off.
 */
export function sineOfAltitude(frame: SkyFrame, x: number, y: number, z: number): number {
  const turn = frame.rotation;
  return (turn[6] ?? 0) * x + (turn[7] ?? 0) * y + (turn[8] ?? 0) * z;
}

/**
 * Hour angle of a right ascension of date.
 *
 * @returns degrees, in [-180, 180), west of the meridian positive
 */
export function hourAngleDeg(frame: SkyFrame, raOfDateDeg: number): number {
  return halfTurnDeg(frame.siderealDeg - raOfDateDeg);
}
