/**
 * Habits of framing, where the asker says nothing else: common practice throughout.
 *
 * @packageDocumentation
 */
import type { Range } from "./input-limits.ts";

/** Overlap of neighbouring panels, percent of each side: enough for stacking to match stars. */
export const OVERLAP_PERCENT = 15;
/** Half of every panel shot twice is the most that serves anything. */
export const OVERLAP_RANGE_PERCENT: Range = { min: 0, max: 50 };

/** Panels along either side: twelve are a winter's work already. */
export const PANELS_ALONG: Range = { min: 1, max: 12 };

/** What a turn button adds to the camera angle. */
export const ANGLE_STEP_DEG = 15;

/** Pixels across a star's blur: fewer are blocky, more gain nothing. */
export const PIXELS_ACROSS_BLUR: Range = { min: 1.5, max: 4 };

/** Neighbours named in a chart. */
export const NEIGHBOURS_AT_MOST = 8;

/** Smaller than this share of the frame's short side, a neighbour is not drawn. */
export const NEIGHBOUR_LEAST_SHARE = 0.02;

/** Panels listed in words; the rest stand in the figures. */
export const PANELS_IN_WORDS = 36;
