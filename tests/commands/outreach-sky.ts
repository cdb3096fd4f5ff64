/**
 * Where things stand, asked of the general library `astronomy-engine` by itself, for checking plans.
 *
 * @packageDocumentation
 */
import {
  Body,
  Equator,
  Horizon,
  MakeTime,
  Observer,
  RotateVector,
  Rotation_EQJ_EQD,
  SphereFromVector,
  Spherical,
  VectorFromSphere,
} from "astronomy-engine";
import type { Site, SkylinePoint } from "../../core/site.ts";
import type { Target } from "../../core/targets/sky-object.ts";

export type Placed = { readonly altitudeDeg: number; readonly azimuthDeg: number };

/** Airless altitude and azimuth; J2000 places by precession and nutation alone (20″ of aberration left out). */
export function placeOf(target: Target, site: Site, at: Date): Placed {
  const time = MakeTime(at);
  const observer = new Observer(site.latitudeDeg, site.longitudeDeg, site.elevationMetres);
  if (target.kind === "body") {
    const { ra, dec } = Equator(Body[target.body], time, observer, true, true);
    return horizontal(Horizon(time, observer, ra, dec));
  }
  const { raDeg, decDeg } = target.kind === "object" ? target.object : target;
  const vector = VectorFromSphere(new Spherical(decDeg, raDeg, 1), time);
  const ofDate = SphereFromVector(RotateVector(Rotation_EQJ_EQD(time), vector));
  return horizontal(Horizon(time, observer, ofDate.lon / 15, ofDate.lat));
}

function horizontal({ altitude, azimuth }: { altitude: number; azimuth: number }): Placed {
  return { altitudeDeg: altitude, azimuthDeg: azimuth };
}

export function sunAltitude(site: Site, at: Date): number {
  return placeOf({ kind: "body", body: "Sun" }, site, at).altitudeDeg;
}

/** Between two directions, degrees. */
export function apartDeg(one: Placed, other: Placed): number {
  const rad = Math.PI / 180;
  const cosine =
    Math.sin(one.altitudeDeg * rad) * Math.sin(other.altitudeDeg * rad) +
    Math.cos(one.altitudeDeg * rad) *
      Math.cos(other.altitudeDeg * rad) *
      Math.cos((one.azimuthDeg - other.azimuthDeg) * rad);
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / rad;
}

/** The profile's height, by straight lines between its corners. */
export function profileDeg(skyline: readonly SkylinePoint[], azimuthDeg: number): number {
  if (skyline.length === 0) return 0;
  const turns = [-360, 0, 360].flatMap((turn) =>
    skyline.map((point) => ({ x: point.azimuthDeg + turn, y: point.altitudeDeg })),
  );
  const after = turns.findIndex(({ x }) => x >= azimuthDeg);
  const [left, right] = [turns[after - 1], turns[after]];
  if (left === undefined || right === undefined) throw new Error("the profile does not go round");
  return left.y + ((right.y - left.y) * (azimuthDeg - left.x)) / (right.x - left.x || 1);
}
