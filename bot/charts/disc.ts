/**
 * Discs as a view shows them: position angles and the lit side turned and mirrored,
 * and points of a globe seen from far away.
 *
 * @packageDocumentation
 */
import type { DiscView } from "../../commands/chart.ts";
import { DEG_PER_RAD, RAD_PER_DEG } from "../../core/sky/angles.ts";
import { num, type Point } from "./svg.ts";

/** Which way round a picture is shown. */
export type Turning = Pick<DiscView, "mirrored" | "turnDeg">;

export const UPRIGHT: Turning = { mirrored: false, turnDeg: 0 };

/**
 * Where a direction on the sky points on the page.
 *
 * @param positionAngleDeg - from north through east; east lies left of north
 * @returns a unit step, pixels right and down
 */
export function directionOf(positionAngleDeg: number, view: Turning): Point {
  const angle = (positionAngleDeg + view.turnDeg) * RAD_PER_DEG;
  const x = -Math.sin(angle);
  return { x: view.mirrored ? -x : x, y: -Math.cos(angle) };
}

/** A point so far from a centre in the direction of a position angle. */
export function towards(centre: Point, positionAngleDeg: number, distance: number, view: Turning): Point {
  const step = directionOf(positionAngleDeg, view);
  return { x: centre.x + step.x * distance, y: centre.y + step.y * distance };
}

/**
 * The lit part of a disc: half the limb, closed by the terminator's half ellipse.
 *
 * @param brightLimbDeg - position angle of the middle of the bright limb
 * @param illuminatedFraction - of the disc's area, in [0, 1]
 * @returns a path's data; empty when nothing is lit
 *
 * @remarks
 * The terminator is half an ellipse with the cusps as its long axis and a short half-axis
 * of `|1 − 2k|` radii. Source: J. Meeus, *Astronomical Algorithms*, chapters 41 and 48.
 */
export function litPath(
  centre: Point,
  radius: number,
  brightLimbDeg: number,
  illuminatedFraction: number,
  view: Turning,
): string {
  const lit = Math.min(1, Math.max(0, illuminatedFraction));
  if (lit < 1e-4) return "";
  const first = towards(centre, brightLimbDeg + 90, radius, view);
  const second = towards(centre, brightLimbDeg - 90, radius, view);
  const limb = directionOf(brightLimbDeg, view);
  const tilt = Math.atan2(limb.y, limb.x) * DEG_PER_RAD;
  // From the eastern cusp over the bright limb: clockwise on the page unless mirrored.
  const over = view.mirrored ? 0 : 1;
  const back = lit < 0.5 ? 1 - over : over;
  const short = Math.abs(1 - 2 * lit) * radius;
  return [
    `M${num(first.x)} ${num(first.y)}`,
    `A${num(radius)} ${num(radius)} 0 0 ${over} ${num(second.x)} ${num(second.y)}`,
    `A${num(short)} ${num(radius)} ${num(tilt)} 0 ${back} ${num(first.x)} ${num(first.y)}Z`,
  ].join("");
}

/** Whether a point of a disc lies on its lit part. */
export function isOnLit(
  point: Point,
  centre: Point,
  radius: number,
  brightLimbDeg: number,
  illuminatedFraction: number,
  view: Turning,
): boolean {
  const limb = directionOf(brightLimbDeg, view);
  const x = (point.x - centre.x) / radius;
  const y = (point.y - centre.y) / radius;
  const along = x * limb.x + y * limb.y;
  const across = x * limb.y - y * limb.x;
  return along > (1 - 2 * illuminatedFraction) * Math.sqrt(Math.max(0, 1 - across * across));
}

/** How a globe is turned towards us: the middle of its disc and its axis on the sky. */
export type GlobeAspect = {
  /** East-positive (Moon) or westward-on-the-sky (Sun) longitude at the disc's middle. */
  readonly longitudeDeg: number;
  readonly latitudeDeg: number;
  /** Position angle of the north end of the axis. */
  readonly axisDeg: number;
};

/**
 * A place on a globe as a point of its disc, seen from far away.
 *
 * @param longitudeDeg - growing towards celestial west at the disc's middle, as
 *   selenographic and heliographic longitudes do
 * @returns the point, and how far it stands towards us in radii (negative: hidden)
 */
export function globePoint(
  longitudeDeg: number,
  latitudeDeg: number,
  aspect: GlobeAspect,
  centre: Point,
  radius: number,
  view: Turning,
): Point & { readonly towardsUs: number } {
  const beyond = (longitudeDeg - aspect.longitudeDeg) * RAD_PER_DEG;
  const latitude = latitudeDeg * RAD_PER_DEG;
  const tilt = aspect.latitudeDeg * RAD_PER_DEG;
  const west = Math.cos(latitude) * Math.sin(beyond);
  const north = Math.sin(latitude) * Math.cos(tilt) - Math.cos(latitude) * Math.sin(tilt) * Math.cos(beyond);
  const towardsUs =
    Math.sin(latitude) * Math.sin(tilt) + Math.cos(latitude) * Math.cos(tilt) * Math.cos(beyond);
  const up = directionOf(aspect.axisDeg, view);
  const right = directionOf(aspect.axisDeg - 90, view);
  return {
    x: centre.x + radius * (north * up.x + west * right.x),
    y: centre.y + radius * (north * up.y + west * right.y),
    towardsUs,
  };
}
