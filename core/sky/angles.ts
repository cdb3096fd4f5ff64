/**
 * Angles in degrees and directions as unit vectors.
 *
 * @packageDocumentation
 */

export const RAD_PER_DEG = Math.PI / 180;
export const DEG_PER_RAD = 180 / Math.PI;

/** x, y, z; of length 1 where a direction is meant. */
export type Vector3 = readonly [x: number, y: number, z: number];

/** A right ascension and declination; of which equinox, the function that gives it says. */
export type EquatorialPlace = {
  /** Degrees, in [0, 360). */
  readonly raDeg: number;
  /** Degrees, in [-90, 90]. */
  readonly decDeg: number;
};

/** The same angle in [0, 360). */
export function turnDeg(angleDeg: number): number {
  const turned = ((angleDeg % 360) + 360) % 360;
  // A tiny negative angle rounds up to a whole turn.
  return turned === 360 ? 0 : turned;
}

/** The same angle in [-180, 180). */
export function halfTurnDeg(angleDeg: number): number {
  return turnDeg(angleDeg + 180) - 180;
}

/** The place a vector of any length points at. */
export function placeOfVector([x, y, z]: Vector3): EquatorialPlace {
  return {
    raDeg: turnDeg(Math.atan2(y, x) * DEG_PER_RAD),
    decDeg: Math.atan2(z, Math.hypot(x, y)) * DEG_PER_RAD,
  };
}

/**
 * The angle between two vectors of any length, exact for the smallest and the largest.
 *
 * @returns degrees, in [0, 180]
 */
export function angleBetweenDeg(a: Vector3, b: Vector3): number {
  const crossX = a[1] * b[2] - a[2] * b[1];
  const crossY = a[2] * b[0] - a[0] * b[2];
  const crossZ = a[0] * b[1] - a[1] * b[0];
  const dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  return Math.atan2(Math.hypot(crossX, crossY, crossZ), dot) * DEG_PER_RAD;
}
