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
  /** Share of the frame from which an object is large enough. */
  readonly fullFill: number;
  /** An object is within reach when it gets to this signal-to-noise … */
  readonly wantedSignalToNoise: number;
  /** … in a square patch of this side, arcseconds. */
  readonly patchArcsec: number;
  /** What an object of unknown size is taken for, arcminutes. */
  readonly unknownSizeArcmin: number;
};

/** How well a light suits an object: its own figure where the overlay has one, else its kind's. */
export function suitability(object: SkyObject, light: Light, rules: RankingRules): number {
  return object.suits[light] ?? rules.suits[object.kind][light];
}
