/**
 * The catalogue's columns, laid out once for each catalogue.
 *
 * @packageDocumentation
 */
import { KIND_BRIGHTNESS, RANKING_RULES } from "../config/ranking.ts";
import type { Catalogue } from "../core/targets/catalogue.ts";
import { type CatalogueColumns, catalogueColumns } from "../core/targets/catalogue-columns.ts";

const laidOut = new WeakMap<Catalogue, CatalogueColumns>();

/** The columns of a catalogue; laid out at the first question, then remembered. */
export function columnsOf(catalogue: Catalogue): CatalogueColumns {
  const known = laidOut.get(catalogue);
  if (known !== undefined) return known;
  const columns = catalogueColumns(catalogue.objects, KIND_BRIGHTNESS, RANKING_RULES);
  laidOut.set(catalogue, columns);
  return columns;
}
