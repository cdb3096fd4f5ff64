/**
 * A turning globe as we see it and as the Sun lights it: which place on it lies in the
 * middle of the disc, which under the Sun, and how its axis leans on the sky.
 *
 * @packageDocumentation
 */
import {
  Body,
  GeoVector,
  Observer,
  ObserverVector,
  RotateVector,
  Rotation_EQJ_EQD,
  RotationAxis,
  Vector,
} from "astronomy-engine";
import { DEG_PER_RAD, placeOfVector, RAD_PER_DEG, turnDeg, type Vector3 } from "../sky/angles.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { engineTime, MS_PER_DAY } from "../sky/time.ts";
import { cross, difference, dot, scaled, sum, vectorOf } from "../sky/vectors.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { positionAngleDeg } from "./disc-angles.ts";

/** A place on a globe: planetocentric, longitude east positive (right-handed about the north pole). */
export type GlobePlace = {
  /** In [0, 360). */
  readonly longitudeDeg: number;
  readonly latitudeDeg: number;
};

export type Globe = {
  /** The middle of the disc. */
  readonly centre: GlobePlace;
  /** Where the Sun stands in the zenith; of the Sun itself, its middle. */
  readonly subsolar: GlobePlace;
  /** Position angle of the axis's north end, from true north of date through east, in [0, 360). */
  readonly axisDeg: number;
  /** Position angle of the middle of the bright limb, likewise; of the Sun, without meaning. */
  readonly brightLimbDeg: number;
};

const LIGHT_DAYS_PER_AU = 499.004784 / 86_400;

/**
 * A globe seen from a place on the ground, or from the Earth's centre.
 *
 * @param position - `null` for the Earth's centre
 *
 * @remarks
 * Within 0.001° for the Sun, 0.03° for the Moon (its small physical librations are those of
 * the series below), 0.01° for the planets.
 *
 * Source: IAU Working Group on Cartographic Coordinates and Rotational Elements 2009
 * (Archinal et al. 2011), as the engine holds it.
 */
export function globeSeen(body: BodyName, position: GroundPosition | null, at: Date): Globe {
  const time = engineTime(at);
  const seen = GeoVector(Body[body], time, true);
  const towards = difference(vectorOf(seen), observerVector(position, at));
  const sun = body === "Sun" ? null : vectorOf(GeoVector(Body.Sun, time, true));
  const distance = Math.hypot(...towards);
  const left = new Date(at.getTime() - Math.round(distance * LIGHT_DAYS_PER_AU * MS_PER_DAY));
  const axes = axesOf(body, left);
  const toObserver = difference([0, 0, 0], towards);
  const toSun = sun === null ? toObserver : difference(sun, vectorOf(seen));

  const turn = Rotation_EQJ_EQD(time);
  const ofDate = ([x, y, z]: Vector3) => {
    const turned = RotateVector(turn, new Vector(x, y, z, time));
    return placeOfVector([turned.x, turned.y, turned.z]);
  };
  const place = ofDate(towards);
  return {
    centre: placeOn(axes, toObserver),
    subsolar: placeOn(axes, toSun),
    axisDeg: positionAngleDeg(place, ofDate(axes.pole)),
    brightLimbDeg:
      sun === null ? 0 : positionAngleDeg(place, ofDate(difference(sun, observerVector(position, at)))),
  };
}

/** A globe's own axes in J2000: its pole, its prime meridian on the equator, and 90° east of that. */
export type GlobeAxes = { readonly pole: Vector3; readonly prime: Vector3; readonly east: Vector3 };

/** How a body stands in space at an instant. */
export function axesOf(body: BodyName, at: Date): GlobeAxes {
  const axis = RotationAxis(Body[body], engineTime(at));
  const node = axis.ra * 15 * RAD_PER_DEG;
  const pole = vectorOf(axis.north);
  // Where the body's equator climbs through the Earth's; the prime meridian is `spin` ahead of it.
  const start: Vector3 = [-Math.sin(node), Math.cos(node), 0];
  const ahead = cross(pole, start);
  const spin = axis.spin * RAD_PER_DEG;
  return {
    pole,
    prime: sum(scaled(start, Math.cos(spin)), scaled(ahead, Math.sin(spin))),
    east: sum(scaled(start, -Math.sin(spin)), scaled(ahead, Math.cos(spin))),
  };
}

/** The place on a globe under a direction from its centre. */
export function placeOn(axes: GlobeAxes, direction: Vector3): GlobePlace {
  const length = Math.hypot(...direction);
  return {
    longitudeDeg: turnDeg(Math.atan2(dot(direction, axes.east), dot(direction, axes.prime)) * DEG_PER_RAD),
    latitudeDeg: Math.asin(dot(direction, axes.pole) / length) * DEG_PER_RAD,
  };
}

/** From the Earth's centre, J2000, AU. */
function observerVector(position: GroundPosition | null, at: Date): Vector3 {
  if (position === null) return [0, 0, 0];
  const observer = new Observer(position.latitudeDeg, position.longitudeDeg, position.elevationMetres);
  return vectorOf(ObserverVector(engineTime(at), observer, false));
}
