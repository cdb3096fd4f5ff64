/**
 * The stars that mounts are aligned by, north and south.
 *
 * J2000 places and proper motions: Polaris from the new Hipparcos reduction (van
 * Leeuwen 2007, A&A 474, 653), σ, τ and χ Octantis from Hipparcos and Gaia, υ
 * Octantis from Hipparcos to a third of an arcsecond (its motion, well under 0.1″ a year, is
 * left out). Magnitudes in V.
 *
 * @packageDocumentation
 */
import type { PoleStar } from "../core/mount/pole-star.ts";

export const POLARIS: PoleStar = {
  name: "Polaris",
  pole: "north",
  raDeg: 37.9545608,
  decDeg: 89.264109,
  properMotion: { raArcsec: 0.04448, decArcsec: -0.01185 },
  magnitude: 1.98,
};

export const SIGMA_OCTANTIS: PoleStar = {
  name: "sigma Octantis",
  pole: "south",
  raDeg: 317.1952649,
  decDeg: -88.9564995,
  properMotion: { raArcsec: 0.026323, decArcsec: 0.004721 },
  magnitude: 5.47,
};

/** The trapezium of the southern pole, the one named first in answers first. */
export const SOUTHERN_TRAPEZIUM: readonly PoleStar[] = [
  SIGMA_OCTANTIS,
  {
    name: "tau Octantis",
    pole: "south",
    raDeg: 352.0157729,
    decDeg: -87.4822131,
    properMotion: { raArcsec: 0.016782, decArcsec: 0.011957 },
    magnitude: 5.5,
  },
  {
    name: "chi Octantis",
    pole: "south",
    raDeg: 283.6964193,
    decDeg: -87.60584331,
    properMotion: { raArcsec: -0.036555, decArcsec: -0.135715 },
    magnitude: 5.28,
  },
  {
    name: "upsilon Octantis",
    pole: "south",
    raDeg: 337.9063,
    decDeg: -85.9673,
    properMotion: { raArcsec: 0, decArcsec: 0 },
    magnitude: 5.76,
  },
];
