/**
 * Base rows that stand at the wrong place, put right.
 *
 * @packageDocumentation
 */
import { lookupKey } from "../../core/targets/designation.ts";
import type { SkyObject } from "../../core/targets/sky-object.ts";
import { PLACE_DECIMALS, rounded } from "./d3-celestial.ts";
import type { TableRow } from "./tsv.ts";

/** From this far off the base row describes another object altogether, arcminutes: its figures go too. */
const ANOTHER_OBJECT_ARCMIN = 2;

/**
 * Base rows with corrected places.
 *
 * @param rows - columns `id`, `raDeg`, `decDeg`, `majorArcmin` (or empty), `offArcmin`
 * @throws Error when a correction is for no base row
 */
export function corrected(base: readonly SkyObject[], rows: readonly TableRow[]): readonly SkyObject[] {
  const byKey = new Map(rows.map((row) => [lookupKey(row.id ?? ""), row]));
  const used = new Set<string>();
  const result = base.map((object) => {
    const names = [object.id, ...object.aliases].map(lookupKey);
    const key = names.find((name) => byKey.has(name));
    const row = key === undefined ? undefined : byKey.get(key);
    if (key === undefined || row === undefined) return object;
    used.add(key);
    const place = {
      raDeg: rounded(Number(row.raDeg), PLACE_DECIMALS),
      decDeg: rounded(Number(row.decDeg), PLACE_DECIMALS),
    };
    if (Number(row.offArcmin) < ANOTHER_OBJECT_ARCMIN || object.kind !== "galaxy")
      return { ...object, ...place };
    const majorArcmin = row.majorArcmin ? Number(row.majorArcmin) : null;
    return { ...object, ...place, magnitude: null, majorArcmin, minorArcmin: null };
  });
  for (const key of byKey.keys())
    if (!used.has(key)) throw new Error(`a correction for “${key}”, which is not there`);
  return result;
}
