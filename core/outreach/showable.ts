/**
 * What may be shown to guests, as the plan of an evening needs to know it.
 *
 * @packageDocumentation
 */
import type { BodyName, ObjectKind, Target } from "../targets/sky-object.ts";

/** Stars that the bare eye joins to a figure, or one bright star. */
export type EyeFigure = {
  readonly name: string;
  /** J2000, its middle. */
  readonly raDeg: number;
  readonly decDeg: number;
  readonly extentDeg: number;
  /** The faintest star it needs; of a glow, the naked-eye limit that shows it. */
  readonly faintestMag: number;
};

export type ShowableKind = ObjectKind | "moon" | "planet" | "figure";

export type Showable = {
  readonly name: string;
  readonly kind: ShowableKind;
  readonly target: Target;
  /** How much guests like it, 1 to 10. */
  readonly appeal: number;
  /** One true sentence to say about it. */
  readonly line: string;
  /** Its extent; of a double star, its separation; `null` of bodies, whose size changes. */
  readonly majorArcmin: number | null;
  readonly minorArcmin: number | null;
  /** Of the whole; of a figure, of its faintest star; `null` when unknown. */
  readonly magnitude: number | null;
  /** Mean surface to the dark-adapted eye, V; `null` of stars and bodies. */
  readonly surfaceMagArcsec2: number | null;
};

/** Name of the solar-system body, or `null`. */
export function bodyOf({ target }: Showable): BodyName | null {
  return target.kind === "body" ? target.body : null;
}
