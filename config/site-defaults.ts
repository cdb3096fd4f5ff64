/**
 * What stands in for a site's own data until its owner gives them.
 *
 * @packageDocumentation
 */
import type { SkyQuality } from "../core/site.ts";

/** A town's edge: neither a city centre nor the hills (a club's usual garden; chosen here). */
export const DEFAULT_SKY: SkyQuality = { kind: "bortle", class: 5 };

/** Sea level, for coordinates given without an elevation. */
export const DEFAULT_ELEVATION_METRES = 0;
