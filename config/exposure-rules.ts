/**
 * Habits of exposing, where the asker says nothing else: common practice throughout.
 *
 * @packageDocumentation
 */
import type { ExposureRules } from "../core/rig/exposure-rules.ts";

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
