/**
 * The area that an ellipse and a frame share, turned against each other by any angle.
 *
 * Both are centred on one point of the tangent plane.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "../sky/angles.ts";

/** Full lengths of the axes; the angle is the major axis's, north through east. */
export type Ellipse = {
  readonly majorDeg: number;
  readonly minorDeg: number;
  readonly positionAngleDeg: number;
};

/** Full lengths of the sides; the angle is that of the frame's up. */
export type Frame = {
  readonly widthDeg: number;
  readonly heightDeg: number;
  readonly positionAngleDeg: number;
};

type Point = readonly [number, number];

/** Signed area, within the unit circle, of the triangle from its centre to a segment's ends. */
function wedgeInUnitCircle(from: Point, to: Point): number {
  const cross = from[0] * to[1] - from[1] * to[0];
  const step: Point = [to[0] - from[0], to[1] - from[1]];
  const length2 = step[0] ** 2 + step[1] ** 2;
  if (length2 === 0) return 0;
  const sector = (one: Point, other: Point) =>
    Math.atan2(one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1]) / 2;
  const half = from[0] * step[0] + from[1] * step[1];
  const discriminant = half * half - length2 * (from[0] ** 2 + from[1] ** 2 - 1);
  if (discriminant <= 0) return sector(from, to);
  const root = Math.sqrt(discriminant);
  const enter = Math.min(1, Math.max(0, (-half - root) / length2));
  const leave = Math.min(1, Math.max(0, (-half + root) / length2));
  if (leave <= enter) return sector(from, to);
  const at = (share: number): Point => [from[0] + share * step[0], from[1] + share * step[1]];
  return sector(from, at(enter)) + (cross * (leave - enter)) / 2 + sector(at(leave), to);
}

/**
 * Area of an ellipse inside a frame.
 *
 * @returns square degrees of the plane; exact
 */
export function ellipseAreaInFrame(ellipse: Ellipse, frame: Frame): number {
  const a = ellipse.majorDeg / 2;
  const b = ellipse.minorDeg / 2;
  const turn = (frame.positionAngleDeg - ellipse.positionAngleDeg) * RAD_PER_DEG;
  // The frame's corners in the ellipse's axes, squeezed until the ellipse is the unit circle.
  const corners = [
    [-1, -1],
    [-1, 1],
    [1, 1],
    [1, -1],
  ].map(([across = 0, up = 0]): Point => {
    const x = (across * frame.widthDeg) / 2;
    const y = (up * frame.heightDeg) / 2;
    return [(y * Math.cos(turn) - x * Math.sin(turn)) / a, (y * Math.sin(turn) + x * Math.cos(turn)) / b];
  });
  const area = corners.reduce((sum, corner, index) => {
    const next = corners[(index + 1) % corners.length] ?? corner;
    return sum + wedgeInUnitCircle(corner, next);
  }, 0);
  return Math.abs(area) * a * b;
}

/** Half the ellipse's extent along the frame's width and along its height. */
export function halfExtents(
  ellipse: Ellipse,
  frameAngleDeg: number,
): { readonly acrossDeg: number; readonly upDeg: number } {
  const a = ellipse.majorDeg / 2;
  const b = ellipse.minorDeg / 2;
  const turn = (frameAngleDeg - ellipse.positionAngleDeg) * RAD_PER_DEG;
  return {
    acrossDeg: Math.hypot(a * Math.sin(turn), b * Math.cos(turn)),
    upDeg: Math.hypot(a * Math.cos(turn), b * Math.sin(turn)),
  };
}
