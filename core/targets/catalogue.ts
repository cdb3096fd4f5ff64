/**
 * The catalogue in memory: look-up, nearest names, completion.
 *
 * @packageDocumentation
 */
import type { SkyObject, Target } from "./sky-object.ts";

export type Lookup =
  | { readonly kind: "found"; readonly target: Target }
  | { readonly kind: "unknown"; readonly nearest: readonly string[] };

/** A bright star with a name, for aligning and focusing. */
export type NamedStar = {
  readonly name: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly properMotion: { readonly raArcsec: number; readonly decArcsec: number };
  readonly magnitude: number;
};

export interface Catalogue {
  readonly objects: readonly SkyObject[];
  readonly alignmentStars: readonly NamedStar[];
  /** A designation, name, named star, planet, Moon, Sun or J2000 coordinates. */
  find(text: string): Lookup;
  /** Names that begin with, then contain, what was typed; showpieces first. */
  complete(typed: string, limit: number): readonly { readonly name: string; readonly value: string }[];
}
