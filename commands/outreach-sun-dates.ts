import {
  AUDIENCES,
  BEST_EVENINGS,
  EVENINGS_APART,
  RAIN_DATE_NIGHTS,
  WEIGHTS,
} from "../config/outreach-evenings.ts";
import { intervalHours } from "../core/interval.ts";
import { nightOn } from "../core/night/local-night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import type { Audience } from "../core/outreach/audience.ts";
import { bestEvenings, type Merit, type Placed, rainDate, weighed } from "../core/outreach/evening-worth.ts";
import type { SunSession } from "../core/outreach/sun-session.ts";
import type { Site } from "../core/site.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import type { NightVerdict } from "../core/weather/verdict.ts";
import type { Answer } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import type { OutreachStripChart } from "./chart.ts";
import type { Context, ForecastReport } from "./context.ts";
import { keptOptions } from "./kept-options.ts";
import { siteFigures } from "./object-figures.ts";
import { spanOf } from "./outreach-dates.ts";
import { solarEclipseEvents } from "./outreach-events.ts";
import { eventFigures, noSun, sessionOfDay } from "./outreach-sun-session.ts";
import { limitsOf } from "./read/limits.ts";
import { audienceOf, hoursOf, weekdaysOf } from "./read/session.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { knownVerdict, mayBeForetold, sessionVerdict } from "./session-weather.ts";
import { clockSpan, clockTime, dateWords, durationWords, shortDateWords } from "./words/clock.ts";
import { verdictWords } from "./words/weather-words.ts";

const MS_PER_DAY = 86_400_000;

type WeighedSun = Placed<SunSession & { readonly verdict: NightVerdict | null }>;

/** Answers `outreach dates` for sessions of the Sun. */
export async function rankSunSessions(request: Request, context: Context): Promise<Answer> {
  const audience = audienceOf(request);
  const hours = hoursOf(request);
  const weekdays = weekdaysOf(request);
  const site = await siteOf(request, context);
  const nights = spanOf(request, site);
  const limits = await limitsOf(request, context);
  const report = await context.forecasts.at(site, request.at);
  const [first, last] = [nights[0], nights.at(-1)];
  const eclipses =
    first === undefined || last === undefined ? [] : solarEclipseEvents(site, first.noon, last.nextNoon);
  const days = nights.flatMap(({ date }, index): WeighedSun[] => {
    const found = sessionOfDay(request, site, date, hours, eclipses);
    if (found === null || found.span.end <= request.at) return [];
    if (weekdays !== null && !weekdays.has(found.weekday)) return [];
    const verdict = mayBeForetold(found.span, report, limits, request.at)
      ? knownVerdict(
          sessionVerdict(
            nightTimes(site, nightOn(date, site.timeZone)),
            found.span,
            report.models,
            limits,
            request.at,
          ),
        )
      : null;
    return [{ ...weighed({ ...found, verdict }, sunMerits(found, verdict, audience)), index }];
  });
  if (days.length === 0) throw noSun(site, first?.date ?? "");
  return describeDates(request, { site, audience, days, report });
}

function sunMerits(found: SunSession, verdict: NightVerdict | null, audience: Audience): Merit[] {
  const hours = Math.min(intervalHours(found.span), WEIGHTS.sunHoursThatCount);
  // A high Sun trembles less: half of an hour's worth for each 10°.
  const height = (found.altitudeDeg / 20) * WEIGHTS.sunHour;
  const kind = verdict?.kind ?? "unknown";
  return [
    { kind: "sun", weight: WEIGHTS.sunHour * hours + height },
    ...found.events.map((): Merit => ({ kind: "event", weight: WEIGHTS.solarEclipse })),
    ...(AUDIENCES[audience].readyDays.includes(found.weekday)
      ? [{ kind: "weekday", weight: WEIGHTS.readyWeekday } as const]
      : []),
    ...(kind === "unknown" ? [] : [{ kind: "forecast", weight: WEIGHTS.forecast[kind] } as const]),
  ];
}

type SunDates = {
  readonly site: Site;
  readonly audience: Audience;
  readonly days: readonly WeighedSun[];
  readonly report: ForecastReport;
};

function describeDates(request: Request, found: SunDates): Answer {
  const { site, days, audience, report } = found;
  const zone = site.timeZone;
  const best = bestEvenings(days, BEST_EVENINGS, EVENINGS_APART);
  const cautions = cautionsFor({
    solar: true,
    publicSession: true,
    children: AUDIENCES[audience].children,
  });
  const name = ({ facts }: WeighedSun) => dateWords(facts.day.date);
  const [first] = best;
  return {
    title: `Days for the Sun at ${site.name}`,
    summary:
      first === undefined
        ? "No day suits."
        : `${name(first)} suits best, ${clockSpan(first.facts.span, zone)}: ${sunWords(first.facts)}.`,
    sections: [
      ...best.map((day, place) => {
        const rain = rainDate(day, days, RAIN_DATE_NIGHTS);
        return {
          heading: `${place + 1}. ${name(day)}, ${clockSpan(day.facts.span, zone)}`,
          lines: [
            `The Sun clear of the skyline for ${durationWords(intervalHours(day.facts.span))}, up to ${Math.round(day.facts.altitudeDeg)}° high.`,
            ...day.facts.events.map(
              ({ title, at }) =>
                `${title.slice(0, 1).toUpperCase()}${title.slice(1)}, deepest at ${clockTime(at, zone)}.`,
            ),
            ...(day.facts.verdict === null
              ? []
              : [
                  `Forecast for the session: ${verdictWords(day.facts.verdict)}. ${day.facts.verdict.reasons[0] ?? ""}`.trim(),
                ]),
            day.facts.events.length > 0
              ? "An eclipse does not wait: instead of a rain date keep a second place in mind."
              : rain === null
                ? "No rain date within the span: name more nights."
                : `Rain date: ${dateWords(rain.facts.day.date)}.`,
          ],
        };
      }),
      {
        heading: "",
        lines: [
          `${days.length} days looked at, from ${shortDateWords(days[0]?.facts.day.date ?? "")} to ${shortDateWords(days.at(-1)?.facts.day.date ?? "")}.`,
          ...(days.every(({ facts }) => facts.verdict === null)
            ? ["No forecast reaches these days, or none is at hand."]
            : []),
          ...report.problems,
        ],
      },
    ],
    charts: [
      sunStrip(
        found,
        best,
        cautions.map(({ text }) => text),
      ),
    ],
    cautions,
    next: best.slice(0, 3).map(({ facts }) => ({
      label: `Plan ${shortDateWords(facts.day.date)}`,
      command: "outreach",
      options: {
        subcommand: "plan",
        session: "sun",
        night: facts.day.date,
        ...keptOptions(request, ["site", "hours", "audience"]),
      },
    })),
    figures: {
      site: siteFigures(site),
      session: "sun",
      audience,
      considered: days.length,
      evenings: days.map((day) => ({
        night: day.facts.day.date,
        place: best.includes(day) ? best.indexOf(day) + 1 : null,
        start: day.facts.span.start.toISOString(),
        end: day.facts.span.end.toISOString(),
        sunAltitudeDeg: day.facts.altitudeDeg,
        events: eventFigures(day.facts),
        verdict: day.facts.verdict?.kind ?? null,
        rainDate: rainDate(day, days, RAIN_DATE_NIGHTS)?.facts.day.date ?? null,
      })),
    },
    credits: days.some(({ facts }) => facts.verdict !== null) ? report.credits : [],
  };
}

function sunWords({ span, altitudeDeg, events }: SunSession): string {
  return [
    ...events.map(({ title }) => title),
    `${durationWords(intervalHours(span))} of Sun, up to ${Math.round(altitudeDeg)}° high`,
  ].join(", ");
}

function sunStrip(
  { site, days }: SunDates,
  best: readonly WeighedSun[],
  cautions: readonly string[],
): OutreachStripChart {
  const told = best.slice(0, 3);
  const [first] = told;
  return {
    kind: "outreach-strip",
    name: "outreach-dates",
    title: first === undefined ? "No day suits" : `${dateWords(first.facts.day.date)} suits best`,
    caption: `${site.name}. A post is as tall as the time with the Sun clear of the skyline in the hours asked for.`,
    alt: `${days.length} days as posts. The best: ${told.map(({ facts }) => `${dateWords(facts.day.date)} (${sunWords(facts)})`).join("; ")}.`,
    cautions,
    evenings: days.map((day) => {
      const { facts } = day;
      const moon = bodyPlace("Moon", site, facts.span.start);
      const rank = told.indexOf(day);
      return {
        night: facts.day.date,
        label: String(Number(facts.day.date.slice(8))),
        weekend: facts.weekday >= 6,
        darkHours: intervalHours(facts.span),
        illuminatedFraction: moon.illuminatedFraction,
        waxing: isWaxing(site, facts.span.start),
        southern: site.latitudeDeg < 0,
        planets: [],
        rank: rank < 0 ? null : rank + 1,
        reason: rank < 0 ? null : sunWords(facts),
        verdict: facts.verdict === null ? null : verdictWords(facts.verdict),
      };
    }),
  };
}

/** Lit more a day later. */
function isWaxing(site: Site, at: Date): boolean {
  const dayLater = new Date(at.getTime() + MS_PER_DAY);
  return (
    bodyPlace("Moon", site, dayLater).illuminatedFraction > bodyPlace("Moon", site, at).illuminatedFraction
  );
}
