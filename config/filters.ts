/**
 * Filters that can be named without being saved, and what a filter passes when nobody says.
 *
 * @packageDocumentation
 */
import type { Filter } from "../core/rig/rig.ts";
import type { EmissionLine } from "../core/targets/sky-object.ts";

/** Peak transmission of a filter; common practice. */
export const FILTER_TRANSMISSION = 0.85;

/** Width of a line filter named by its line alone, nanometres; common practice. */
export const LINE_FILTER_WIDTH_NM = 7;

/** 400–700 nm, as the sensor divides it. */
export const NO_FILTER: Filter = { name: "none", bands: [], transmission: 1 };

/** How people write the lines, without case, spaces, hyphens and brackets. */
export const LINE_SPELLINGS: Readonly<Record<EmissionLine, readonly string[]>> = {
  "h-alpha": ["halpha", "hα", "ha", "hydrogenalpha"],
  "o-iii": ["oiii", "o3", "oxygen"],
  "s-ii": ["sii", "s2", "sulphur", "sulfur"],
  "h-beta": ["hbeta", "hβ", "hb", "hydrogenbeta"],
};

function broad(name: string, centreNm: number, widthNm: number): Filter {
  return { name, bands: [{ name, centreNm, widthNm }], transmission: FILTER_TRANSMISSION };
}

/** Broad filters by name: common practice, to some 10 nm. */
export const BROAD_FILTERS: readonly Filter[] = [
  broad("luminance", 550, 300),
  broad("red", 640, 100),
  broad("green", 535, 80),
  broad("blue", 450, 100),
];
