/**
 * One row a physical object: which base rows repeat another and are only searchable.
 *
 * The catalogues overlap (a Sharpless region is often an NGC nebula too) and the
 * base data do not say where, so nearness decides.
 *
 * @packageDocumentation
 */
import { RAD_PER_DEG } from "../../core/sky/angles.ts";
import type { SkyObject } from "../../core/targets/sky-object.ts";

/** Two rows of one kind this near are one object, arcminutes. */
const SAME_PLACE_ARCMIN = 0.4;
/** Clusters' centres are estimates: two nearer than this are one, arcminutes. */
const SAME_CLUSTER_ARCMIN = 4;
/** Survey galaxies inside this share of a showpiece galaxy's length are its own knots, or it again. */
const WITHIN_GALAXY = 0.3;
/** A showpiece nebula covers at least so much around its centre, arcminutes. */
const LEAST_COVER_ARCMIN = 6;

const NEBULAE: ReadonlySet<string> = new Set([
  "emission-nebula",
  "reflection-nebula",
  "dark-nebula",
  "supernova-remnant",
]);

function separationArcmin(a: SkyObject, b: SkyObject): number {
  const half = (degrees: number) => Math.sin((degrees * RAD_PER_DEG) / 2) ** 2;
  const across =
    Math.cos(a.decDeg * RAD_PER_DEG) * Math.cos(b.decDeg * RAD_PER_DEG) * half(a.raDeg - b.raDeg);
  return (2 * Math.asin(Math.min(1, Math.sqrt(half(a.decDeg - b.decDeg) + across))) * 60) / RAD_PER_DEG;
}

function repeats(later: SkyObject, earlier: SkyObject): boolean {
  const separation = separationArcmin(later, earlier);
  if (NEBULAE.has(later.kind) && NEBULAE.has(earlier.kind)) {
    const cover = earlier.showpiece ? Math.max(LEAST_COVER_ARCMIN, (earlier.majorArcmin ?? 0) / 2) : 3;
    return separation <= cover;
  }
  if (later.kind !== earlier.kind) return false;
  if (later.kind === "galaxy" && earlier.showpiece) {
    return separation <= Math.max(SAME_PLACE_ARCMIN, (earlier.majorArcmin ?? 0) * WITHIN_GALAXY);
  }
  return separation <= (later.kind === "open-cluster" ? SAME_CLUSTER_ARCMIN : SAME_PLACE_ARCMIN);
}

/**
 * Takes the rank from base rows that repeat an earlier row.
 *
 * @param objects - the better described first
 */
export function withoutRankedRepeats(objects: readonly SkyObject[]): readonly SkyObject[] {
  // Neighbours are sought in bands of declination; showpieces may reach over several.
  const bands = new Map<number, SkyObject[]>();
  const band = (decDeg: number) => Math.floor(decDeg);
  return objects.map((object) => {
    const near = [-1, 0, 1].flatMap((step) => bands.get(band(object.decDeg) + step) ?? []);
    const repeated = !object.showpiece && object.ranked && near.some((earlier) => repeats(object, earlier));
    const settled = repeated ? { ...object, ranked: false } : object;
    if (settled.ranked || settled.showpiece) {
      const reach = settled.showpiece ? Math.ceil((settled.majorArcmin ?? 0) / 120) : 0;
      for (let step = -reach; step <= reach; step++) {
        const key = band(settled.decDeg) + step;
        const held = bands.get(key);
        if (held === undefined) bands.set(key, [settled]);
        else held.push(settled);
      }
    }
    return settled;
  });
}
