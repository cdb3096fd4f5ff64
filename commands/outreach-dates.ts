/**
 * `outreach dates` by night: which evenings of a span suit the public, why, and where each goes when it rains.
 *
 * @packageDocumentation
 */

import { NIGHTS_AT_MOST } from "../config/input-limits.ts";
import {
  AUDIENCES,
  BEST_EVENINGS,
  DARK_ENOUGH_DEG,
  EVENING_HOURS,
  EVENINGS_APART,
  PLANET_SUN_DEPTH_DEG,
  RAIN_DATE_NIGHTS,
  SUN_DEPTH_DEG,
  USUAL_EVENINGS,
  WEIGHTS,
} from "../config/outreach-evenings.ts";
import { LEAST_ALTITUDE_DEG } from "../config/ranking.ts";
import { nightHolding, nightsFrom } from "../core/night/local-night.ts";
import type { Night } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import type { Audience } from "../core/outreach/audience.ts";
import { type EveningFacts, eveningFacts, type ReachRules } from "../core/outreach/evening-facts.ts";
import { bestEvenings, type Placed, rainDate, weighEvening } from "../core/outreach/evening-worth.ts";
import { eveningSession, type SessionHours, weekdayOf } from "../core/outreach/session.ts";
import type { Site } from "../core/site.ts";
import type { Answer, FollowUp, Section } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { Context } from "./context.ts";
import { keptOptions } from "./kept-options.ts";
import { eventsDuring, lesserEvents, lunarEclipseEvents, widened } from "./outreach-events.ts";
import {
  audienceName,
  type DatedEvening,
  datesFigures,
  type Evenings,
  stripChart,
} from "./outreach-strip.ts";
import { pointingAt } from "./pointings.ts";
import { limitsOf } from "./read/limits.ts";
import { nightOf } from "./read/night.ts";
import { textOption, wholeNumberOption } from "./read/numbers.ts";
import { audienceOf, checkLength, hoursBackwards, hoursOf, isByDay, weekdaysOf } from "./read/session.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { knownVerdict, mayBeForetold, sessionVerdict, sessionWeatherWords } from "./session-weather.ts";
import { clockSpan, dateWords, durationWords, shortDateWords } from "./words/clock.ts";
import { attractionWords, eveningReasons } from "./words/evening-words.ts";
import { verdictWords } from "./words/weather-words.ts";

const REACH: ReachRules = {
  leastAltitudeDeg: LEAST_ALTITUDE_DEG.public,
  darkEnoughDeg: DARK_ENOUGH_DEG,
  sunDepthDeg: (body) =>
    PLANET_SUN_DEPTH_DEG[body] ?? (body === "Moon" ? SUN_DEPTH_DEG.moon : SUN_DEPTH_DEG.planet),
};

/** Answers `outreach dates` for evenings. */
export async function rankEvenings(request: Request, context: Context): Promise<Answer> {
  const audience = audienceOf(request);
  const hours = hoursOf(request);
  const site = await siteOf(request, context);
  const nights = spanOf(request, site);
  const limits = await limitsOf(request, context);
  const report = await context.forecasts.at(site, request.at);
  const evenings = eveningsOf(request, site, nights, audience, hours).map(({ facts, index }) => {
    const known = mayBeForetold(facts.session, report, limits, request.at)
      ? knownVerdict(sessionVerdict(facts.times, facts.session, report.models, limits, request.at))
      : null;
    const kind = known === null || known.kind === "unknown" ? null : known.kind;
    return { ...weighEvening({ ...facts, verdict: known }, kind, AUDIENCES[audience], WEIGHTS), index };
  });
  if (evenings.length === 0) throw noEvening(site, nights);
  const best = bestEvenings(evenings, BEST_EVENINGS, EVENINGS_APART);
  const [first] = best;
  const weather =
    first === undefined
      ? ""
      : sessionWeatherWords(
          first.facts.times,
          first.facts.session,
          first.facts.verdict ??
            sessionVerdict(first.facts.times, first.facts.session, report.models, limits, request.at),
          limits,
        );
  return describeDates(request, { site, audience, nights, evenings, report, best }, weather);
}

/** The nights asked for. @throws AskError when they begin in the past or are too many */
export function spanOf(request: Request, site: Site): readonly Night[] {
  const count = wholeNumberOption(request, "nights", { min: 1, max: NIGHTS_AT_MOST, unit: "nights" });
  const night = nightOf(request, site);
  if (textOption(request, "night") !== null && night.nextNoon <= nightHolding(request.at, site).noon) {
    throw new AskError(
      "in-the-past",
      "night",
      "“night”: that evening is over; begin with one that is still to come.",
    );
  }
  return nightsFrom(night, count ?? USUAL_EVENINGS);
}

type FoundEvening = { readonly facts: EveningFacts; readonly index: number };

function eveningsOf(
  request: Request,
  site: Site,
  nights: readonly Night[],
  audience: Audience,
  hours: SessionHours | null,
): FoundEvening[] {
  const weekdays = weekdaysOf(request);
  const [first, last] = [nights[0], nights.at(-1)];
  if (first === undefined || last === undefined) return [];
  const span = widened({ start: first.noon, end: last.nextNoon });
  const events = [
    ...lunarEclipseEvents(site, span.start, span.end),
    ...lesserEvents(site, span.start, span.end),
  ];
  return nights.flatMap((night, index): FoundEvening[] => {
    if (weekdays !== null && !weekdays.has(weekdayOf(night.date))) return [];
    const times = nightTimes(site, night);
    const session = eveningSession(times, hours, AUDIENCES[audience], EVENING_HOURS);
    if (session === null) {
      if (hours !== null) throw hoursBackwards();
      return [];
    }
    checkLength(session);
    if (session.end <= request.at || isByDay(times, session)) return [];
    return [{ facts: eveningFacts(site, times, session, eventsDuring(events, session), REACH), index }];
  });
}

function noEvening(site: Site, nights: readonly Night[]): AskError {
  const span = nights.length === 1 ? "that night" : `any of these ${nights.length} nights`;
  return new AskError(
    "no-evening",
    "hours",
    `No evening of that kind at ${site.name} on ${span}: the Sun is up through the hours, or the days named do not come; change “hours”, “weekdays” or “night”, or ask for session sun.`,
  );
}

function describeDates(request: Request, found: Evenings, weather: string): Answer {
  const { site, audience, evenings, best, nights, report } = found;
  const [first] = best;
  const cautions = datesCautions(found);
  const sample = evenings.some(({ facts }) => facts.verdict?.sample === true) ? " (sample forecast)" : "";
  return {
    title: `Evenings for ${audienceName(audience)} at ${site.name}${sample}`,
    summary:
      first === undefined
        ? "No evening suits."
        : `${dateWords(first.facts.times.night.date)} suits best, ${clockSpan(first.facts.session, site.timeZone)}: ${attractionWords(first.facts, first.merits)}.`,
    sections: [
      ...best.map((evening, place) => eveningSection(found, evening, place + 1)),
      {
        heading: "",
        lines: [
          weather,
          `${evenings.length} of ${nights.length} evenings looked at, from ${shortDateWords(nights[0]?.date ?? "")} to ${shortDateWords(nights.at(-1)?.date ?? "")}; those told lie at least ${EVENINGS_APART} nights apart.`,
          ...assumptionsOf(request, audience),
          ...report.problems,
        ],
      },
    ],
    charts: [
      stripChart(
        found,
        cautions.map(({ text }) => text),
      ),
    ],
    cautions,
    next: followUps(request, best),
    figures: datesFigures(found),
    credits: evenings.some(({ facts }) => facts.verdict !== null) ? report.credits : [],
  };
}

function eveningSection(found: Evenings, evening: Placed<DatedEvening>, place: number): Section {
  const { site } = found;
  const { facts } = evening;
  const rain = rainDate(evening, found.evenings, RAIN_DATE_NIGHTS);
  const { verdict } = facts;
  return {
    heading: `${place}. ${dateWords(facts.times.night.date)}, ${clockSpan(facts.session, site.timeZone)}`,
    lines: [
      ...eveningReasons(evening),
      ...(verdict === null
        ? []
        : [`Forecast for the session: ${verdictWords(verdict)}. ${verdict.reasons[0] ?? ""}`.trim()]),
      rain === null
        ? "No rain date within the span: name more nights."
        : `Rain date: ${dateWords(rain.facts.times.night.date)} (${attractionWords(rain.facts, rain.merits)}).`,
    ],
  };
}

function assumptionsOf(request: Request, audience: Audience): string[] {
  const rules = AUDIENCES[audience];
  return [
    ...(textOption(request, "audience") === null
      ? ["Taken as an evening for everybody: nobody named an audience."]
      : []),
    ...(textOption(request, "hours") === null
      ? [
          `Without hours given it ends at ${rules.leave} and begins at sunset, ${rules.notBefore} at the earliest; it lasts ${durationWords(EVENING_HOURS.min)} to ${durationWords(EVENING_HOURS.max)}.`,
        ]
      : []),
  ];
}

/** The Moon or a planet near the Sun is proposed only with the Sun down; the rules look all the same. */
function datesCautions({ site, best, audience }: Evenings): Answer["cautions"] {
  const bodies = best.flatMap(({ facts }) => [facts.moon, ...facts.planets].filter((body) => body !== null));
  return cautionsFor({
    pointings: bodies.flatMap(({ body, span }) =>
      [span.start, span.end].map((at) => pointingAt(site, { kind: "body", body }, at)),
    ),
    publicSession: true,
    children: AUDIENCES[audience].children,
  });
}

function followUps(request: Request, best: readonly Placed<DatedEvening>[]): FollowUp[] {
  return best.slice(0, 3).map(({ facts }) => ({
    label: `Plan ${shortDateWords(facts.times.night.date)}`,
    command: "outreach",
    options: {
      subcommand: "plan",
      night: facts.times.night.date,
      ...keptOptions(request, ["site", "hours", "audience"]),
    },
  }));
}
