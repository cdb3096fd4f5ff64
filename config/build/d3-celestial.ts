/**
 * The shapes of the d3-celestial data files, and their deep-sky rows as our objects.
 *
 * @packageDocumentation
 */
import type { ObjectKind, SkyObject } from "../../core/targets/sky-object.ts";

export type Feature<Properties> = {
  readonly id: string | number;
  readonly properties: Properties;
  /** Degrees, right ascension in (-180, 180]. */
  readonly geometry: { readonly coordinates: readonly [number, number] };
};

export type DeepSkyProperties = {
  readonly desig: string;
  readonly type: string;
  /** Magnitude, 999 when unknown; a class of opacity for dark nebulae. */
  readonly mag: string | number;
  /** Arcminutes, such as `90x40` or `30`. */
  readonly dim: string;
};

export type StarProperties = { readonly mag: number; readonly bv: string };

export type StarName = {
  readonly name: string;
  readonly bayer: string;
  readonly flam: string;
  readonly var: string;
  readonly hd: string;
  /** Abbreviation of the constellation. */
  readonly c: string;
};

const KINDS: Readonly<Record<string, ObjectKind>> = {
  gg: "galaxy-group",
  g: "galaxy",
  s: "galaxy",
  s0: "galaxy",
  sd: "galaxy",
  i: "galaxy",
  e: "galaxy",
  oc: "open-cluster",
  gc: "globular-cluster",
  dn: "dark-nebula",
  bn: "emission-nebula",
  sfr: "emission-nebula",
  en: "emission-nebula",
  rn: "reflection-nebula",
  pn: "planetary-nebula",
  snr: "supernova-remnant",
};

/** Catalogues of reflection nebulae: what they call a bright nebula is one. */
const REFLECTION_CATALOGUES = /^(?:VdB|VdBH|Ced) /;

/** Surveys of plates: searchable, but proposed only where the overlay describes the object. */
const PLATE_SURVEYS = /^(?:LDN|LBN|B|Ced|VdBH|RCW|SNR G|ESO|VV|Arp|PK) /;

/** Galaxies known by a survey number alone are kept down to this magnitude. */
const FAINTEST_NUMBERED_GALAXY = 13.5;

/** Clusters of galaxies are kept down to this magnitude of their tenth brightest member. */
const FAINTEST_GALAXY_CLUSTER = 14;

/** A group of bright stars wider than this that no showpiece describes is a scatter: nothing to propose. */
const WIDEST_CLUSTER_ARCMIN = 60;

export const PLACE_DECIMALS = 4;

export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

/** Right ascension in [0, 360). */
export function rightAscensionDeg(coordinate: number): number {
  return rounded(((coordinate % 360) + 360) % 360, PLACE_DECIMALS) % 360;
}

/** A designation as people write it: `M31`, `Sh2-240`, `vdB 142`. */
function writtenDesignation(id: string): string {
  return id
    .replace(/^([MC]) (\d+)$/, "$1$2")
    .replace(/^Sh2 /, "Sh2-")
    .replace(/^VdB/, "vdB")
    .replace(/^SNR G /, "SNR G")
    .replace(/^PK /, "PK ");
}

function extentArcmin(dim: string): { major: number | null; minor: number | null } {
  const sides = dim
    .split("x")
    .map(Number)
    .filter((side) => side > 0)
    .map((side) => rounded(side, 2));
  if (sides.length === 0) return { major: null, minor: null };
  return { major: Math.max(...sides), minor: Math.min(...sides) };
}

function isKept(id: string, magnitude: number | null): boolean {
  if (id.startsWith("PGC ")) return magnitude !== null && magnitude <= FAINTEST_NUMBERED_GALAXY;
  if (id.startsWith("ACO ")) return magnitude !== null && magnitude <= FAINTEST_GALAXY_CLUSTER;
  return !id.startsWith("PN G ");
}

/**
 * The object of one row of `dsos.20.json`, or `null` when it is too faint to be kept or no place on the sky.
 *
 * @throws Error on a type that the table of kinds does not know
 */
export function baseObject(
  feature: Feature<DeepSkyProperties>,
  names: ReadonlyMap<string, string>,
): SkyObject | null {
  const { desig, type, mag, dim } = feature.properties;
  const kind = KINDS[type];
  if (kind === undefined) throw new Error(`unknown type “${type}” of ${feature.id}`);
  const id = String(feature.id);
  const magnitude = kind === "dark-nebula" || Number(mag) === 999 ? null : rounded(Number(mag), 2);
  const [ra, dec] = feature.geometry.coordinates;
  // Two remnants (G263.9-03.0, G266.2-01.2) have their columns out of step and stand off the sky.
  if (Math.abs(dec) > 90 || !isKept(id, magnitude)) return null;
  const written = writtenDesignation(/^[MC] \d+$/.test(desig) ? desig : id);
  const extent = extentArcmin(dim);
  return {
    id: written,
    name: names.get(id) ?? null,
    kind: kind === "emission-nebula" && REFLECTION_CATALOGUES.test(id) ? "reflection-nebula" : kind,
    raDeg: rightAscensionDeg(ra),
    decDeg: rounded(dec, PLACE_DECIMALS),
    properMotion: null,
    magnitude,
    majorArcmin: extent.major,
    minorArcmin: extent.minor,
    positionAngleDeg: null,
    surfaceBrightness: { continuumMagArcsec2: null, rayleigh: {} },
    suits: {},
    aliases: [desig, id]
      .map(writtenDesignation)
      .filter((name, i, all) => name !== written && all.indexOf(name) === i),
    ranked:
      !PLATE_SURVEYS.test(id) && !(kind === "open-cluster" && (extent.major ?? 0) >= WIDEST_CLUSTER_ARCMIN),
    showpiece: false,
  };
}
