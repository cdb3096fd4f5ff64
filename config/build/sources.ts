/**
 * The catalogue's sources, read from disk.
 *
 * @packageDocumentation
 */
import { readFileSync } from "node:fs";
import type { DeepSkyProperties, Feature, StarName } from "./d3-celestial.ts";
import type { StarFeature } from "./star-tables.ts";
import type { CatalogueSources } from "./tables.ts";
import { readTable, type TableRow } from "./tsv.ts";

const ROOT = new URL("../../", import.meta.url);
const THEIRS = new URL("node_modules/d3-celestial/data/", ROOT);

/** The folder of our own tables. */
export const DATA_FOLDER = new URL("config/data/", ROOT);

function json<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(name, THEIRS), "utf8"));
}

function table(name: string): readonly TableRow[] {
  return readTable(readFileSync(new URL(name, DATA_FOLDER), "utf8"));
}

/** The tables of showpieces, in the order in which completion offers what is in them. */
const SHOWPIECE_TABLES = [
  "emission-nebulae",
  "galaxies",
  "planetary-nebulae",
  "open-clusters",
  "globular-clusters",
  "reflection-and-dark-nebulae",
  "star-clouds",
  "double-stars",
];

/** Every row of the overlay: Messier's objects first, otherwise table by table. */
function readShowpieces(): readonly TableRow[] {
  const rows = SHOWPIECE_TABLES.flatMap((name) => table(`showpieces/${name}.tsv`));
  const isMessier = (row: TableRow) => /^M\d+$/.test(row.id ?? "");
  return [...rows.filter(isMessier), ...rows.filter((row) => !isMessier(row))];
}

export function readCatalogueSources(): CatalogueSources {
  return {
    deepSky: json<{ features: Feature<DeepSkyProperties>[] }>("dsos.20.json").features,
    deepSkyNames: json<Record<string, { name: string }>>("dsonames.json"),
    stars: json<{ features: StarFeature[] }>("stars.8.json").features,
    starNames: json<Record<string, StarName>>("starnames.json"),
    showpieces: readShowpieces(),
    corrections: table("place-corrections.tsv"),
    alignmentStars: table("alignment-stars.tsv"),
  };
}
