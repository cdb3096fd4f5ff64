/**
 * Bodies that pass close by one another: the Moon by planets, planets by planets.
 *
 * @packageDocumentation
 */
import type { Site } from "../site.ts";
import { angleBetweenDeg, type Vector3 } from "../sky/angles.ts";
import { geocentricTrack } from "../sky/ephemeris.ts";
import { highestBetween } from "../sky/roots.ts";
import { MS_PER_DAY } from "../sky/time.ts";
import { horizonDirection } from "../targets/observing-conditions.ts";
import { targetTrack } from "../targets/placer.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { clearanceDeg } from "../targets/visibility.ts";

export type CloseApproach = {
  readonly bodies: readonly [BodyName, BodyName];
  /** When they are closest, seen from the Earth's centre. */
  readonly at: Date;
  readonly separationDeg: number;
  /** Of the nearer of the two to the Sun. */
  readonly elongationDeg: number;
};

export type ApproachLimits = {
  /** The Moon and a planet come so close, degrees, from the Earth's centre. */
  readonly moonDeg: number;
  readonly planetsDeg: number;
  /** Nearer the Sun than this nobody sees them, degrees. */
  readonly leastElongationDeg: number;
};

/** Those that the bare eye sees. */
const BRIGHT: readonly BodyName[] = ["Mercury", "Venus", "Mars", "Jupiter", "Saturn"];

/** Close approaches within a span, in order. */
export function closeApproaches(from: Date, to: Date, limits: ApproachLimits): CloseApproach[] {
  const tracks = new Map((["Sun", "Moon", ...BRIGHT] as const).map((body) => [body, directionOf(body)]));
  const found: CloseApproach[] = [];
  const seek = (one: BodyName, other: BodyName, stepMs: number, limitDeg: number) => {
    const [first, second, sun] = [tracks.get(one), tracks.get(other), tracks.get("Sun")];
    if (first === undefined || second === undefined || sun === undefined) return;
    const apart = (ms: number) => angleBetweenDeg(first(ms), second(ms));
    for (const ms of closestTimes(apart, from, to, stepMs)) {
      const separationDeg = apart(ms);
      const elongationDeg = Math.min(
        angleBetweenDeg(first(ms), sun(ms)),
        angleBetweenDeg(second(ms), sun(ms)),
      );
      if (separationDeg > limitDeg || elongationDeg < limits.leastElongationDeg) continue;
      found.push({ bodies: [one, other], at: new Date(Math.round(ms)), separationDeg, elongationDeg });
    }
  };
  for (const planet of BRIGHT) seek("Moon", planet, MS_PER_DAY, limits.moonDeg);
  BRIGHT.forEach((one, index) => {
    for (const other of BRIGHT.slice(index + 1)) seek(one, other, 2 * MS_PER_DAY, limits.planetsDeg);
  });
  return found.sort((one, other) => one.at.getTime() - other.at.getTime());
}

function directionOf(body: BodyName): (utMs: number) => Vector3 {
  const track = geocentricTrack(body);
  return (utMs) => {
    const { x, y, z } = track(utMs);
    return [x, y, z];
  };
}

/** Where a distance has a low between two instants. */
function closestTimes(distance: (ms: number) => number, from: Date, to: Date, stepMs: number): number[] {
  const lows: number[] = [];
  let [before, now] = [distance(from.getTime() - stepMs), distance(from.getTime())];
  for (let ms = from.getTime(); ms < to.getTime() + stepMs; ms += stepMs) {
    const next = distance(ms + stepMs);
    if (now <= before && now < next) {
      const low = highestBetween((at) => -distance(at), ms - stepMs, ms + stepMs);
      if (low >= from.getTime() && low < to.getTime()) lows.push(low);
    }
    [before, now] = [now, next];
  }
  return lows;
}

export type ApproachSight = {
  readonly at: Date;
  /** As the site sees them then: the Moon's parallax shifts it by up to a degree. */
  readonly separationDeg: number;
  /** Of the lower of the two. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
};

export type SightRules = { readonly leastAltitudeDeg: number; readonly sunDepthDeg: number };

const LOOK_MS = 18 * 3_600_000;
const LOOK_STEP_MS = 10 * 60_000;

/**
 * When a site sees a close approach best: nearest the closest, both over the skyline, the Sun down.
 *
 * @returns `null` when it does not within 18 hours
 */
export function approachSight(site: Site, approach: CloseApproach, rules: SightRules): ApproachSight | null {
  const [one, other] = approach.bodies.map((body) => targetTrack(site, { kind: "body", body }, approach.at));
  const sun = targetTrack(site, { kind: "body", body: "Sun" }, approach.at);
  if (one === undefined || other === undefined) return null;
  const clearance = { skyline: site.skyline, leastAltitudeDeg: rules.leastAltitudeDeg };
  for (let away = 0; away <= LOOK_MS; away += LOOK_STEP_MS) {
    for (const ms of away === 0
      ? [approach.at.getTime()]
      : [approach.at.getTime() - away, approach.at.getTime() + away]) {
      if (sun(ms).altitudeDeg > -rules.sunDepthDeg) continue;
      const [first, second] = [one(ms), other(ms)];
      if (clearanceDeg(first, clearance) < 0 || clearanceDeg(second, clearance) < 0) continue;
      const lower = first.altitudeDeg < second.altitudeDeg ? first : second;
      return {
        at: new Date(ms),
        separationDeg: angleBetweenDeg(horizonDirection(first), horizonDirection(second)),
        altitudeDeg: lower.altitudeDeg,
        azimuthDeg: lower.azimuthDeg,
      };
    }
  }
  return null;
}
