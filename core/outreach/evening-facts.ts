/**
 * What an evening has to offer the public: darkness in time, the Moon, planets, rare events.
 *
 * @packageDocumentation
 */
import { type Interval, intervalHours, longestInterval, totalHours } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import type { Site } from "../site.ts";
import { bodyPlace } from "../sky/bodies.ts";
import { targetTrack } from "../targets/placer.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { visibleIntervals } from "../targets/visibility.ts";
import { highestIn } from "./body-night.ts";
import { type Session, weekdayOf } from "./session.ts";
import { sunBelow } from "./sun-depth.ts";

export type BodyInReach = {
  readonly body: BodyName;
  /** Clear of the skyline, high enough and dark enough, within the session. */
  readonly span: Interval;
  /** At its highest within it. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly diameterArcsec: number;
  /** It leaves the sight before the session ends. */
  readonly lostEarly: boolean;
};

/** Something rare on or near the date; `title` names it in a few words. */
export type EveningEvent = {
  readonly kind: "lunar-eclipse" | "solar-eclipse" | "shower" | "conjunction";
  readonly title: string;
  readonly at: Date;
};

export type EveningFacts = {
  readonly times: NightTimes;
  /** 1 Monday to 7 Sunday, of the date on which it begins. */
  readonly weekday: number;
  readonly session: Session;
  /** When it gets dark enough for stars and clusters that night; `null` when it does not. */
  readonly darkFrom: Date | null;
  /** Of the session. */
  readonly darkHours: number;
  readonly moon: BodyInReach | null;
  readonly planets: readonly BodyInReach[];
  readonly events: readonly EveningEvent[];
};

export type ReachRules = {
  readonly leastAltitudeDeg: number;
  /** The Sun's depth at which an evening counts as dark for the public. */
  readonly darkEnoughDeg: number;
  /** The Sun's depth before a body is shown. */
  readonly sunDepthDeg: (body: BodyName) => number;
};

const PLANETS = ["Mercury", "Venus", "Mars", "Jupiter", "Saturn"] as const;
/** Seen for less than this a planet is not in reach. */
const LEAST_REACH_HOURS = 1 / 4;
/** An end within this of the session's is the session's. */
const SAME_END_MS = 60_000;

/** Gathers what an evening offers. */
export function eveningFacts(
  site: Site,
  times: NightTimes,
  session: Session,
  events: readonly EveningEvent[],
  rules: ReachRules,
): EveningFacts {
  const dark = sunBelow(site, rules.darkEnoughDeg, [session]);
  const reach = (body: BodyName) => bodyInReach(site, body, session, rules);
  return {
    times,
    weekday: weekdayOf(times.night.date),
    session,
    darkFrom: darkFromOn(site, times, rules.darkEnoughDeg),
    darkHours: totalHours(dark),
    moon: reach("Moon"),
    planets: PLANETS.map(reach).filter((body) => body !== null),
    events,
  };
}

function darkFromOn(site: Site, times: NightTimes, depthDeg: number): Date | null {
  const { noon, nextNoon } = times.night;
  return sunBelow(site, depthDeg, [{ start: noon, end: nextNoon }])[0]?.start ?? null;
}

function bodyInReach(site: Site, body: BodyName, session: Interval, rules: ReachRules): BodyInReach | null {
  const middle = new Date((session.start.getTime() + session.end.getTime()) / 2);
  const track = targetTrack(site, { kind: "body", body }, middle);
  const clearance = { skyline: site.skyline, leastAltitudeDeg: rules.leastAltitudeDeg };
  const dark = sunBelow(site, rules.sunDepthDeg(body), [session]);
  const span = longestInterval(visibleIntervals((at) => track(at.getTime()), clearance, dark));
  if (span === null || intervalHours(span) < LEAST_REACH_HOURS) return null;
  const best = highestIn(track, [span]);
  if (best === null) return null;
  return {
    body,
    span,
    altitudeDeg: best.altitudeDeg,
    azimuthDeg: best.azimuthDeg,
    diameterArcsec: 2 * bodyPlace(body, site, middle).semidiameterArcsec,
    lostEarly: span.end.getTime() < session.end.getTime() - SAME_END_MS,
  };
}
