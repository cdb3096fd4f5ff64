/**
 * Rare things in the sky on or near the evenings of a span, in a few words each.
 *
 * @packageDocumentation
 */
import type { Interval } from "../core/interval.ts";
import { clearSpans } from "../core/outreach/eclipse-sight.ts";
import type { EveningEvent } from "../core/outreach/evening-facts.ts";
import { lunarEclipsesIn } from "../core/outreach/lunar-eclipse.ts";
import { localSolarEclipsesIn } from "../core/outreach/solar-eclipse.ts";
import type { Site } from "../core/site.ts";

/** An event and the time in which it can be watched. */
export type SpannedEvent = EveningEvent & { readonly span: Interval };

const MS_PER_DAY = 86_400_000;

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

/** Those that can be watched during a session. */
export function eventsDuring(events: readonly SpannedEvent[], session: Interval): readonly SpannedEvent[] {
  return events.filter(({ span }) => span.start < session.end && span.end > session.start);
}

/** A day beyond either end, so that nothing at the edges is lost. */
export function widened({ start, end }: Interval): Interval {
  return { start: new Date(start.getTime() - MS_PER_DAY), end: new Date(end.getTime() + MS_PER_DAY) };
}
