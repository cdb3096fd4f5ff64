/**
 * Habits of exposing, where the asker says nothing else: common practice throughout.
 *
 * @packageDocumentation
 */
import type { ExposureRules } from "../core/rig/exposure-rules.ts";
import type { Range } from "./input-limits.ts";

export const EXPOSURE_RULES: ExposureRules = {
  readNoiseShare: 0.05,
  subSteps: [1, 2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 300, 480, 600, 900],
  guidedSeconds: 300,
  unguidedSecondsTimesMm: 12_000,
  unguidedSeconds: 120,
  saturationShare: 0.9,
  // Chosen: most fields hold one or two stars of this magnitude.
  unnamedStarMagnitude: 8,
  downloadSeconds: 2,
  subsPerDither: 3,
  settlingSeconds: 15,
  flipSeconds: 300,
  // Cooling, focusing and centring are taken to be done before the window opens.
  startUpSeconds: 0,
  patchArcsec: 10,
  wantedSignalToNoise: 5,
};

/** Figures a question about exposures may give. */
export const EXPOSURE_LIMITS = {
  /** Clock time in all; a picture of half a year's clear nights is the most. */
  hours: { min: 0.02, max: 2000 },
  /** Percent; under 1 it is read as a ratio. */
  share: { min: 0.01, max: 100 },
  starMagnitude: { min: -2, max: 20 },
  /** V magnitudes per square arcsecond of an object. */
  brightness: { min: 10, max: 30 },
  rayleigh: { min: 0.1, max: 1_000_000 },
  signalToNoise: { min: 0.5, max: 1000 },
  filtersInSplit: { min: 2, max: 8 },
} as const satisfies Readonly<Record<string, Range>>;

/** What a cooler is taken to reach when the answer says what one would give, °C. */
export const COOLED_CELSIUS = -10;

/** Longest trail in a corner of a turning field, pixels. */
export const TURNING_TRAIL_PX = 1.5;

/** Lenses up to this are also used on a tripod: their answers give the trail limits, mm. */
export const TRIPOD_LENS_MM = 200;

/** Below this share of the clock, downloads and dithering deserve a word. */
export const WASTEFUL_SHARE = 0.8;
