/**
 * The star table to magnitude 8, in columns, for charts.
 *
 * @packageDocumentation
 */
import type { StarTable } from "../../commands/context.ts";
import { tableLines } from "./data-file.ts";

/** Reads the stars, the brightest first: some tens of milliseconds, so call it when first needed. */
export function openStars(): StarTable {
  const lines = tableLines("stars.tsv");
  const stars = {
    count: lines.length,
    raDeg: new Float64Array(lines.length),
    decDeg: new Float64Array(lines.length),
    magnitude: new Float32Array(lines.length),
    colourIndex: new Float32Array(lines.length),
  };
  lines.forEach((line, i) => {
    const [ra, dec, magnitude, colour] = line.split("\t");
    stars.raDeg[i] = Number(ra);
    stars.decDeg[i] = Number(dec);
    stars.magnitude[i] = Number(magnitude);
    stars.colourIndex[i] = colour === undefined || colour === "" ? Number.NaN : Number(colour);
  });
  return stars;
}
