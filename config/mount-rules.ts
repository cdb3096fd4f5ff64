/**
 * Rules for setting up a mount. Common practice, chosen, not measured.
 *
 * @packageDocumentation
 */
import type { AlignmentRules } from "../core/mount/alignment-stars.ts";
import type { StarLimits } from "../core/mount/visible-stars.ts";
import type { Mount } from "../core/rig/rig.ts";

/** Below this a pole star drowns in haze, and refraction displaces the pole by more than 10′. */
export const LEAST_POLE_ALTITUDE_DEG = 5;

/** Brighter stars have names people know; higher ones are hard to reach, lower ones refracted. */
export const ALIGNMENT_RULES: AlignmentRules = {
  limits: { lowestDeg: 25, highestDeg: 70, farthestDecDeg: 70 },
  faintestMags: [2.5, 3.5],
  leastSeparationDeg: 30,
  acrossHours: { least: 3, most: 9 },
};

/** Alignment and focus stars keep this far from the Moon. */
export const MOON_CLEARANCE_DEG = 15;

/** Bright enough for a focusing mask, not in the murk. */
export const FOCUS_STAR_LIMITS: StarLimits = {
  faintestMag: 3.5,
  lowestDeg: 25,
  highestDeg: 90,
  farthestDecDeg: 90,
};

/** A polar error to reckon with until the member names one. */
export const DEFAULT_POLAR_ERROR_ARCMIN = 5;

/** A sub to reckon with until the member or the rig names one. */
export const DEFAULT_SUB_SECONDS = 300;

/** A star's trail that does not show. */
export const TRAIL_PX = 1;

/** Time lost to a meridian flip: stop, turn, centre, focus, guide again. */
export const FLIP_MINUTES = 5;

/** How long to watch a star in the drift method. */
export const DRIFT_WATCH_MINUTES = 5;

/** Mounts with an axis to set on the pole. */
export const POLAR_MOUNTS: readonly Mount[] = ["german", "fork", "tracker"];

/** Mounts taken to find objects by themselves until their owner says otherwise. */
export const GOTO_MOUNTS: readonly Mount[] = ["german", "fork"];

/** Drift and turn are told for a star on the equator until a target is named. */
export const DEFAULT_DRIFT_DEC_DEG = 0;

/** Polar errors and subs that can be asked about. */
export const POLAR_ERROR_ARCMIN = { min: 0.01, max: 300 };

/** The Sun this far below the horizon no longer keeps stars from being chosen, degrees. */
export const SUN_DOWN_DEG = -0.84;
