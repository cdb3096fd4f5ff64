/**
 * Rare things in the sky on or near the evenings of a span, in a few words each.
 *
 * @packageDocumentation
 */
import { METEOR_SHOWERS } from "../config/meteor-showers.ts";
import { APPROACH_LIMITS, PLANET_RULES } from "../config/outreach.ts";
import { LEAST_ZHR } from "../config/outreach-evenings.ts";
import { LEAST_ALTITUDE_DEG } from "../config/ranking.ts";
import type { Interval } from "../core/interval.ts";
import { approachSight, closeApproaches } from "../core/outreach/conjunctions.ts";
import { clearSpans } from "../core/outreach/eclipse-sight.ts";
import type { EveningEvent } from "../core/outreach/evening-facts.ts";
import { lunarEclipsesIn } from "../core/outreach/lunar-eclipse.ts";
import { showerPeaks } from "../core/outreach/meteor-showers.ts";
import { localSolarEclipsesIn } from "../core/outreach/solar-eclipse.ts";
import type { Site } from "../core/site.ts";
import { fixedTrack } from "../core/targets/placer.ts";

/** An event and the time in which it can be watched. */
export type SpannedEvent = EveningEvent & {
  readonly span: Interval;
  /** Whether it can be watched at an instant, where that is not so through all of its span. */
  readonly isUp?: (utMs: number) => boolean;
};

const MS_PER_DAY = 86_400_000;
/** What is close at its closest is still close an hour and a half later. */
const NEAR_MS = 1.5 * 3_600_000;

/** Eclipses of the Moon that the site sees, within a span; mere penumbral ones are left out. */
export function lunarEclipseEvents(site: Site, from: Date, to: Date): readonly SpannedEvent[] {
  return lunarEclipsesIn(from, to).flatMap((eclipse): SpannedEvent[] => {
    const { partialBegins, partialEnds, greatest, kind } = eclipse;
    if (partialBegins === null || partialEnds === null) return [];
    const span = { start: partialBegins, end: partialEnds };
    if (clearSpans(site, "Moon", span).length === 0) return [];
    return [{ kind: "lunar-eclipse", title: `${kind} eclipse of the Moon`, at: greatest, span }];
  });
}

/** Eclipses of the Sun that the site sees. */
export function solarEclipseEvents(site: Site, from: Date, to: Date): readonly SpannedEvent[] {
  return localSolarEclipsesIn(site, from, to).flatMap((eclipse): SpannedEvent[] => {
    const span = { start: eclipse.begins.at, end: eclipse.ends.at };
    if (clearSpans(site, "Sun", span).length === 0) return [];
    const at = eclipse.greatest.at;
    return [{ kind: "solar-eclipse", title: `${eclipse.kind} eclipse of the Sun`, at, span }];
  });
}

/**
 * Showers at their peak a night before or after, and close approaches while the site sees them.
 *
 * A shower counts when its radiant stands high enough at some time of the session: {@link eventsDuring}
 * asks that at each session's end.
 */
export function lesserEvents(site: Site, from: Date, to: Date): readonly SpannedEvent[] {
  const showers = showerPeaks(METEOR_SHOWERS, from, to)
    .filter(({ shower }) => (shower.zhr ?? 0) >= LEAST_ZHR)
    .map(({ shower, at }): SpannedEvent => {
      const track = fixedTrack(site, shower, at);
      return {
        kind: "shower",
        title: `${shower.name} at or near their peak`,
        at,
        span: { start: new Date(at.getTime() - MS_PER_DAY), end: new Date(at.getTime() + MS_PER_DAY) },
        isUp: (ms) => track(ms).altitudeDeg >= LEAST_ALTITUDE_DEG.public,
      };
    });
  const approaches = closeApproaches(from, to, APPROACH_LIMITS).flatMap((approach): SpannedEvent[] => {
    const sight = approachSight(site, approach, PLANET_RULES);
    if (sight === null) return [];
    const [one, other] = approach.bodies;
    return [
      {
        kind: "conjunction",
        title: `${one === "Moon" ? "the Moon" : one} ${sight.separationDeg.toFixed(1)}° from ${other}`,
        at: sight.at,
        span: { start: sight.at, end: new Date(sight.at.getTime() + NEAR_MS) },
      },
    ];
  });
  return [...showers, ...approaches];
}

/** Those that can be watched during a session. */
export function eventsDuring(events: readonly SpannedEvent[], session: Interval): readonly SpannedEvent[] {
  return events.filter(
    ({ span, isUp }) =>
      span.start < session.end && span.end > session.start && (isUp?.(session.end.getTime()) ?? true),
  );
}

/** A day beyond either end, so that nothing at the edges is lost. */
export function widened({ start, end }: Interval): Interval {
  return { start: new Date(start.getTime() - MS_PER_DAY), end: new Date(end.getTime() + MS_PER_DAY) };
}
