/**
 * What a club begins with, and how far its own settings may reach. Chosen by the project.
 *
 * @packageDocumentation
 */
import type { Range } from "./input-limits.ts";

/** Hours before the home site's sunset at which the evening post is due. */
export const HOURS_BEFORE_SUNSET = 3;
export const HOURS_BEFORE_SUNSET_RANGE: Range = { min: 0, max: 10 };

/** Sites that one evening post speaks of. */
export const CLUB_SITES_AT_MOST = 5;

/** Least usable hours before a member is mentioned, unless the member says otherwise. */
export const NOTIFY_LEAST_HOURS = 2;
export const NOTIFY_LEAST_HOURS_RANGE: Range = { min: 0.5, max: 14 };

/** What the post's proposals are for while the club names no rig: a common small outfit. */
export const CLUB_RIG = "400mm f/5.6, 23.5x15.7mm, 3.76um";

/** How far a club may move each of its weather limits; a limit beyond these is no limit. */
export const CLUB_LIMIT_RANGES = {
  cloud: { min: 0, max: 95 },
  "high-cloud": { min: 0, max: 100 },
  "poor-cloud": { min: 0, max: 100 },
  gusts: { min: 5, max: 120 },
  rain: { min: 0, max: 5 },
  "rain-chance": { min: 1, max: 100 },
  "go-hours": { min: 0.5, max: 12 },
  "go-share": { min: 10, max: 100 },
  agreement: { min: 34, max: 100 },
} as const satisfies Readonly<Record<string, Range>>;
