/**
 * The catalogue, read from the tables that ship with the program.
 *
 * @packageDocumentation
 */
import { CONSTELLATIONS } from "../../config/constellations.ts";
import { buildCatalogue, type Catalogue, type NamedStar } from "../../core/targets/catalogue.ts";
import { readSkyObject } from "../../core/targets/sky-object-row.ts";
import { tableLines } from "./data-file.ts";

function readNamedStar(line: string): NamedStar {
  const [name = "", , raDeg, decDeg, raArcsec, decArcsec, magnitude] = line.split("\t");
  return {
    name,
    raDeg: Number(raDeg),
    decDeg: Number(decDeg),
    properMotion: { raArcsec: Number(raArcsec), decArcsec: Number(decArcsec) },
    magnitude: Number(magnitude),
  };
}

/** Opens the catalogue; named stars are read when one is first looked for. */
export function openCatalogue(): Catalogue {
  return buildCatalogue({
    objects: tableLines("deep-sky.tsv").map(readSkyObject),
    alignmentStars: tableLines("alignment-stars.tsv").map(readNamedStar),
    stars: () => tableLines("named-stars.tsv").map(readSkyObject),
    constellations: CONSTELLATIONS,
  });
}
