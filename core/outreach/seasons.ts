/**
 * Equinoxes and solstices, and the Sun's longitude by which meteor showers are dated.
 *
 * @packageDocumentation
 */
import {
  Body,
  GeoVector,
  RotateVector,
  Rotation_EQJ_ECL,
  SphereFromVector,
  SunPosition,
} from "astronomy-engine";
import { halfTurnDeg, turnDeg } from "../sky/angles.ts";
import { engineTime, MS_PER_DAY } from "../sky/time.ts";

export type SeasonName = "march-equinox" | "june-solstice" | "september-equinox" | "december-solstice";

export type SeasonTurn = { readonly name: SeasonName; readonly at: Date };

const TURNS: readonly { readonly name: SeasonName; readonly longitudeDeg: number }[] = [
  { name: "march-equinox", longitudeDeg: 0 },
  { name: "june-solstice", longitudeDeg: 90 },
  { name: "september-equinox", longitudeDeg: 180 },
  { name: "december-solstice", longitudeDeg: 270 },
];

/** The Sun's mean motion, degrees a day, and the year it makes. */
const SUN_DEG_PER_DAY = 360 / 365.2422;

/**
 * Equinoxes and solstices within a span, in order: the Sun's apparent longitude of date is
 * 0°, 90°, 180° or 270°. Within a minute.
 */
export function seasonTurns(from: Date, to: Date): SeasonTurn[] {
  return TURNS.flatMap(({ name, longitudeDeg }) =>
    passages(apparentLongitudeDeg, longitudeDeg, from, to).map((at) => ({ name, at })),
  ).sort((one, other) => one.at.getTime() - other.at.getTime());
}

/**
 * Instants within a span at which the Sun reaches a longitude of the equinox of 2000, in order.
 *
 * @remarks Source: the convention of the International Meteor Organization; within 10 minutes.
 */
export function solarLongitudePassages(longitudeDeg: number, from: Date, to: Date): Date[] {
  return passages(solarLongitudeDeg, longitudeDeg, from, to);
}

/** The Sun's ecliptic longitude, equinox of 2000, degrees in [0, 360). */
export function solarLongitudeDeg(at: Date): number {
  const time = engineTime(at);
  return turnDeg(SphereFromVector(RotateVector(Rotation_EQJ_ECL(), GeoVector(Body.Sun, time, false))).lon);
}

function apparentLongitudeDeg(at: Date): number {
  return SunPosition(engineTime(at)).elon;
}

/** Newton's steps at the Sun's mean rate, once for every year the span touches. */
function passages(longitudeAt: (at: Date) => number, wantedDeg: number, from: Date, to: Date): Date[] {
  const found: Date[] = [];
  const aheadDeg = turnDeg(wantedDeg - longitudeAt(from));
  let guess = from.getTime() + (aheadDeg / SUN_DEG_PER_DAY) * MS_PER_DAY;
  // A year early, so that a passage close to the start is not stepped over.
  guess -= 365.2422 * MS_PER_DAY;
  while (guess < to.getTime() + 10 * MS_PER_DAY) {
    let ms = guess;
    for (let step = 0; step < 12; step++) {
      const missDeg = halfTurnDeg(wantedDeg - longitudeAt(new Date(Math.round(ms))));
      const correction = (missDeg / SUN_DEG_PER_DAY) * MS_PER_DAY;
      ms += correction;
      if (Math.abs(correction) < 500) break;
    }
    const at = new Date(Math.round(ms));
    if (at >= from && at < to) found.push(at);
    guess = ms + 365.2422 * MS_PER_DAY;
  }
  return found;
}
