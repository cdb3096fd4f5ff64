/**
 * Where a body of the solar system stands, from the Earth's centre, at any instant.
 *
 * The engine is asked at the nodes of a fixed grid and the places between are
 * interpolated: a hundred times quicker, and within 0.001″ of asking it each time.
 * The nodes are facts of the sky, the same for every site, and are remembered.
 *
 * @packageDocumentation
 */
import { Body, GeoVector, RotateVector, Rotation_EQJ_EQD, SiderealTime } from "astronomy-engine";
import type { BodyName } from "../targets/sky-object.ts";
import { turnDeg } from "./angles.ts";
import { engineTime, J2000_MS, MS_PER_DAY } from "./time.ts";

/** Of the true equator and equinox of date, astronomical units, and the sky's turn. */
export type GeocentricPlace = {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** Greenwich apparent sidereal time, degrees, of any turn. */
  readonly siderealDeg: number;
};

const HOURS_BETWEEN_NODES: Readonly<Record<BodyName, number>> = {
  Sun: 24,
  Moon: 6,
  Mercury: 24,
  Venus: 24,
  Mars: 24,
  Jupiter: 24,
  Saturn: 24,
  Uranus: 24,
  Neptune: 24,
};

/** Nodes that a place is interpolated from, three on each side. */
const NODES = 6;
const VALUES = 4;

/** About six years of the Moon; then the memory is emptied. */
const REMEMBERED_NODES = 10_000;
const remembered = new Map<string, Float64Array>();

/** How far the Earth has turned, degrees of any turn: the IAU 2000 Earth rotation angle. */
function earthRotationDeg(utMs: number): number {
  const days = (utMs - J2000_MS) / MS_PER_DAY;
  // The whole turns are dropped first, or the angle loses digits.
  return 360 * (0.779057273264 + 0.00273781191135448 * days + (days % 1));
}

/** x, y, z of date, and how far sidereal time is ahead of the Earth rotation angle. */
function nodeAt(body: BodyName, index: number, nodeMs: number): Float64Array {
  const key = `${body} ${index}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const at = new Date(J2000_MS + index * nodeMs);
  const time = engineTime(at);
  const place = RotateVector(Rotation_EQJ_EQD(time), GeoVector(Body[body], time, true));
  const ahead = turnDeg(SiderealTime(time) * 15 - earthRotationDeg(at.getTime()) + 180) - 180;
  const node = Float64Array.of(place.x, place.y, place.z, ahead);
  if (remembered.size >= REMEMBERED_NODES) remembered.clear();
  remembered.set(key, node);
  return node;
}

/** Lagrange's weights for nodes at −2 … 3, at a fraction of the way from node 0 to node 1. */
function lagrangeWeights(fraction: number): readonly number[] {
  const weights: number[] = [];
  for (let node = -2; node <= 3; node++) {
    let weight = 1;
    for (let other = -2; other <= 3; other++) {
      if (other !== node) weight *= (fraction - other) / (node - other);
    }
    weights.push(weight);
  }
  return weights;
}

/**
 * A body's apparent geocentric place (light time and aberration included), as a
 * function of the instant in epoch milliseconds, fractions allowed.
 */
export function geocentricTrack(body: BodyName): (utMs: number) => GeocentricPlace {
  const nodeMs = (HOURS_BETWEEN_NODES[body] * MS_PER_DAY) / 24;
  const window = new Float64Array(NODES * VALUES);
  let windowBase = Number.NaN;

  return (utMs) => {
    const position = (utMs - J2000_MS) / nodeMs;
    const base = Math.floor(position);
    if (base !== windowBase) {
      for (let node = 0; node < NODES; node++) {
        window.set(nodeAt(body, base - 2 + node, nodeMs), node * VALUES);
      }
      windowBase = base;
    }
    const weights = lagrangeWeights(position - base);
    let x = 0;
    let y = 0;
    let z = 0;
    let ahead = 0;
    for (let node = 0; node < NODES; node++) {
      const weight = weights[node] ?? 0;
      const from = node * VALUES;
      x += weight * (window[from] ?? 0);
      y += weight * (window[from + 1] ?? 0);
      z += weight * (window[from + 2] ?? 0);
      ahead += weight * (window[from + 3] ?? 0);
    }
    return { x, y, z, siderealDeg: earthRotationDeg(utMs) + ahead };
  };
}
