/**
 * The Moon's disc as a site sees it: phase, age, size, libration, axis, bright limb.
 *
 * @packageDocumentation
 */

import { moonElongationDeg, moonPhases } from "../night/moon-phases.ts";
import { halfTurnDeg, turnDeg } from "../sky/angles.ts";
import { bodyPlace } from "../sky/bodies.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { MS_PER_DAY } from "../sky/time.ts";
import { parallacticAngleDeg } from "./disc-angles.ts";
import { type Globe, globeSeen } from "./globe.ts";

/** Which part of the Moon faces us: selenographic, east and north positive. */
export type Libration = { readonly longitudeDeg: number; readonly latitudeDeg: number };

/** Where the Sun stands over the Moon. */
export type LunarSun = {
  /** Selenographic colongitude, in [0, 360): near 0 at first quarter, 90 at full Moon. */
  readonly colongitudeDeg: number;
  /** Selenographic latitude of the Sun. */
  readonly sunLatitudeDeg: number;
};

export type MoonDisc = LunarSun & {
  readonly at: Date;
  /** True (airless). */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly distanceKm: number;
  readonly diameterArcmin: number;
  readonly illuminatedFraction: number;
  /** Sun, Moon, observer: 0 when full, 180 when new. */
  readonly phaseAngleDeg: number;
  /** Of apparent longitude, from the Earth's centre, in [0, 360): 0 new, 180 full. */
  readonly elongationDeg: number;
  readonly waxing: boolean;
  /** Since the last new Moon. */
  readonly ageDays: number;
  /** From the site. */
  readonly libration: Libration;
  /** From the Earth's centre, as almanacs print it. */
  readonly geocentricLibration: Libration;
  /** Position angle of the axis's north end, in [-180, 180). */
  readonly axisDeg: number;
  /** Position angle of the middle of the bright limb, in [0, 360). */
  readonly brightLimbDeg: number;
  /** Position angle of the zenith, in [-180, 180). */
  readonly parallacticDeg: number;
};

const KM_PER_AU = 149_597_870.7;
/** A lunation is at most 29.84 days. */
const LONGEST_MONTH_MS = 29.9 * MS_PER_DAY;

/**
 * The Moon's disc from a place.
 *
 * @remarks
 * Libration and axis within 0.03°; the bright limb within 0.1° a day or more from new and full.
 *
 * Source: as {@link globeSeen}; colongitude: Meeus, *Astronomical Algorithms*, chapter 53.
 */
export function moonDisc(position: GroundPosition, at: Date): MoonDisc {
  const place = bodyPlace("Moon", position, at);
  const globe = globeSeen("Moon", position, at);
  const elongationDeg = moonElongationDeg(at);
  return {
    at,
    altitudeDeg: place.altitudeDeg,
    azimuthDeg: place.azimuthDeg,
    distanceKm: place.distanceAu * KM_PER_AU,
    diameterArcmin: place.semidiameterArcsec / 30,
    illuminatedFraction: place.illuminatedFraction,
    phaseAngleDeg: place.phaseAngleDeg,
    elongationDeg,
    waxing: elongationDeg < 180,
    ageDays: moonAgeDays(at),
    libration: librationOf(globe),
    geocentricLibration: librationOf(globeSeen("Moon", null, at)),
    axisDeg: halfTurnDeg(globe.axisDeg),
    brightLimbDeg: globe.brightLimbDeg,
    parallacticDeg: parallacticAngleDeg(position, place, at),
    ...lunarSunOf(globe),
  };
}

/** Where the Sun stands over the Moon at an instant. */
export function lunarSun(at: Date): LunarSun {
  return lunarSunOf(globeSeen("Moon", null, at));
}

function lunarSunOf({ subsolar }: Globe): LunarSun {
  return { colongitudeDeg: turnDeg(90 - subsolar.longitudeDeg), sunLatitudeDeg: subsolar.latitudeDeg };
}

function librationOf({ centre }: Globe): Libration {
  return { longitudeDeg: halfTurnDeg(centre.longitudeDeg), latitudeDeg: centre.latitudeDeg };
}

/** Days since the last new Moon. */
function moonAgeDays(at: Date): number {
  const last = moonPhases(new Date(at.getTime() - LONGEST_MONTH_MS), new Date(at.getTime() + 1), "new").at(
    -1,
  );
  return last === undefined ? 0 : (at.getTime() - last.at.getTime()) / MS_PER_DAY;
}
