/**
 * What the ranking is told: how well a light suits a kind, and when an object is large
 * and bright enough. `config/ranking.ts` fills it.
 *
 * @packageDocumentation
 */
import type { EmissionLine, ObjectKind, SkyObject } from "./sky-object.ts";

/** A line, or light of all colours. */
export type Light = EmissionLine | "continuum";

export type RankingRules = {
  /** How well each kind comes out in each light, 0 to 1. */
  readonly suits: Readonly<Record<ObjectKind, Readonly<Record<Light, number>>>>;
  /** What is left of it for an object that nobody has described: taken for a poor one of its kind. */
  readonly undescribed: Readonly<Partial<Record<ObjectKind, number>>>;
  /** Share of the frame from which an object is large enough. */
  readonly fullFill: number;
  /** An object is within reach when it gets to this signal-to-noise … */
  readonly wantedSignalToNoise: number;
  /** … in a square patch of this side, arcseconds. */
  readonly patchArcsec: number;
  /** What an object of unknown size is taken for, arcminutes. */
  readonly unknownSizeArcmin: number;
};

/** What the ranking for the eye is told. */
export type VisualRules = {
  /** How rewarding each kind is at an eyepiece, 0 to 1. */
  readonly suits: Readonly<Record<ObjectKind, number>>;
  /** As for a camera. */
  readonly undescribed: Readonly<Partial<Record<ObjectKind, number>>>;
  /** Counting hours from which more do not help: an object takes minutes, not a night. */
  readonly enoughHours: number;
  /** So many magnitudes above the telescope's limit, an object is two thirds as bright as one can want it. */
  readonly easyAboveLimitMag: number;
  /** So far above the threshold of contrast, it is plain to two thirds of those who look. */
  readonly easyLevel: number;
  /** Nothing with soft edges is made out at less contrast than this, however large. */
  readonly softEdgeContrast: number;
  /** How much brighter the middle is than the mean, magnitudes; 0 for kinds left out. */
  readonly coreAboveMeanMag: Readonly<Partial<Record<ObjectKind, number>>>;
  /** Apparent size in the eyepiece from which an object is large enough, arcminutes. */
  readonly largeArcmin: number;
  /** What a field of stars is taken for when an eyepiece is chosen for it. */
  readonly starryMagArcsec2: number;
};

/** How well a light suits an object: its own figure where the overlay has one, else its kind's. */
export function suitability(object: SkyObject, light: Light, rules: RankingRules): number {
  const own = object.suits[light];
  if (own !== undefined) return own;
  const described = object.showpiece ? 1 : (rules.undescribed[object.kind] ?? 1);
  return described * rules.suits[object.kind][light];
}
