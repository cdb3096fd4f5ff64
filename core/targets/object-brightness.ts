/**
 * How bright an object's surface is: as known, as its mean, or as its kind usually is.
 *
 * @packageDocumentation
 */
import type { EmissionLine, ObjectKind, SkyObject, SurfaceBrightness } from "./sky-object.ts";

/** `known` from the overlay; `mean` from magnitude and size; `assumed` from the kind. */
export type BrightnessBasis = "known" | "mean" | "assumed";

export type ObjectBrightness = {
  readonly brightness: SurfaceBrightness;
  readonly basis: BrightnessBasis;
};

/** Pessimistic figures by kind, from `config/`, for objects of which nothing is known. */
export type KindBrightness = Readonly<
  Record<
    ObjectKind,
    {
      /** V magnitudes per square arcsecond; `null` of what shines in lines alone. */
      readonly continuumMagArcsec2: number | null;
      readonly rayleigh: Readonly<Partial<Record<EmissionLine, number>>>;
    }
  >
>;

const ARCSEC2_PER_ARCMIN2 = 3600;

/** Kinds whose catalogue magnitude is their own light, spread over their own extent. */
const MAGNITUDE_IS_ITS_OWN: ReadonlySet<ObjectKind> = new Set([
  "galaxy",
  "galaxy-group",
  "globular-cluster",
  "open-cluster",
  "planetary-nebula",
  "star-cloud",
  "asterism",
]);

/**
 * Mean surface brightness over an object's ellipse.
 *
 * @returns m + 2.5 log₁₀(π/4·a·b in arcsec²), V magnitudes per square arcsecond; `null` when magnitude
 *   or size are unknown, or when the magnitude is not the object's own (an emission nebula's is its
 *   cluster's)
 */
function meanMagArcsec2(
  object: Pick<SkyObject, "kind" | "magnitude" | "majorArcmin" | "minorArcmin">,
): number | null {
  const { kind, magnitude, majorArcmin } = object;
  if (!MAGNITUDE_IS_ITS_OWN.has(kind) || magnitude === null || majorArcmin === null) return null;
  const minorArcmin = object.minorArcmin ?? majorArcmin;
  const areaArcsec2 = (Math.PI / 4) * majorArcmin * minorArcmin * ARCSEC2_PER_ARCMIN2;
  return areaArcsec2 > 0 ? magnitude + 2.5 * Math.log10(areaArcsec2) : null;
}

/** Whether a catalogue's magnitude of this kind is the object's own light. */
export function magnitudeIsItsOwn(kind: ObjectKind): boolean {
  return MAGNITUDE_IS_ITS_OWN.has(kind) || kind === "double-star" || kind === "star";
}

/** Whether a kind has a figure to stand in: stars have none, and nothing is assumed of them. */
function hasUsual({ continuumMagArcsec2, rayleigh }: KindBrightness[ObjectKind]): boolean {
  return continuumMagArcsec2 !== null || Object.keys(rayleigh).length > 0;
}

/**
 * The brightness sums are made with.
 *
 * What the overlay knows stands; a missing continuum is the object's mean where it has one; what is
 * still missing is the pessimistic figure of its kind.
 */
export function objectBrightness(object: SkyObject, byKind: KindBrightness): ObjectBrightness {
  const known = object.surfaceBrightness;
  const usual = byKind[object.kind];
  const mean = meanMagArcsec2(object);
  const isKnown = known.continuumMagArcsec2 !== null || Object.keys(known.rayleigh).length > 0;
  return {
    brightness: {
      continuumMagArcsec2: known.continuumMagArcsec2 ?? mean ?? usual.continuumMagArcsec2,
      rayleigh: { ...usual.rayleigh, ...known.rayleigh },
    },
    basis: isKnown || !hasUsual(usual) ? "known" : mean === null ? "assumed" : "mean",
  };
}
