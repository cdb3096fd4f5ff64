/**
 * What the dark-adapted eye can tell from the sky: contrast thresholds.
 *
 * Good to a few tenths of a magnitude between observers.
 *
 * @packageDocumentation
 */

import { nakedEyeLimit } from "../night/sky-brightness.ts";

/** Luminance of 0 mag/arcsec², cd/m² (common practice: 10.8 × 10⁴). */
const LUMINANCE_OF_ZERO_MAG = 10.8e4;

const ARCSEC2_PER_ARCMIN2 = 3600;

/** A square arcminute in steradians. */
const STERADIANS_PER_ARCMIN2 = (Math.PI / (180 * 60)) ** 2;

/**
 * Least contrast at which half of trained observers tell a uniform disc from its background.
 *
 * @param backgroundMagArcsec2 - as the eye sees it, the eyepiece's dimming included
 * @param areaArcmin2 - apparent area of the disc, above 0
 * @returns object's own surface brightness over the background's
 *
 * @remarks
 * Source: A. Crumey 2014, MNRAS 442, 2600, the scotopic branch fitted to Blackwell's 1946 data
 * (coefficients from memory). Under brighter skies {@link fieldFactor} makes up for the missing branches.
 */
export function contrastThreshold(backgroundMagArcsec2: number, areaArcmin2: number): number {
  const luminance = LUMINANCE_OF_ZERO_MAG * 10 ** (-0.4 * backgroundMagArcsec2);
  const adaptation = luminance ** -0.25;
  const pointLike = (6.505e-4 * adaptation - 8.461e-4) ** 2 / (areaArcmin2 * STERADIANS_PER_ARCMIN2);
  const large = (7.633e-3 * adaptation - 7.174e-3) ** 2;
  const bend = 1.146 - 0.0885 * Math.log10(luminance);
  return (pointLike ** bend + large ** bend) ** (1 / bend);
}

/** The threshold of a point in magnitudes, were the laboratory's observers at the eyepiece. */
function laboratoryPointLimit(backgroundMagArcsec2: number): number {
  const pointArcmin2 = 1e-6;
  const light = contrastThreshold(backgroundMagArcsec2, pointArcmin2) * pointArcmin2 * ARCSEC2_PER_ARCMIN2;
  return backgroundMagArcsec2 - 2.5 * Math.log10(light);
}

/**
 * How much more contrast an observer in the field needs than the laboratory's.
 *
 * @returns a factor: what brings the threshold of a point to the naked-eye limit of Schaefer 1990
 *   under the same background; 1.5 under 21.5 mag/arcsec², growing where the sky is bright
 */
export function fieldFactor(backgroundMagArcsec2: number): number {
  const excess = laboratoryPointLimit(backgroundMagArcsec2) - nakedEyeLimit(backgroundMagArcsec2);
  return 10 ** (0.4 * excess);
}

/** The eye's pupil when dark-adapted, mm (common practice). */
export const EYE_PUPIL_MM = 7;

/** What an eyepiece does to a surface: enlarged by `power`, dimmed by the exit pupil. */
export type EyepieceView = { readonly power: number; readonly exitPupilMm: number };

/**
 * How far above its threshold a uniform patch stands through an eyepiece.
 *
 * @param objectMagArcsec2 - mean surface brightness after the air's extinction
 * @param skyMagArcsec2 - the sky beside it
 * @param areaArcmin2 - true area on the sky
 * @returns 1 at the threshold; 3 and more is easily seen
 */
export function visibilityLevel(
  objectMagArcsec2: number,
  skyMagArcsec2: number,
  areaArcmin2: number,
  view: EyepieceView,
): number {
  const pupil = Math.min(view.exitPupilMm, EYE_PUPIL_MM) / EYE_PUPIL_MM;
  const seenSkyMag = skyMagArcsec2 - 5 * Math.log10(pupil);
  const contrast = 10 ** (0.4 * (skyMagArcsec2 - objectMagArcsec2));
  const threshold = contrastThreshold(seenSkyMag, areaArcmin2 * view.power ** 2);
  return contrast / (fieldFactor(seenSkyMag) * threshold);
}
