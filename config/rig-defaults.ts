/**
 * What stands in for a rig's own data until its owner gives them.
 *
 * Each is common practice, and is named as an assumption in an answer that leans on it.
 *
 * @packageDocumentation
 */
import type { Mount, Optics } from "../core/rig/rig.ts";

/** Light that the optics pass, without filter and sensor. */
export const THROUGHPUT_OF: Readonly<Record<Optics, number>> = { refractor: 0.9, mirror: 0.8 };

/** Central obstruction, as a share of the aperture's diameter. */
export const OBSTRUCTION_OF: Readonly<Record<Optics, number>> = { refractor: 0, mirror: 0.33 };

/** An uncooled sensor stands so far above the air. */
export const UNCOOLED_ABOVE_AIR_CELSIUS = 10;

/** The air of an hour for which no forecast is at hand. */
export const UNKNOWN_AIR_CELSIUS = 10;

/** What guiding adds to a star's blur, full width at half maximum. */
export const GUIDING_ARCSEC = 1;

export const DEFAULT_MOUNT: Mount = "german";

/** A german mount may follow so far past the meridian. */
export const FLIP_AFTER_MINUTES = 5;

/** Blur of a star at the zenith where the site's is unknown. */
export const SEEING_ARCSEC = 3;
