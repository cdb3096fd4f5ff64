/**
 * Where a pole star stands about the true pole, and on a reticle's clock face.
 *
 * Places are of date and airless: refraction lifts star and pole alike, by about
 * 1′ times the cotangent of the latitude.
 *
 * @packageDocumentation
 */
import { horizontalOf, hourAngleDeg, type SkyFrame } from "../sky/frame.ts";
import { movedPlace, placeOfDate } from "../sky/place.ts";

export type Pole = "north" | "south";

/** A star near enough to a pole to align by; J2000, degrees and arcseconds a year. */
export type PoleStar = {
  readonly name: string;
  readonly pole: Pole;
  readonly raDeg: number;
  readonly decDeg: number;
  /** In right ascension already times cos(dec). */
  readonly properMotion: { readonly raArcsec: number; readonly decArcsec: number };
  readonly magnitude: number;
};

/** Decimal hours of a 12-hour face, in [0, 12). */
export type Dial = {
  /** As the bare eye or a finder with an upright picture sees it. */
  readonly correct: number;
  /** As a plain astronomical finder sees it: turned by half a turn, not mirrored. */
  readonly inverted: number;
};

export type PoleStarPlace = {
  readonly star: PoleStar;
  /** Hours in [0, 24), growing westward. */
  readonly hourAngleHours: number;
  readonly dial: Dial;
  /** From the true pole of date, arcminutes. */
  readonly poleDistanceArcmin: number;
  /** Airless, degrees. */
  readonly altitudeDeg: number;
  /** From north through east, degrees. */
  readonly azimuthDeg: number;
};

/** The pole above the horizon; on the equator, the northern one. */
export function risenPole(latitudeDeg: number): Pole {
  return latitudeDeg < 0 ? "south" : "north";
}

/**
 * A pole star's place at an instant.
 *
 * @param frame - the sky over the site at that instant
 *
 * @remarks
 * Error: under 2″ of place. The hour angle of a star so near the pole magnifies
 * that: 2″ at 38′ is 0.2 minutes of hour angle.
 */
export function poleStarPlace(star: PoleStar, frame: SkyFrame): PoleStarPlace {
  const ofDate = placeOfDate(star.raDeg, star.decDeg, frame.at, star.properMotion);
  const moved = movedPlace(star.raDeg, star.decDeg, frame.at, star.properMotion);
  const hourAngleHours = turned(hourAngleDeg(frame, ofDate.raDeg) / 15, 24);
  return {
    star,
    hourAngleHours,
    dial: dialOf(star.pole, hourAngleHours),
    poleDistanceArcmin: (90 - Math.abs(ofDate.decDeg)) * 60,
    ...horizontalOf(frame, moved.raDeg, moved.decDeg),
  };
}

/**
 * Hour angle to a 12-hour face, 12 at the top, for an observer who faces the pole.
 *
 * At hour angle 0 the star stands above the pole. Facing north it then turns
 * anticlockwise, facing south clockwise, at half the speed of an hour hand.
 *
 * @param hourAngleHours - any turn
 */
export function dialOf(pole: Pole, hourAngleHours: number): Dial {
  const correct = turned((pole === "north" ? -1 : 1) * (hourAngleHours / 2), 12);
  return { correct, inverted: turned(correct + 6, 12) };
}

/** `value` brought into [0, `turn`). */
function turned(value: number, turn: number): number {
  const rest = value % turn;
  const positive = rest < 0 ? rest + turn : rest;
  // A tiny negative rest rounds up to the whole turn itself; and zero has one sign.
  return positive >= turn || positive === 0 ? 0 : positive;
}
