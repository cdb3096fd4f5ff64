/**
 * What stands ready at a public evening, and what each of it gives the eye.
 *
 * @packageDocumentation
 */

import { EYE_PUPIL_MM } from "../targets/eye-contrast.ts";
import type { EyepieceUse } from "../targets/eyepiece-choice.ts";

export type Instrument =
  /** The bare eye: everybody at once. */
  | { readonly kind: "eyes" }
  | {
      readonly kind: "binoculars";
      readonly count: number;
      readonly power: number;
      readonly apertureMm: number;
    }
  | { readonly kind: "telescope"; readonly count: number; readonly apertureMm: number }
  /** Made for the Sun alone. */
  | { readonly kind: "solar-telescope"; readonly count: number; readonly apertureMm: number };

/** How telescopes are used before the public; stands in `config/`. */
export type ViewingRules = {
  /** Beams that the eyepieces at hand give, mm, the widest first. */
  readonly exitPupilsMm: readonly number[];
  /** Of those eyepieces. */
  readonly apparentFieldDeg: number;
  /** Focal length over aperture that stands in, so that an eyepiece can be named. */
  readonly focalRatio: number;
  /** More is no use through ordinary air. */
  readonly mostPower: number;
  readonly binocularFieldDeg: number;
};

/** One instrument with its ways of looking, lowest power first. */
export type Viewer = {
  readonly instrument: Instrument;
  readonly apertureMm: number;
  readonly uses: readonly EyepieceUse[];
};

/** How far the bare eye takes in at once, degrees. */
const EYE_FIELD_DEG = 100;

/** How many people can look at once. */
export function placesAt(instrument: Instrument): number {
  return instrument.kind === "eyes" ? Number.POSITIVE_INFINITY : instrument.count;
}

/** What an instrument gives the eye. */
export function viewerOf(instrument: Instrument, rules: ViewingRules): Viewer {
  switch (instrument.kind) {
    case "eyes":
      return { instrument, apertureMm: EYE_PUPIL_MM, uses: [fixedUse(1, EYE_PUPIL_MM, EYE_FIELD_DEG)] };
    case "binoculars": {
      const { power, apertureMm } = instrument;
      return { instrument, apertureMm, uses: [fixedUse(power, apertureMm, rules.binocularFieldDeg)] };
    }
    case "telescope":
    case "solar-telescope":
      return {
        instrument,
        apertureMm: instrument.apertureMm,
        uses: telescopeUses(instrument.apertureMm, rules),
      };
  }
}

function fixedUse(power: number, apertureMm: number, apparentFieldDeg: number): EyepieceUse {
  return {
    eyepiece: { focalLengthMm: 1, apparentFieldDeg },
    power,
    trueFieldDeg: apparentFieldDeg / power,
    exitPupilMm: apertureMm / power,
  };
}

function telescopeUses(apertureMm: number, rules: ViewingRules): EyepieceUse[] {
  const uses = rules.exitPupilsMm.map((exitPupilMm) => {
    const power = apertureMm / exitPupilMm;
    const { apparentFieldDeg, focalRatio } = rules;
    return {
      eyepiece: { focalLengthMm: exitPupilMm * focalRatio, apparentFieldDeg },
      power,
      trueFieldDeg: apparentFieldDeg / power,
      exitPupilMm,
    };
  });
  const [weakest] = uses;
  const fitting = uses.filter(({ power }) => power <= rules.mostPower);
  return fitting.length > 0 || weakest === undefined ? fitting : [weakest];
}
