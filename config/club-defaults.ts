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
