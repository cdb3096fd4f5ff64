/**
 * An object of the deep sky, as the catalogue holds it.
 *
 * Places are J2000. One record is one physical object: a nebula and the cluster
 * in it are one, with the nebula's extent.
 *
 * @packageDocumentation
 */

export type ObjectKind =
  | "galaxy"
  | "galaxy-group"
  | "open-cluster"
  | "globular-cluster"
  | "emission-nebula"
  | "reflection-nebula"
  | "dark-nebula"
  | "planetary-nebula"
  | "supernova-remnant"
  | "star-cloud"
  | "asterism"
  | "double-star"
  | "star";

/** The lines the exposure sums know. */
export type EmissionLine = "h-alpha" | "o-iii" | "s-ii" | "h-beta";

/** Surface brightness of the part a picture shows, where it is known. */
export type SurfaceBrightness = {
  /** Continuum, V magnitudes per square arcsecond; `null` when unknown. */
  readonly continuumMagArcsec2: number | null;
  /** Lines, in Rayleigh; a line that is missing is unknown, not dark. */
  readonly rayleigh: Readonly<Partial<Record<EmissionLine, number>>>;
};

export type SkyObject = {
  /** The designation it is filed under, such as `NGC 6888`. */
  readonly id: string;
  /** The name people use, or `null`. */
  readonly name: string | null;
  readonly kind: ObjectKind;
  /** J2000, degrees in [0, 360). */
  readonly raDeg: number;
  /** J2000, degrees in [-90, 90]. */
  readonly decDeg: number;
  /** Proper motion, arcseconds a year; in right ascension already times cos(dec). */
  readonly properMotion: { readonly raArcsec: number; readonly decArcsec: number } | null;
  /** Integrated V magnitude (of an emission nebula, its cluster's), or `null`. */
  readonly magnitude: number | null;
  readonly majorArcmin: number | null;
  readonly minorArcmin: number | null;
  /** Of the major axis, north through east, in [0, 180); `null` when unknown or round. */
  readonly positionAngleDeg: number | null;
  readonly surfaceBrightness: SurfaceBrightness;
  /** How well each line suits it, 0 to 1, where the overlay knows better than its kind. */
  readonly suits: Readonly<Partial<Record<EmissionLine | "continuum", number>>>;
  /** Every other designation and name it answers to. */
  readonly aliases: readonly string[];
  /** Whether `tonight` may propose it: not for plate-survey nebulae outside the overlay. */
  readonly ranked: boolean;
  /** Whether the overlay describes it: a showpiece. */
  readonly showpiece: boolean;
  /** The id of the larger object it is part of: of such a family, a list shows one. */
  readonly partOf?: string;
};

/** What the engine can place in the solar system. */
export type BodyName =
  | "Sun"
  | "Moon"
  | "Mercury"
  | "Venus"
  | "Mars"
  | "Jupiter"
  | "Saturn"
  | "Uranus"
  | "Neptune";

/** What a question can be about. */
export type Target =
  | { readonly kind: "object"; readonly object: SkyObject }
  | { readonly kind: "body"; readonly body: BodyName }
  | { readonly kind: "place"; readonly raDeg: number; readonly decDeg: number };
