/**
 * Vectors of three numbers: sums, products, lengths.
 *
 * @packageDocumentation
 */
import type { Vector3 } from "./angles.ts";

/** Scalar product. */
export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** Right-handed: x × y = z. */
export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** One after the other. */
export function sum(a: Vector3, b: Vector3): Vector3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

/** From the tip of the second to that of the first. */
export function difference(a: Vector3, b: Vector3): Vector3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** So many times as long. */
export function scaled(a: Vector3, factor: number): Vector3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

/** The same direction at length 1. */
export function unit(a: Vector3): Vector3 {
  return scaled(a, 1 / Math.hypot(...a));
}

/** Of anything that has x, y and z. */
export function vectorOf(from: { readonly x: number; readonly y: number; readonly z: number }): Vector3 {
  return [from.x, from.y, from.z];
}
