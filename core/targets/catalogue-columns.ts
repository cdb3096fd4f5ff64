/**
 * The catalogue as columns of numbers, side by side, for loops over all of it.
 *
 * @packageDocumentation
 */
import { nanolamberts } from "../night/sky-brightness.ts";
import { EMISSION_LINES } from "../rig/emission-lines.ts";
import { unitVector } from "../sky/place.ts";
import { type KindBrightness, objectBrightness } from "./object-brightness.ts";
import { type Light, type RankingRules, suitability } from "./ranking-rules.ts";
import type { EmissionLine, SkyObject } from "./sky-object.ts";

export type CatalogueColumns = {
  /** The objects that may be proposed, in the columns' order. */
  readonly objects: readonly SkyObject[];
  /** J2000 unit vectors, x y z x y z … */
  readonly directions: Float64Array;
  /** Degrees; the smallest stand-in where unknown. */
  readonly majorDeg: Float64Array;
  readonly minorDeg: Float64Array;
  /** Nanolamberts of continuum; 0 where there is none. */
  readonly continuum: Float64Array;
  /** Rayleigh by line; 0 where there is none. */
  readonly rayleigh: Readonly<Record<EmissionLine, Float64Array>>;
  readonly suits: Readonly<Record<Light, Float64Array>>;
  /** Nanolamberts to the dark-adapted eye: continuum, [O III] and Hβ; 0 where there is none. */
  readonly toTheEye: Float64Array;
};

/**
 * Nanolamberts in V that one Rayleigh near 500 nm is worth to the eye: 0.018704 photons s⁻¹ m⁻² arcsec⁻²
 * over the V band's 90 nm (common practice) of 10⁸ photons a nanometre at V = 0; 29.2 mag/arcsec².
 */
const NANOLAMBERTS_PER_RAYLEIGH = nanolamberts(2.5 * Math.log10((1e8 * 90) / 0.018704));
/** Hα over Hβ in ionised gas that no dust reddens (D. E. Osterbrock, case B at 10,000 K; from memory). */
const BALMER_RATIO = 2.86;

const ARCMIN_PER_DEG = 60;

const BELT_DEG = 10;

/** Belt by belt of declination, each by right ascension: neighbours rise and set together, which loops like. */
function byPlace(one: SkyObject, other: SkyObject): number {
  const belt = ({ decDeg }: SkyObject) => Math.floor(decDeg / BELT_DEG);
  return belt(one) - belt(other) || one.raDeg - other.raDeg;
}

/** Lays out the objects that may be proposed; done once for a catalogue. */
export function catalogueColumns(
  catalogue: readonly SkyObject[],
  byKind: KindBrightness,
  rules: RankingRules,
): CatalogueColumns {
  const objects = catalogue.filter((object) => object.ranked).sort(byPlace);
  const count = objects.length;
  const column = () => new Float64Array(count);
  const columns = {
    objects,
    directions: new Float64Array(3 * count),
    majorDeg: column(),
    minorDeg: column(),
    continuum: column(),
    toTheEye: column(),
    rayleigh: { "h-alpha": column(), "o-iii": column(), "s-ii": column(), "h-beta": column() },
    suits: {
      "h-alpha": column(),
      "o-iii": column(),
      "s-ii": column(),
      "h-beta": column(),
      continuum: column(),
    },
  };
  objects.forEach((object, index) => {
    columns.directions.set(unitVector(object.raDeg, object.decDeg), 3 * index);
    const major = object.majorArcmin ?? rules.unknownSizeArcmin;
    columns.majorDeg[index] = major / ARCMIN_PER_DEG;
    columns.minorDeg[index] = (object.minorArcmin ?? major) / ARCMIN_PER_DEG;
    const { brightness } = objectBrightness(object, byKind);
    const { continuumMagArcsec2 } = brightness;
    columns.continuum[index] = continuumMagArcsec2 === null ? 0 : nanolamberts(continuumMagArcsec2);
    const {
      "h-alpha": hAlpha = 0,
      "o-iii": oxygen = 0,
      "h-beta": hBeta = hAlpha / BALMER_RATIO,
    } = brightness.rayleigh;
    columns.toTheEye[index] =
      (columns.continuum[index] as number) + NANOLAMBERTS_PER_RAYLEIGH * (oxygen + hBeta);
    columns.suits.continuum[index] = suitability(object, "continuum", rules);
    for (const line of EMISSION_LINES) {
      columns.rayleigh[line][index] = brightness.rayleigh[line] ?? 0;
      columns.suits[line][index] = suitability(object, line, rules);
    }
  });
  return columns;
}
