/**
 * Oppositions, conjunctions with the Sun and greatest elongations.
 *
 * @packageDocumentation
 */
import {
  Body,
  GeoVector,
  RotateVector,
  Rotation_EQJ_ECT,
  SearchMaxElongation,
  SearchRelativeLongitude,
  SphereFromVector,
  SunPosition,
} from "astronomy-engine";
import { angleBetweenDeg, halfTurnDeg } from "../sky/angles.ts";
import { engineTime, MS_PER_DAY } from "../sky/time.ts";
import { vectorOf } from "../sky/vectors.ts";
import type { PlanetName } from "./planets.ts";

export type PlanetEventKind =
  | "opposition"
  /** Of an outer planet, behind the Sun. */
  | "conjunction"
  | "inferior-conjunction"
  | "superior-conjunction"
  | "greatest-elongation-east"
  | "greatest-elongation-west";

export type PlanetEvent = {
  readonly planet: PlanetName;
  readonly kind: PlanetEventKind;
  readonly at: Date;
  /** From the Sun, degrees, geocentric. */
  readonly elongationDeg: number;
};

/** The heliocentric longitude between Earth and planet at which each happens, and the apparent one. */
type Meeting = {
  readonly kind: PlanetEventKind;
  readonly relativeDeg: number;
  readonly aheadDeg: number;
};

const OUTER: readonly Meeting[] = [
  { kind: "opposition", relativeDeg: 0, aheadDeg: 180 },
  { kind: "conjunction", relativeDeg: 180, aheadDeg: 0 },
];

const INNER: readonly Meeting[] = [
  { kind: "inferior-conjunction", relativeDeg: 0, aheadDeg: 0 },
  { kind: "superior-conjunction", relativeDeg: 180, aheadDeg: 0 },
];

/** After one event the next of its kind is at least this far. */
const APART_DAYS = 20;

/**
 * A planet's events within a span, in order.
 *
 * @remarks
 * Oppositions and conjunctions as the *Astronomical Almanac* has them: apparent longitudes
 * 180° and 0° apart. Greatest elongations are the greatest angle from the Sun. All within
 * 10 minutes of Swiss Ephemeris.
 */
export function planetEvents(planet: PlanetName, from: Date, to: Date): PlanetEvent[] {
  const isInner = planet === "Mercury" || planet === "Venus";
  const found = (isInner ? INNER : OUTER).flatMap((meeting) => meetings(planet, meeting, from, to));
  if (isInner) found.push(...elongations(planet, from, to));
  return found.sort((one, other) => one.at.getTime() - other.at.getTime());
}

function meetings(planet: PlanetName, meeting: Meeting, from: Date, to: Date): PlanetEvent[] {
  const found: PlanetEvent[] = [];
  // The engine's is the meeting of heliocentric longitudes, some hours from the apparent one.
  let start = new Date(from.getTime() - 2 * MS_PER_DAY);
  while (start < to) {
    const near = SearchRelativeLongitude(Body[planet], meeting.relativeDeg, engineTime(start)).date;
    const at = settled(planet, meeting.aheadDeg, near);
    if (at >= from && at < to) {
      found.push({ planet, kind: meeting.kind, at, elongationDeg: elongationDeg(planet, at) });
    }
    if (near >= to) break;
    start = new Date(near.getTime() + APART_DAYS * MS_PER_DAY);
  }
  return found;
}

/** The instant at which the apparent longitudes are so far apart: secant steps from a near one. */
function settled(planet: PlanetName, aheadDeg: number, near: Date): Date {
  const miss = (ms: number) => halfTurnDeg(longitudeAheadDeg(planet, new Date(ms)) - aheadDeg);
  let before = near.getTime();
  let missBefore = miss(before);
  let now = before + MS_PER_DAY / 4;
  for (let step = 0; step < 8; step++) {
    const missNow = miss(now);
    if (missNow === missBefore) break;
    const next = now - (missNow * (now - before)) / (missNow - missBefore);
    [before, missBefore, now] = [now, missNow, next];
    if (Math.abs(now - before) < 1000) break;
  }
  return new Date(Math.round(now));
}

/** Apparent ecliptic longitude of date of a planet, less the Sun's. */
function longitudeAheadDeg(planet: PlanetName, at: Date): number {
  const time = engineTime(at);
  const ofDate = RotateVector(Rotation_EQJ_ECT(time), GeoVector(Body[planet], time, true));
  return SphereFromVector(ofDate).lon - SunPosition(time).elon;
}

function elongationDeg(planet: PlanetName, at: Date): number {
  const time = engineTime(at);
  return angleBetweenDeg(
    vectorOf(GeoVector(Body[planet], time, true)),
    vectorOf(GeoVector(Body.Sun, time, true)),
  );
}

function elongations(planet: PlanetName, from: Date, to: Date): PlanetEvent[] {
  const found: PlanetEvent[] = [];
  let start = from;
  while (start < to) {
    const event = SearchMaxElongation(Body[planet], engineTime(start));
    const at = event.time.date;
    if (at >= to) break;
    const kind = event.visibility === "evening" ? "greatest-elongation-east" : "greatest-elongation-west";
    found.push({ planet, kind, at, elongationDeg: elongationDeg(planet, at) });
    start = new Date(at.getTime() + APART_DAYS * MS_PER_DAY);
  }
  return found;
}
