/**
 * What stands in for a visual observer's eyepieces and mount until they are given.
 *
 * @packageDocumentation
 */
import type { Eyepiece, Mount } from "../core/rig/rig.ts";

/** The two that come with most telescopes; common practice. */
export const DEFAULT_EYEPIECES: readonly Eyepiece[] = [
  { focalLengthMm: 25, apparentFieldDeg: 52 },
  { focalLengthMm: 10, apparentFieldDeg: 52 },
];

/** Apparent field of an eyepiece of which only the focal length is known; common practice. */
export const APPARENT_FIELD_OF_UNKNOWN_DEG = 52;

export const DEFAULT_VISUAL_MOUNT: Mount = "altazimuth";
