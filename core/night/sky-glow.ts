/**
 * The moonless sky away from the zenith: airglow, starlight and the lamps of towns.
 *
 * Rough: one law for natural and artificial glow together, and towns only where the
 * member named their direction.
 *
 * @packageDocumentation
 */
import type { BrightDirection } from "../site.ts";
import { scatteringPath } from "../targets/airmass.ts";

/** Where a bright direction is stated. */
const STATED_AT_ZENITH_DISTANCE_DEG = 60;

/**
 * How much brighter the sky is at a zenith distance than overhead.
 *
 * @param extinctionV - magnitudes per air mass
 * @returns a ratio: 1 at the zenith; 1.641 at 60° with 0.172
 *
 * Source: K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033, equation 2.
 */
export function glowGradient(zenithDistanceDeg: number, extinctionV: number): number {
  const path = scatteringPath(zenithDistanceDeg);
  return 10 ** (-0.4 * extinctionV * (path - 1)) * path;
}

/** Shortest way round between two azimuths, degrees in [0, 180]. */
function azimuthApartDeg(one: number, other: number): number {
  const apart = Math.abs((((one - other) % 360) + 360) % 360);
  return Math.min(apart, 360 - apart);
}

/**
 * What one bright direction adds, as a multiple of the plain sky at its stated altitude.
 *
 * Full at its azimuth and 30° altitude, nothing overhead, more below; a bell curve in azimuth.
 */
function domeShare(
  direction: BrightDirection,
  azimuthDeg: number,
  zenithDistanceDeg: number,
  spreadDeg: number,
): number {
  const aside = azimuthApartDeg(direction.azimuthDeg, azimuthDeg) / spreadDeg;
  const height =
    (scatteringPath(zenithDistanceDeg) - 1) / (scatteringPath(STATED_AT_ZENITH_DISTANCE_DEG) - 1);
  return (10 ** (0.4 * direction.brighterMag) - 1) * Math.exp(-0.5 * aside * aside) * height;
}

export type SkyGlowQuestion = {
  readonly zenithNanolamberts: number;
  /** Airless, degrees. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  /** Magnitudes per air mass in V. */
  readonly extinctionV: number;
  readonly brightDirections: readonly BrightDirection[];
  /** One sigma of a bright direction in azimuth, from `config/`. */
  readonly spreadDeg: number;
};

/**
 * Brightness of the moonless night sky in a direction.
 *
 * @returns nanolamberts in V
 *
 * @remarks
 * The shape of a town's dome (a bell curve in azimuth, rising as the scattering path) is
 * this project's own and rough.
 */
export function skyGlowNanolamberts(question: SkyGlowQuestion): number {
  const zenithDistanceDeg = 90 - question.altitudeDeg;
  const plain = question.zenithNanolamberts * glowGradient(zenithDistanceDeg, question.extinctionV);
  if (question.brightDirections.length === 0) return plain;
  const stated =
    question.zenithNanolamberts * glowGradient(STATED_AT_ZENITH_DISTANCE_DEG, question.extinctionV);
  return question.brightDirections.reduce(
    (sum, direction) =>
      sum + stated * domeShare(direction, question.azimuthDeg, zenithDistanceDeg, question.spreadDeg),
    plain,
  );
}
