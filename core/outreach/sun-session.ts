/**
 * A public session on the Sun: when it stands clear of the skyline within the hours, and how high.
 *
 * Whoever shows this shows the solar caution first.
 *
 * @packageDocumentation
 */
import { type Interval, intersectIntervals, longestInterval } from "../interval.ts";
import type { Site } from "../site.ts";
import { targetTrack } from "../targets/placer.ts";
import { highestIn } from "./body-night.ts";
import type { EveningEvent } from "./evening-facts.ts";
import { daySession, type SessionHours, weekdayOf } from "./session.ts";
import type { SunDay } from "./sun-day.ts";

export type SunSession = {
  readonly day: SunDay;
  /** 1 Monday to 7 Sunday. */
  readonly weekday: number;
  /** With the Sun clear of the skyline throughout. */
  readonly span: Interval;
  /** Where it stands highest in it, airless. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly events: readonly EveningEvent[];
};

export type SunHoursRules = {
  /** Clock times between which a session lies when no hours are given. */
  readonly usual: SessionHours;
  /** It then lasts so long at most. */
  readonly mostHours: number;
};

const MS_PER_HOUR = 3_600_000;

/**
 * The part of a day's hours in which the Sun can be shown.
 *
 * @param hours - as asked; `null` for the usual ones: from the steadiest of the morning on, where it lies in them
 * @returns `null` when the Sun does not clear the skyline in them
 */
export function sunSpan(day: SunDay, hours: SessionHours | null, rules: SunHoursRules): Interval | null {
  const within = daySession(day.date, hours ?? rules.usual, day.timeZone);
  if (within === null) return null;
  const clear = longestInterval(intersectIntervals(day.clear, [within]));
  if (clear === null || hours !== null) return clear;
  const steadyMs = day.steady?.start.getTime() ?? 0;
  const start = Math.min(
    Math.max(clear.start.getTime(), steadyMs),
    Math.max(clear.start.getTime(), clear.end.getTime() - rules.mostHours * MS_PER_HOUR),
  );
  const end = Math.min(clear.end.getTime(), start + rules.mostHours * MS_PER_HOUR);
  return { start: new Date(start), end: new Date(end) };
}

/** What a session of the Sun offers. */
export function sunSession(
  site: Site,
  day: SunDay,
  span: Interval,
  events: readonly EveningEvent[],
): SunSession {
  const track = targetTrack(site, { kind: "body", body: "Sun" }, span.start);
  const best = highestIn(track, [span]);
  return {
    day,
    weekday: weekdayOf(day.date),
    span,
    altitudeDeg: best?.altitudeDeg ?? 0,
    azimuthDeg: best?.azimuthDeg ?? 180,
    events,
  };
}
