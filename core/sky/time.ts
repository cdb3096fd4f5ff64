/**
 * Time scales: lengths of time, the engine's clock, and how far the sky has turned.
 *
 * Civil time (UTC) stands in for the Earth's rotation (UT1), under 0.9 s apart.
 * Whoever asks the engine anything makes its time here, so that TT − UTC is the
 * real one and not the engine's forecast, which drifts by seconds.
 *
 * @packageDocumentation
 */
import {
  type AstroTime,
  DeltaT_EspenakMeeus,
  MakeTime,
  SetDeltaTFunction,
  SiderealTime,
} from "astronomy-engine";

export const MS_PER_MINUTE = 60_000;
export const MS_PER_HOUR = 3_600_000;
export const MS_PER_DAY = 86_400_000;

/** 2000-01-01T12:00:00 UTC, from which the engine counts its days. */
export const J2000_MS = Date.UTC(2000, 0, 1, 12);

/** TT − TAI, seconds, by definition. */
const TT_MINUS_TAI_SECONDS = 32.184;

/**
 * TAI − UTC in seconds from each date on, newest first.
 *
 * Source: the IERS table of leap seconds (Bulletin C); none has been announced
 * since that of 2017.
 */
const TAI_MINUS_UTC: readonly (readonly [year: number, month: number, seconds: number])[] = [
  [2017, 1, 37],
  [2015, 7, 36],
  [2012, 7, 35],
  [2009, 1, 34],
  [2006, 1, 33],
  [1999, 1, 32],
  [1997, 7, 31],
  [1996, 1, 30],
  [1994, 7, 29],
  [1993, 7, 28],
  [1992, 7, 27],
  [1991, 1, 26],
  [1990, 1, 25],
  [1988, 1, 24],
  [1985, 7, 23],
  [1983, 7, 22],
  [1982, 7, 21],
  [1981, 7, 20],
  [1980, 1, 19],
  [1979, 1, 18],
  [1978, 1, 17],
  [1977, 1, 16],
  [1976, 1, 15],
  [1975, 1, 14],
  [1974, 1, 13],
  [1973, 1, 12],
  [1972, 7, 11],
  [1972, 1, 10],
];

const LEAP_STEPS = TAI_MINUS_UTC.map(([year, month, seconds]) => ({
  fromDays: (Date.UTC(year, month - 1, 1) - J2000_MS) / MS_PER_DAY,
  ttMinusUtcSeconds: seconds + TT_MINUS_TAI_SECONDS,
}));

/**
 * TT − UTC, by days of UTC since J2000: 69.184 s from 2017 on.
 *
 * Before 1972, when UTC took its present form, the engine's polynomial for TT − UT1
 * (Espenak and Meeus 2006) is used.
 */
function ttMinusUtcSeconds(utDays: number): number {
  for (const step of LEAP_STEPS) {
    if (utDays >= step.fromDays) return step.ttMinusUtcSeconds;
  }
  return DeltaT_EspenakMeeus(utDays);
}

SetDeltaTFunction(ttMinusUtcSeconds);

/**
 * An instant as the engine takes it.
 *
 * @throws RangeError when `at` is not a valid date (a bug in the caller)
 */
export function engineTime(at: Date): AstroTime {
  if (Number.isNaN(at.getTime())) throw new RangeError("an instant must be a valid date");
  return MakeTime(at);
}

/**
 * Apparent sidereal time at Greenwich: IAU 2006 precession, the engine's short nutation.
 *
 * @returns degrees, in [0, 360); within 0.02 s of time of the full IAU series, UT1 apart
 */
export function greenwichSiderealDeg(at: Date): number {
  return SiderealTime(engineTime(at)) * 15;
}

/**
 * Apparent sidereal time at a longitude: the right ascension of date on the meridian.
 *
 * @param longitudeDeg - east positive
 * @returns degrees, in [0, 360)
 */
export function localSiderealDeg(at: Date, longitudeDeg: number): number {
  return (((greenwichSiderealDeg(at) + longitudeDeg) % 360) + 360) % 360;
}

/** Julian years from J2000 to an instant. */
export function yearsSinceJ2000(at: Date): number {
  return (at.getTime() - J2000_MS) / MS_PER_DAY / 365.25;
}
