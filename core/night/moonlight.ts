/**
 * Moonlight scattered into the line of sight.
 *
 * The published model is for V. Carrying it to a filter's wavelength, so that the
 * Moon spoils oxygen more than hydrogen, is this project's own extension.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "../sky/angles.ts";
import { scatteringPath } from "../targets/airmass.ts";
import { AEROSOL_EXPONENT, V_BAND_NM } from "../targets/extinction.ts";

/** Nearer than this the aerosol term follows the inner law. */
const INNER_SEPARATION_DEG = 10;

/** The Moon's own radius: nothing is seen nearer to it. */
const MOON_RADIUS_DEG = 0.26;

export type MoonlightQuestion = {
  /** Airless, degrees; at or below 0 there is no moonlight. */
  readonly moonAltitudeDeg: number;
  /** Airless, degrees. */
  readonly targetAltitudeDeg: number;
  /** Between Moon and target, degrees in [0, 180]. */
  readonly separationDeg: number;
  /** 0 at full Moon, 180 at new. */
  readonly phaseAngleDeg: number;
  /** Extinction in V, magnitudes per air mass: what scatters light towards us. */
  readonly extinctionV: number;
  /** Extinction at `wavelengthNm`: what dims the Moon on its way. */
  readonly extinction: number;
  /** Where the filter looks; 550 gives the published V model. */
  readonly wavelengthNm: number;
  /** Share of moonlight left in a lunar eclipse; 1 otherwise. */
  readonly litShare: number;
};

/**
 * The Moon's light outside the air, in the units of the source's equation 20.
 *
 * @param phaseAngleDeg - 0 at full Moon; the sign does not matter
 */
function moonIlluminance(phaseAngleDeg: number): number {
  const angle = Math.abs(phaseAngleDeg);
  return 10 ** (-0.4 * (3.84 + 0.026 * angle + 4e-9 * angle ** 4));
}

/** Scattering by air molecules at 550 nm, by angle from the Moon (equation 17). */
function rayleighScattering(separationDeg: number): number {
  const cosine = Math.cos(separationDeg * RAD_PER_DEG);
  return 10 ** 5.36 * (1.06 + cosine * cosine);
}

/** Scattering by aerosol at 550 nm, by angle from the Moon (equations 18 and 19). */
export function mieScattering(separationDeg: number): number {
  if (separationDeg >= INNER_SEPARATION_DEG) return 10 ** (6.15 - separationDeg / 40);
  return 6.2e7 / Math.max(separationDeg, MOON_RADIUS_DEG) ** 2;
}

/**
 * Scattering at a filter's wavelength: air as λ⁻⁴, aerosol as λ⁻¹·³.
 *
 * @remarks
 * The project's own extension of a V-band model. Against 550 nm, 60° from the Moon:
 * 0.532 at 656.3 nm and 1.414 at 500.7 nm.
 */
export function scattering(separationDeg: number, wavelengthNm: number): number {
  const ratio = V_BAND_NM / wavelengthNm;
  return (
    rayleighScattering(separationDeg) * ratio ** 4 + mieScattering(separationDeg) * ratio ** AEROSOL_EXPONENT
  );
}

/**
 * The Moon's light as it reaches the scattering air: its illuminance times what its own path lets
 * through. Depends on the instant and the wavelength only, not on the target.
 */
export function moonBeam(
  moonAltitudeDeg: number,
  phaseAngleDeg: number,
  extinction: number,
  litShare: number,
): number {
  if (moonAltitudeDeg <= 0) return 0;
  const path = scatteringPath(90 - moonAltitudeDeg);
  return litShare * moonIlluminance(phaseAngleDeg) * 10 ** (-0.4 * extinction * path);
}

/** Share of a beam that the target's line of sight scatters: depends on the target's altitude only. */
export function scatteredShare(targetAltitudeDeg: number, extinctionV: number): number {
  return 1 - 10 ** (-0.4 * extinctionV * scatteringPath(90 - targetAltitudeDeg));
}

/**
 * Brightness that the Moon adds to the sky at a target.
 *
 * @returns nanolamberts, V-equivalent at the wavelength asked for; 0 with the Moon down
 *
 * @remarks
 * Stated accuracy in V: 8–23 %. It is {@link scattering} × {@link moonBeam} × {@link scatteredShare};
 * a loop over many targets may take the three apart.
 *
 * Source: K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033.
 */
export function moonlightNanolamberts(question: MoonlightQuestion): number {
  const beam = moonBeam(
    question.moonAltitudeDeg,
    question.phaseAngleDeg,
    question.extinction,
    question.litShare,
  );
  if (beam === 0) return 0;
  return (
    scattering(question.separationDeg, question.wavelengthNm) *
    beam *
    scatteredShare(question.targetAltitudeDeg, question.extinctionV)
  );
}
