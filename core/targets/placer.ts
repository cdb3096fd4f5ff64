/**
 * Where a target stands over a site at any instant of a night.
 *
 * @packageDocumentation
 */
import { DEG_PER_RAD, halfTurnDeg, RAD_PER_DEG, turnDeg } from "../sky/angles.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { placeOfDate } from "../sky/place.ts";
import { greenwichSiderealDeg } from "../sky/time.ts";
import { horizonTrack } from "../sky/topocentric.ts";
import type { SkyObject, Target } from "./sky-object.ts";
import type { Horizontal } from "./visibility.ts";

/** Turn of the sky in a millisecond of UTC, degrees: a sidereal day is 86 164.0905 s. */
const SKY_TURN_DEG_PER_MS = 360 / 86_164_090.5;

/** Follows a target over a place, hour angle in [-180, 180), west positive; the instant in epoch milliseconds. */
export type TargetTrack = (utMs: number) => Horizontal & { readonly hourAngleDeg: number };

/** A J2000 place, with its proper motion where it is known. */
export type FixedPlace = Pick<SkyObject, "raDeg" | "decDeg"> & Partial<Pick<SkyObject, "properMotion">>;

/**
 * Follows a fixed place through one night.
 *
 * @param middle - an instant of the night; the apparent place is taken there
 *
 * @remarks
 * Within 2″ of SOFA for a day around `middle`: aberration and nutation are held, the sky turns
 * evenly, and the observer's own motion (0.3″) is left out.
 */
export function fixedTrack(position: GroundPosition, place: FixedPlace, middle: Date): TargetTrack {
  const { raDeg, decDeg } = placeOfDate(place.raDeg, place.decDeg, middle, place.properMotion ?? null);
  const middleMs = middle.getTime();
  const hourAngleAtMiddle = greenwichSiderealDeg(middle) + position.longitudeDeg - raDeg;
  const sinDec = Math.sin(decDeg * RAD_PER_DEG);
  const cosDec = Math.cos(decDeg * RAD_PER_DEG);
  const sinLat = Math.sin(position.latitudeDeg * RAD_PER_DEG);
  const cosLat = Math.cos(position.latitudeDeg * RAD_PER_DEG);
  return (utMs) => {
    const hourAngleDeg = halfTurnDeg(hourAngleAtMiddle + (utMs - middleMs) * SKY_TURN_DEG_PER_MS);
    const sinHour = Math.sin(hourAngleDeg * RAD_PER_DEG);
    const cosHour = Math.cos(hourAngleDeg * RAD_PER_DEG);
    const up = sinLat * sinDec + cosLat * cosDec * cosHour;
    const north = cosLat * sinDec - sinLat * cosDec * cosHour;
    const east = -cosDec * sinHour;
    return {
      altitudeDeg: Math.atan2(up, Math.hypot(north, east)) * DEG_PER_RAD,
      azimuthDeg: turnDeg(Math.atan2(east, north) * DEG_PER_RAD),
      hourAngleDeg,
    };
  };
}

/** Follows any target through one night; `middle` as in {@link fixedTrack}. */
export function targetTrack(position: GroundPosition, target: Target, middle: Date): TargetTrack {
  switch (target.kind) {
    case "object":
      return fixedTrack(position, target.object, middle);
    case "place":
      return fixedTrack(position, target, middle);
    case "body": {
      const track = horizonTrack(target.body, position);
      const sinLat = Math.sin(position.latitudeDeg * RAD_PER_DEG);
      const cosLat = Math.cos(position.latitudeDeg * RAD_PER_DEG);
      return (utMs) => {
        const { north, east, up } = track(utMs);
        return {
          altitudeDeg: Math.atan2(up, Math.hypot(north, east)) * DEG_PER_RAD,
          azimuthDeg: turnDeg(Math.atan2(east, north) * DEG_PER_RAD),
          hourAngleDeg: halfTurnDeg(Math.atan2(-east, up * cosLat - north * sinLat) * DEG_PER_RAD),
        };
      };
    }
  }
}

/** Upper transit within a span: when the hour angle passes zero; `null` when it does not. */
export function upperTransit(track: TargetTrack, fromMs: number, toMs: number): Date | null {
  const STEP_MS = 3_600_000;
  for (let before = fromMs; before < toMs; before += STEP_MS) {
    const after = Math.min(before + STEP_MS, toMs);
    const early = track(before).hourAngleDeg;
    const late = track(after).hourAngleDeg;
    // East of the meridian, then west of it; not the lower transit, where it jumps from 180° to −180°.
    if (early > 0 || late <= 0 || late - early > 90) continue;
    let low = before;
    let high = after;
    while (high - low > 10) {
      const middle = (low + high) / 2;
      if (track(middle).hourAngleDeg <= 0) low = middle;
      else high = middle;
    }
    return new Date(Math.round((low + high) / 2));
  }
  return null;
}
