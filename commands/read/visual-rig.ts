/**
 * A visual observer's rig made of what its owner says.
 *
 * @packageDocumentation
 */
import * as limits from "../../config/input-limits.ts";
import {
  APPARENT_FIELD_OF_UNKNOWN_DEG,
  DEFAULT_EYEPIECES,
  DEFAULT_VISUAL_MOUNT,
} from "../../config/visual-defaults.ts";
import type { Eyepiece, Mount, VisualRig } from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import { listWords } from "../words/sky.ts";
import { plainNumber, withinRange } from "./numbers.ts";

/** What an owner has said; `null`, or no eyepieces, where nothing was. */
export type VisualFacts = {
  readonly kind: "visual";
  readonly name: string;
  readonly apertureMm: number;
  readonly focalRatio: number;
  readonly mount: Mount | null;
  readonly eyepieces: readonly Eyepiece[];
};

/**
 * The rig, its assumptions named.
 *
 * @param optionOf - which option a figure came from, for the message
 */
export function visualRigOf(facts: VisualFacts, optionOf: (fact: keyof VisualFacts) => string): VisualRig {
  withinRange(optionOf("apertureMm"), facts.apertureMm, { ...limits.APERTURE_MM, unit: "mm of aperture" });
  withinRange(optionOf("focalRatio"), facts.focalRatio, { ...limits.FOCAL_RATIO, unit: "as a focal ratio" });
  const focalLengthMm = facts.apertureMm * facts.focalRatio;
  withinRange(optionOf("focalRatio"), focalLengthMm, {
    ...limits.FOCAL_LENGTH_MM,
    unit: "mm of focal length",
  });
  checkEyepieces(optionOf("eyepieces"), facts.eyepieces);
  const assumptions: string[] = [];
  if (facts.eyepieces.length === 0) {
    assumptions.push(`The eyepieces are taken as ${listWords(DEFAULT_EYEPIECES.map(eyepieceWords))}.`);
  }
  return {
    kind: "visual",
    name: facts.name,
    apertureMm: facts.apertureMm,
    focalLengthMm,
    mount: facts.mount ?? DEFAULT_VISUAL_MOUNT,
    eyepieces: facts.eyepieces.length > 0 ? facts.eyepieces : DEFAULT_EYEPIECES,
    assumptions,
  };
}

/**
 * Eyepieces from `focal length/apparent field`, parted by commas or spaces: `25/52, 10/70`.
 *
 * @param option - the option it came from, for the message
 */
export function parseEyepieces(option: string, text: string): readonly Eyepiece[] {
  const eyepieces = text
    .replace(/(mm|°)/gi, "")
    .replace(/\s*\/\s*/g, "/")
    .split(/[\s,;]+/)
    .filter((part) => part !== "")
    .map((part) => {
      const [focal, field, more] = part.split("/").map((figure) => plainNumber(figure));
      if (typeof focal !== "number" || field === null || more !== undefined) {
        throw new AskError(
          "unreadable-eyepieces",
          option,
          `“${option}” needs focal length/apparent field of each, such as 25/52, 10/70.`,
        );
      }
      return { focalLengthMm: focal, apparentFieldDeg: field ?? APPARENT_FIELD_OF_UNKNOWN_DEG };
    });
  if (eyepieces.length === 0) {
    throw new AskError(
      "unreadable-eyepieces",
      option,
      `“${option}” needs at least one eyepiece, such as 25/52.`,
    );
  }
  checkEyepieces(option, eyepieces);
  return eyepieces;
}

/** `25 mm (52°)`. */
export function eyepieceWords({ focalLengthMm, apparentFieldDeg }: Eyepiece): string {
  return `${focalLengthMm} mm (${apparentFieldDeg}°)`;
}

function checkEyepieces(option: string, eyepieces: readonly Eyepiece[]): void {
  if (eyepieces.length > limits.EYEPIECES_AT_MOST) {
    throw new AskError(
      "too-many-eyepieces",
      option,
      `“${option}” takes at most ${limits.EYEPIECES_AT_MOST} eyepieces.`,
    );
  }
  for (const { focalLengthMm, apparentFieldDeg } of eyepieces) {
    withinRange(option, focalLengthMm, { ...limits.EYEPIECE_MM, unit: "mm of an eyepiece's focal length" });
    withinRange(option, apparentFieldDeg, { ...limits.APPARENT_FIELD_DEG, unit: "° of an eyepiece's field" });
  }
}
