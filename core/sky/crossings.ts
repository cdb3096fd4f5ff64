/**
 * When a body passes an altitude, and when it stands on the meridian.
 *
 * Every crossing in a span is found, those minutes apart beside a grazing too.
 * Times are for a level horizon at height 0: no dip.
 *
 * @packageDocumentation
 */
import type { BodyName } from "../targets/sky-object.ts";
import { DEG_PER_RAD, halfTurnDeg, turnDeg } from "./angles.ts";
import { semidiameterDeg } from "./bodies.ts";
import { geocentricTrack } from "./ephemeris.ts";
import type { GroundPosition } from "./frame.ts";
import { HORIZON_REFRACTION_DEG } from "./refraction.ts";
import { highestBetween, rootBetween } from "./roots.ts";
import { MS_PER_DAY } from "./time.ts";
import { heightTrack } from "./topocentric.ts";

export type Crossing = { readonly at: Date; readonly rising: boolean };

/** Which part of a body must stand how high. */
export type Level =
  /** Its centre, airless: twilights. */
  | { readonly kind: "centre"; readonly altitudeDeg: number }
  /** Its upper limb on the horizon, lifted by 34′: rise and set. */
  | { readonly kind: "rise-set" };

export type HeightSamples = {
  /** Epoch milliseconds, one step beyond either end of the span. */
  readonly utMs: readonly number[];
  readonly from: Date;
  readonly to: Date;
  /** Degrees of the centre above 0°. */
  readonly centre: readonly number[];
  /** Degrees of the refracted upper limb above the horizon. */
  readonly limb: readonly number[];
  /** The same at any instant. */
  heightAt(utMs: number, level: Level): number;
};

const STEP_MS = 20 * 60_000;
/** No body climbs faster: 15.04° an hour and the Moon's own parallax. */
const FASTEST_DEG_PER_STEP = 16.5 * (STEP_MS / 3_600_000);

/**
 * A body's heights through a span, from which any number of crossings can be read.
 *
 * @param from - the first instant a crossing may have
 * @param to - the instant before which it must come
 */
export function sampleHeights(body: BodyName, position: GroundPosition, from: Date, to: Date): HeightSamples {
  const track = heightTrack(body, { ...position, elevationMetres: 0 });
  const limbOf = (altitudeDeg: number, distanceAu: number) =>
    altitudeDeg + semidiameterDeg(body, distanceAu) + HORIZON_REFRACTION_DEG;
  const utMs: number[] = [];
  const centre: number[] = [];
  const limb: number[] = [];
  // One step beyond the ends, so that a turn close to an end is seen from both sides.
  const last = to.getTime() + STEP_MS;
  for (let at = from.getTime() - STEP_MS; at < last + STEP_MS; at += STEP_MS) {
    const { altitudeDeg, distanceAu } = track(at);
    utMs.push(at);
    centre.push(altitudeDeg);
    limb.push(limbOf(altitudeDeg, distanceAu));
  }
  return {
    utMs,
    from,
    to,
    centre,
    limb,
    heightAt(at, level) {
      const { altitudeDeg, distanceAu } = track(at);
      return level.kind === "centre" ? altitudeDeg - level.altitudeDeg : limbOf(altitudeDeg, distanceAu);
    },
  };
}

/** Every passage of a level within the span, in order. */
export function crossingsIn(samples: HeightSamples, level: Level): Crossing[] {
  const above = heightsAbove(samples, level);
  const heightAt = (at: number) => samples.heightAt(at, level);
  const found: Crossing[] = [];
  const note = (atMs: number, rising: boolean) => {
    const at = Math.round(atMs);
    if (at >= samples.from.getTime() && at < samples.to.getTime()) found.push({ at: new Date(at), rising });
  };
  for (let step = 1; step < above.length; step++) {
    const before = above[step - 1] ?? 0;
    const now = above[step] ?? 0;
    const start = samples.utMs[step - 1] ?? 0;
    const end = samples.utMs[step] ?? 0;
    if (before < 0 !== now < 0) {
      note(rootBetween(heightAt, start, before, end, now), now >= 0);
      continue;
    }
    // A turn at this sample that all but reaches the level may pass it between samples.
    const next = above[step + 1];
    if (next === undefined || next < 0 !== now < 0 || Math.abs(now) > FASTEST_DEG_PER_STEP) continue;
    const side = now < 0 ? 1 : -1;
    if (side * (now - before) < 0 || side * (next - now) > 0) continue;
    const finish = samples.utMs[step + 1] ?? 0;
    const turn = highestBetween((at) => side * heightAt(at), start, finish);
    const height = heightAt(turn);
    if (height < 0 === now < 0) continue;
    note(rootBetween(heightAt, start, before, turn, height), height >= 0);
    note(rootBetween(heightAt, turn, height, finish, next), height < 0);
  }
  return found;
}

function heightsAbove(samples: HeightSamples, level: Level): readonly number[] {
  return level.kind === "rise-set"
    ? samples.limb
    : samples.centre.map((altitudeDeg) => altitudeDeg - level.altitudeDeg);
}

/**
 * Passages of one level by a body within a span, in order.
 *
 * Twilights, rises and sets within 0.5 s of Swiss Ephemeris below latitude 60°.
 */
export function bodyCrossings(
  body: BodyName,
  position: GroundPosition,
  level: Level,
  from: Date,
  to: Date,
): Crossing[] {
  return crossingsIn(sampleHeights(body, position, from, to), level);
}

/** The sky turns by 1° in so many milliseconds. */
const MS_PER_SKY_DEG = (0.99726957 * MS_PER_DAY) / 360;

/**
 * The first upper transit of a body within a span.
 *
 * @returns `null` when it does not stand on the meridian from `from` until before `to`
 */
export function transitOfBody(body: BodyName, position: GroundPosition, from: Date, to: Date): Date | null {
  const track = geocentricTrack(body);
  return firstTransit(from, to, (utMs) => {
    // On the meridian the parallax is all in altitude: the Earth's centre sees the same transit.
    const { x, y, siderealDeg } = track(utMs);
    return halfTurnDeg(siderealDeg + position.longitudeDeg - Math.atan2(y, x) * DEG_PER_RAD);
  });
}

/** Newton's steps at the stars' rate; the Moon, 4 % slower, settles in six. */
function firstTransit(from: Date, to: Date, hourAngleAt: (utMs: number) => number): Date | null {
  let at = from.getTime() + turnDeg(-hourAngleAt(from.getTime())) * MS_PER_SKY_DEG;
  for (let step = 0; step < 8; step++) {
    const correction = hourAngleAt(at) * MS_PER_SKY_DEG;
    at -= correction;
    if (Math.abs(correction) < 1) break;
  }
  const settled = Math.round(at);
  return settled >= from.getTime() && settled < to.getTime() ? new Date(settled) : null;
}
