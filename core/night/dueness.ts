/**
 * When a club's evening post is due, and whether a missed one still helps.
 *
 * It is due so many hours before the home site's own sunset, never at a fixed
 * clock time, and helps until an hour after dusk. Wall clocks are compared,
 * nothing is counted, so a clock that jumps or a bot that slept does no harm.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import { MS_PER_HOUR } from "../sky/time.ts";
import type { NightTimes } from "./night.ts";

export type PostTimes = {
  readonly dueAt: Date;
  /** An hour after dusk: a post that was missed is of no use later. */
  readonly usefulUntil: Date;
  /** The end of the darkness: nothing is watched later. */
  readonly watchUntil: Date;
};

export type PostRules = {
  readonly hoursBeforeSunset: number;
  readonly usefulAfterDuskHours: number;
  /** A night that turns good late is posted while so much of its window is left. */
  readonly leastLeftHours: number;
};

/**
 * The times of a night's post.
 *
 * @returns `null` for a night that never gets darker than civil twilight
 *
 * @remarks
 * Dusk is when the night's deepest twilight begins: true darkness where there is
 * any. Where the Sun does not set that day because it never rose, that
 * beginning stands in for the sunset.
 */
export function postTimes(times: NightTimes, rules: PostRules): PostTimes | null {
  const first = times.workingWindows[0];
  const last = times.workingWindows.at(-1);
  if (first === undefined || last === undefined) return null;
  const sunset = times.sunset ?? first.start;
  return {
    dueAt: new Date(sunset.getTime() - rules.hoursBeforeSunset * MS_PER_HOUR),
    usefulUntil: new Date(first.start.getTime() + rules.usefulAfterDuskHours * MS_PER_HOUR),
    watchUntil: last.end,
  };
}

/**
 * `early` before it is due; `due` while a post helps; `watch` while a night
 * looked at in time may still turn good; `over` after that.
 */
export type Dueness = "early" | "due" | "watch" | "over";

/**
 * What the clock says of a night's post.
 *
 * @param lookedInTime - whether somebody looked at the night's weather while it was due
 */
export function dueness(at: Date, post: PostTimes, lookedInTime: boolean): Dueness {
  if (at < post.dueAt) return "early";
  if (at <= post.usefulUntil) return at <= post.watchUntil ? "due" : "over";
  return lookedInTime && at <= post.watchUntil ? "watch" : "over";
}

/**
 * Whether enough of a window is left to be worth a post at this moment.
 *
 * @param state - `due` asks only that the window has not ended
 */
export function windowWorthPosting(at: Date, state: Dueness, window: Interval, rules: PostRules): boolean {
  const leftHours = (window.end.getTime() - at.getTime()) / MS_PER_HOUR;
  return state === "due" ? leftHours > 0 : state === "watch" && leftHours >= rules.leastLeftHours;
}
