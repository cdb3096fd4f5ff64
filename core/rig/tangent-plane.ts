/**
 * The sky as a camera sees it: the plane that touches the sphere at the target.
 *
 * Coordinates on the plane are degrees (57.3 times the tangent), ξ towards east and
 * η towards north at the point of contact. Places are of one equinox, J2000 throughout.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD, type EquatorialPlace, placeOfVector, RAD_PER_DEG, turnDeg } from "../sky/angles.ts";
import { unitVector } from "../sky/place.ts";

export type PlanePoint = { readonly xiDeg: number; readonly etaDeg: number };

/** Directions of east and north at a place; at a pole, those of its right ascension's meridian. */
function axesAt({ raDeg, decDeg }: EquatorialPlace) {
  const ra = raDeg * RAD_PER_DEG;
  const dec = decDeg * RAD_PER_DEG;
  return {
    east: [-Math.sin(ra), Math.cos(ra), 0],
    north: [-Math.sin(dec) * Math.cos(ra), -Math.sin(dec) * Math.sin(ra), Math.cos(dec)],
  } as const;
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, axis) => sum + value * (other[axis] ?? 0), 0);
}

/**
 * The gnomonic projection of a place.
 *
 * @returns `null` for a place 90° or further from the contact, which the plane does not reach
 */
export function toPlane(contact: EquatorialPlace, place: EquatorialPlace): PlanePoint | null {
  const direction = unitVector(place.raDeg, place.decDeg);
  const along = dot(direction, unitVector(contact.raDeg, contact.decDeg));
  if (along <= 1e-9) return null;
  const { east, north } = axesAt(contact);
  return {
    xiDeg: (dot(direction, east) / along) * DEG_PER_RAD,
    etaDeg: (dot(direction, north) / along) * DEG_PER_RAD,
  };
}

/** The direction of a point on the plane, not of length 1. */
function directionOf(contact: EquatorialPlace, { xiDeg, etaDeg }: PlanePoint) {
  const { east, north } = axesAt(contact);
  const centre = unitVector(contact.raDeg, contact.decDeg);
  const along = (axis: 0 | 1 | 2) =>
    centre[axis] + xiDeg * RAD_PER_DEG * east[axis] + etaDeg * RAD_PER_DEG * north[axis];
  return [along(0), along(1), along(2)] as const;
}

/** The place of a point on the plane; valid to the poles and across 0h. */
export function fromPlane(contact: EquatorialPlace, point: PlanePoint): EquatorialPlace {
  return placeOfVector(directionOf(contact, point));
}

/**
 * The position angle, at a point's own place, of a direction drawn on the plane.
 *
 * @param planeAngleDeg - the direction on the plane, from north (η) through east (ξ)
 * @returns from the north of that place through east, degrees in [0, 360)
 *
 * @remarks
 * Away from the contact north turns against the plane: 3° aside at declination 61° by 5.4°.
 */
export function positionAngleAt(contact: EquatorialPlace, point: PlanePoint, planeAngleDeg: number): number {
  const { east, north } = axesAt(contact);
  const sine = Math.sin(planeAngleDeg * RAD_PER_DEG);
  const cosine = Math.cos(planeAngleDeg * RAD_PER_DEG);
  const step = east.map((value, axis) => sine * value + cosine * (north[axis] ?? 0));
  const there = axesAt(fromPlane(contact, point));
  return turnDeg(Math.atan2(dot(step, there.east), dot(step, there.north)) * DEG_PER_RAD);
}
