/**
 * The star tables: places, magnitudes and colours to magnitude 8, and the stars that have a name.
 *
 * @packageDocumentation
 */
import { lookupKey } from "../../core/targets/designation.ts";
import type { SkyObject } from "../../core/targets/sky-object.ts";
import { writeSkyObject } from "../../core/targets/sky-object-row.ts";
import {
  type Feature,
  PLACE_DECIMALS,
  rightAscensionDeg,
  rounded,
  type StarName,
  type StarProperties,
} from "./d3-celestial.ts";
import type { TableRow } from "./tsv.ts";

export type StarFeature = Feature<StarProperties>;

/** Bright first, and the same on every machine. */
export function brightFirst(stars: readonly StarFeature[]): readonly StarFeature[] {
  return [...stars].sort((a, b) => a.properties.mag - b.properties.mag || Number(a.id) - Number(b.id));
}

/** Lines of right ascension, declination, V and B−V; the last is empty when unknown. */
export function starRows(stars: readonly StarFeature[]): readonly string[] {
  return stars.map(({ properties, geometry }) => {
    const [ra, dec] = geometry.coordinates;
    const colour = properties.bv === "" ? "" : rounded(Number(properties.bv), 2);
    return [rightAscensionDeg(ra), rounded(dec, PLACE_DECIMALS), rounded(properties.mag, 2), colour]
      .join("\t")
      .trimEnd();
  });
}

/** `α1` and `Cen` to `alpha1 Cen`, `R` and `Lep` to `R Lep`; empty without a letter. */
function letteredName(letter: string | undefined, constellation: string): string {
  return letter ? `${letter} ${constellation}` : "";
}

function starNames(id: string, name: StarName): string[] {
  return [
    letteredName(name.bayer, name.c),
    letteredName(name.flam, name.c),
    /\d|^[A-Z]{1,2}$/.test(name.var ?? "") ? letteredName(name.var, name.c) : "",
    name.hd,
    `HIP ${id}`,
  ].filter((one) => one !== "" && one !== undefined);
}

/**
 * Stars with a name, letter or number of a constellation, the brighter first.
 *
 * @param known - keys that belong to other objects and that no star may take
 * @param properNames - names to use instead of the base data's, by Hipparcos number; `null` for none
 */
export function namedStarRows(
  stars: readonly StarFeature[],
  names: Readonly<Record<string, StarName>>,
  known: ReadonlySet<string>,
  properNames: readonly TableRow[],
): readonly string[] {
  const preferred = new Map(properNames.map((row) => [row.hip ?? "", row.name ?? ""]));
  const taken = new Set([...known, ...properNames.map((row) => lookupKey(row.name ?? ""))]);
  const disputed = disputedLetters(stars, names);
  const claim = (text: string): boolean => {
    const key = lookupKey(text);
    if (key === "" || taken.has(key) || disputed.has(key)) return false;
    taken.add(key);
    return true;
  };
  return stars.flatMap((star) => {
    const id = String(star.id);
    const listed = names[id];
    if (listed === undefined) return [];
    const proper = preferred.get(id) ?? (listed.name && claim(listed.name) ? listed.name : null);
    const others = starNames(id, listed).filter(claim);
    const [first, ...rest] = proper === null ? others : [proper, ...others];
    if (first === undefined) return [];
    const [ra, dec] = star.geometry.coordinates;
    const object: SkyObject = {
      id: first,
      name: proper,
      kind: "star",
      raDeg: rightAscensionDeg(ra),
      decDeg: rounded(dec, PLACE_DECIMALS),
      properMotion: null,
      magnitude: rounded(star.properties.mag, 2),
      majorArcmin: null,
      minorArcmin: null,
      positionAngleDeg: null,
      surfaceBrightness: { continuumMagArcsec2: null, rayleigh: {} },
      suits: {},
      aliases: rest,
      ranked: false,
      showpiece: false,
    };
    return [writeSkyObject(object)];
  });
}

/** Letters that mean two stars once case is gone, such as `a Car` and `A Car`: nobody gets them. */
function disputedLetters(
  stars: readonly StarFeature[],
  names: Readonly<Record<string, StarName>>,
): ReadonlySet<string> {
  const written = new Map<string, string>();
  const disputed = new Set<string>();
  for (const star of stars) {
    const listed = names[String(star.id)];
    if (listed === undefined) continue;
    const letter = letteredName(listed.bayer, listed.c);
    const key = lookupKey(letter);
    const other = written.get(key);
    if (other !== undefined && other !== letter) disputed.add(key);
    written.set(key, letter);
  }
  return disputed;
}
