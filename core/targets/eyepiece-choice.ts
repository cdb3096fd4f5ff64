/**
 * Which eyepiece shows an object best, and how well the eye sees it there.
 *
 * @packageDocumentation
 */
import { nakedEyeLimit } from "../night/sky-brightness.ts";
import type { Eyepiece, VisualRig } from "../rig/rig.ts";
import { EYE_PUPIL_MM, visibilityLevel } from "./eye-contrast.ts";

export type EyepieceUse = {
  readonly eyepiece: Eyepiece;
  /** Telescope's focal length over the eyepiece's. */
  readonly power: number;
  /** Degrees of sky, apparent field over power. */
  readonly trueFieldDeg: number;
  /** Width of the beam that leaves it, mm. */
  readonly exitPupilMm: number;
};

/** What each of a rig's eyepieces gives, lowest power first. */
export function eyepieceUses(rig: VisualRig): EyepieceUse[] {
  return rig.eyepieces
    .map((eyepiece) => {
      const power = rig.focalLengthMm / eyepiece.focalLengthMm;
      return {
        eyepiece,
        power,
        trueFieldDeg: eyepiece.apparentFieldDeg / power,
        exitPupilMm: rig.apertureMm / power,
      };
    })
    .sort((one, other) => one.power - other.power);
}

/** What the eye loses to glass and to a star's blur at the eyepiece, magnitudes (common practice). */
const EYEPIECE_LOSS_MAG = 0.5;

/**
 * Faintest star through a telescope.
 *
 * @returns NELM + 5 log₁₀(D/7 mm) − 0.5, visual magnitudes (common practice)
 */
export function telescopeLimitMag(zenithMagArcsec2: number, apertureMm: number): number {
  return nakedEyeLimit(zenithMagArcsec2) + 5 * Math.log10(apertureMm / EYE_PUPIL_MM) - EYEPIECE_LOSS_MAG;
}

/** An extended object as the eye meets it. */
export type Patch = {
  readonly majorArcmin: number;
  readonly minorArcmin: number;
  /** Mean surface brightness, V, after extinction. */
  readonly magArcsec2: number;
};

export type PatchView = {
  readonly use: EyepieceUse;
  /** Above the threshold of seeing at all; 1 is the threshold. */
  readonly level: number;
  /** Share of the object that the field holds. */
  readonly objectInField: number;
  /** Share of the field that the object covers. */
  readonly fillFraction: number;
};

/** How a circular field of view takes in an ellipse, by areas: exact when one holds the other. */
export function circleFit(majorDeg: number, minorDeg: number, fieldDeg: number) {
  const heldMajor = Math.min(majorDeg, fieldDeg);
  const heldMinor = Math.min(minorDeg, fieldDeg);
  const held = heldMajor * heldMinor;
  return { objectInField: held / (majorDeg * minorDeg), fillFraction: held / (fieldDeg * fieldDeg) };
}

const ARCMIN_PER_DEG = 60;

/**
 * The eyepiece that shows a patch best: seen most clearly, with most of it in the field.
 *
 * @returns `null` for a rig without eyepieces
 */
export function bestView(
  uses: readonly EyepieceUse[],
  patch: Patch,
  skyMagArcsec2: number,
): PatchView | null {
  let best: PatchView | null = null;
  const areaArcmin2 = (Math.PI / 4) * patch.majorArcmin * patch.minorArcmin;
  for (const use of uses) {
    const fit = circleFit(
      patch.majorArcmin / ARCMIN_PER_DEG,
      patch.minorArcmin / ARCMIN_PER_DEG,
      use.trueFieldDeg,
    );
    const level = visibilityLevel(patch.magArcsec2, skyMagArcsec2, areaArcmin2, use);
    const better = best === null || level * fit.objectInField > best.level * best.objectInField;
    if (better) best = { use, level, ...fit };
  }
  return best;
}
