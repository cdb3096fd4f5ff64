/**
 * All tables of the catalogue from all their sources: pure, so that a test can build them again.
 *
 * @packageDocumentation
 */
import { lookupKey } from "../../core/targets/designation.ts";
import { SKY_OBJECT_COLUMNS, writeSkyObject } from "../../core/targets/sky-object-row.ts";
import { corrected } from "./corrections.ts";
import { baseObject, type DeepSkyProperties, type Feature, type StarName } from "./d3-celestial.ts";
import { withoutRankedRepeats } from "./duplicates.ts";
import { withoutSharedNames } from "./names.ts";
import { overlaid } from "./overlay.ts";
import { brightFirst, namedStarRows, type StarFeature, starRows } from "./star-tables.ts";
import { type TableRow, writeTable } from "./tsv.ts";

export type CatalogueSources = {
  readonly deepSky: readonly Feature<DeepSkyProperties>[];
  readonly deepSkyNames: Readonly<Record<string, { readonly name: string }>>;
  readonly stars: readonly StarFeature[];
  readonly starNames: Readonly<Record<string, StarName>>;
  readonly showpieces: readonly TableRow[];
  readonly corrections: readonly TableRow[];
  readonly alignmentStars: readonly TableRow[];
};

/** File name to text. */
export type CatalogueTables = Readonly<Record<"deep-sky.tsv" | "stars.tsv" | "named-stars.tsv", string>>;

const BUILT = "Built by `npm run catalogue`: do not edit by hand. Credits: NOTICE.";

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** Builds the tables; the same sources give the same bytes. */
export function catalogueTables(sources: CatalogueSources): CatalogueTables {
  const names = new Map(Object.entries(sources.deepSkyNames).map(([id, entry]) => [id, entry.name]));
  const base = sources.deepSky.flatMap((feature) => baseObject(feature, names) ?? []);
  const inOrder = [...corrected(base, sources.corrections)].sort(
    (a, b) => (a.magnitude ?? 99) - (b.magnitude ?? 99) || byText(a.id, b.id),
  );
  const objects = withoutRankedRepeats(withoutSharedNames(overlaid(inOrder, sources.showpieces)));

  const known = new Set(
    objects.flatMap((object) => [object.id, object.name ?? "", ...object.aliases].map(lookupKey)),
  );
  const stars = brightFirst(sources.stars);
  return {
    "deep-sky.tsv": writeTable(
      ["Deep-sky objects, J2000: showpieces first, then by magnitude.", BUILT],
      SKY_OBJECT_COLUMNS,
      objects.map(writeSkyObject),
    ),
    "stars.tsv": writeTable(
      ["Stars to magnitude 8, J2000, the brighter first.", BUILT],
      ["raDeg", "decDeg", "vMag", "colourBv"],
      starRows(stars),
    ),
    "named-stars.tsv": writeTable(
      ["Stars with a name, letter or number, J2000, the brighter first.", BUILT],
      SKY_OBJECT_COLUMNS,
      namedStarRows(stars, sources.starNames, known, sources.alignmentStars),
    ),
  };
}
