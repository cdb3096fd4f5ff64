/**
 * The part of a day that a public session of the Sun takes up.
 *
 * @packageDocumentation
 */
import { SUN_DAY } from "../config/outreach.ts";
import { LEAST_SUN_HOURS, SUN_HOURS } from "../config/outreach-evenings.ts";
import { intersectIntervals, intervalHours, longestInterval } from "../core/interval.ts";
import type { SessionHours } from "../core/outreach/session.ts";
import { sunDay } from "../core/outreach/sun-day.ts";
import { type SunSession, sunSession, sunSpan } from "../core/outreach/sun-session.ts";
import type { Site } from "../core/site.ts";
import type { Figure } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { eventsDuring, type SpannedEvent, solarEclipseEvents } from "./outreach-events.ts";
import { dayAfter, localDate } from "./read/day.ts";
import { parseDate } from "./read/night.ts";
import { textOption } from "./read/numbers.ts";
import { checkLength, hoursOf } from "./read/session.ts";
import type { Request } from "./request.ts";

/** The day named, else today, else tomorrow once today's hours are over. */
export function sunDateOf(request: Request, site: Site): string {
  const named = textOption(request, "night");
  if (named !== null) return parseDate("night", named);
  const today = localDate(request.at, site);
  const found = sessionOfDay(request, site, today, hoursOf(request), null);
  return found !== null && found.span.end > request.at ? today : dayAfter(today);
}

export function sessionOfDay(
  request: Request,
  site: Site,
  date: string,
  hours: SessionHours | null,
  known: readonly SpannedEvent[] | null,
): SunSession | null {
  const day = sunDay(site, date, SUN_DAY);
  const eclipses = known ?? solarEclipseEvents(site, day.whole.start, day.whole.end);
  if (hours !== null && hours.to <= hours.from) {
    throw new AskError("hours-backwards", "hours", "“hours” must end after they begin, such as 11:00-13:30.");
  }
  // An eclipse sets the hours, unless the asker does.
  const eclipse = hours === null ? eventsDuring(eclipses, day.whole)[0] : undefined;
  const span =
    eclipse === undefined
      ? sunSpan(day, hours, SUN_HOURS)
      : longestInterval(intersectIntervals(day.clear, [eclipse.span]));
  if (span === null || intervalHours(span) < LEAST_SUN_HOURS) return null;
  if (textOption(request, "hours") !== null) checkLength(span);
  return sunSession(site, day, span, eventsDuring(eclipses, span));
}

export function noSun(site: Site, date: string): AskError {
  return new AskError(
    "no-sun",
    "hours",
    `The Sun does not clear the skyline and ${SUN_DAY.leastAltitudeDeg}° at ${site.name} on ${date} for ${LEAST_SUN_HOURS * 60} minutes of “hours”: choose others, or another day.`,
  );
}

/** The events of a session as figures. */
export function eventFigures({ events }: SunSession): Figure {
  return events.map(({ kind, title, at }) => ({ kind, title, at: at.toISOString() }));
}
