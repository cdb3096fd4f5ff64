import { CLOUD_PLAN } from "../config/outreach-checklist.ts";
import { AUDIENCES, SET_UP_MINUTES, USUAL_INSTRUMENTS, VIEWING } from "../config/outreach-evenings.ts";
import { SUN_GUARD_DEG } from "../core/cautions.ts";
import { intervalHours } from "../core/interval.ts";
import { nightOn } from "../core/night/local-night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import type { Audience } from "../core/outreach/audience.ts";
import { type Instrument, viewerOf } from "../core/outreach/instruments.ts";
import { sunDisc } from "../core/outreach/sun-disc.ts";
import type { SunSession } from "../core/outreach/sun-session.ts";
import type { Site } from "../core/site.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import { separationDeg } from "../core/sky/place.ts";
import type { NightVerdict } from "../core/weather/verdict.ts";
import type { Answer, Figure, Section } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { Context, ForecastReport } from "./context.ts";
import { keptOptions } from "./kept-options.ts";
import { siteFigures } from "./object-figures.ts";
import { sheetOf, sheetText } from "./outreach-sheet.ts";
import { eventFigures, noSun, sessionOfDay, sunDateOf } from "./outreach-sun-session.ts";
import { instrumentWords, parseInstruments } from "./read/instruments.ts";
import { limitsOf } from "./read/limits.ts";
import { textOption } from "./read/numbers.ts";
import { audienceOf, guestsOf, hoursOf } from "./read/session.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { sessionVerdict, sessionWeatherWords } from "./session-weather.ts";
import { sunChecklist } from "./words/checklist-words.ts";
import { clockSpan, clockTime, dateWords, durationWords } from "./words/clock.ts";
import { power } from "./words/guest-words.ts";
import { compassWords, listWords } from "./words/sky.ts";
import { whereWords } from "./words/where-words.ts";

const MS_PER_MINUTE = 60_000;

/** Answers `outreach plan` for a session of the Sun. */
export async function planSunSession(request: Request, context: Context): Promise<Answer> {
  return describePlan(request, await sunPlan(request, context));
}

/**
 * A session of the Sun worked out.
 *
 * @throws AskError when it is over, the Sun does not clear the skyline, or anything cannot be read
 */
export async function sunPlan(request: Request, context: Context): Promise<SunPlan> {
  const audience = audienceOf(request);
  const guests = guestsOf(request);
  if (textOption(request, "show") !== null) {
    throw new AskError(
      "sun-alone",
      "show",
      "“show” is for the night: in a Sun session every instrument points at the Sun, behind its filter, and nowhere else.",
    );
  }
  const instruments = parseInstruments(
    "instruments",
    textOption(request, "instruments") ?? USUAL_INSTRUMENTS,
  );
  const site = await siteOf(request, context);
  const found = sessionOfDay(request, site, sunDateOf(request, site), hoursOf(request), null);
  if (found === null) throw noSun(site, sunDateOf(request, site));
  if (found.span.end <= request.at) {
    throw new AskError("in-the-past", "night", "“night”: that session is over; name a day still to come.");
  }
  const report = await context.forecasts.at(site, request.at);
  const limits = await limitsOf(request, context);
  const times = nightTimes(site, nightOn(found.day.date, site.timeZone));
  const verdict = sessionVerdict(times, found.span, report.models, limits, request.at);
  const weather = sessionWeatherWords(times, found.span, verdict, limits);
  return { site, audience, guests, instruments, found, report, verdict, weather };
}

export type SunPlan = {
  readonly site: Site;
  readonly audience: Audience;
  readonly guests: number;
  readonly instruments: readonly Instrument[];
  readonly found: SunSession;
  readonly report: ForecastReport;
  readonly verdict: NightVerdict;
  readonly weather: string;
};

function describePlan(request: Request, plan: SunPlan): Answer {
  const { site, audience, instruments, found, report } = plan;
  const { day, span } = found;
  const zone = site.timeZone;
  const setUp = new Date(span.start.getTime() - SET_UP_MINUTES * MS_PER_MINUTE);
  const cautions = cautionsFor({
    solar: true,
    publicSession: true,
    children: AUDIENCES[audience].children,
    mainsPower: instruments.some(({ kind }) => kind === "solar-telescope"),
  });
  const checklist = sunChecklist({
    setUp: clockTime(setUp, zone),
    children: AUDIENCES[audience].children,
    eyes: instruments.some(({ kind }) => kind === "eyes"),
  });
  const title = `The Sun for the public at ${site.name}, ${dateWords(day.date)}${plan.verdict.sample ? " (sample forecast)" : ""}`;
  const summary = `From ${clockSpan(span, zone)} the Sun stands clear of the skyline, up to ${Math.round(found.altitudeDeg)}° in the ${compassWords(found.azimuthDeg)}; every telescope behind a filter over its FRONT.`;
  const sections: Section[] = [
    { heading: "By the clock", lines: clockLines(plan, setUp) },
    { heading: "At each station", lines: instruments.map((instrument) => stationLine(plan, instrument)) },
    { heading: "The disc", lines: discLines(site, span.start) },
    { heading: "If clouds come", lines: [CLOUD_PLAN.sunIndoors] },
    ...checklist.map(({ heading, lines }) => ({ heading: `Checklist: ${heading.toLowerCase()}`, lines })),
    { heading: "", lines: [plan.weather, ...daylightMoonLines(site, found), ...report.problems] },
  ];
  const caption = `${clockSpan(span, zone)}, ${listWords(instruments.map(instrumentWords))}`;
  const parts = { title, summary, sections, cautions, caption };
  return {
    title,
    summary,
    sections,
    charts: [
      sheetOf({
        ...parts,
        sections: [
          ...sections.slice(0, 2),
          { heading: "Not to forget", lines: checklist.flatMap((part) => part.short) },
          { heading: "Weather", lines: [plan.weather] },
        ],
      }),
    ],
    cautions,
    next: [
      {
        label: "The Sun that day",
        command: "sun",
        options: { date: day.date, ...keptOptions(request, ["site"]) },
      },
    ],
    figures: {
      site: siteFigures(site),
      night: day.date,
      session: "sun",
      start: span.start.toISOString(),
      end: span.end.toISOString(),
      setUp: setUp.toISOString(),
      audience,
      guests: plan.guests,
      instruments: instruments.map((instrument): Figure => ({ ...instrument })),
      sunAltitudeDeg: found.altitudeDeg,
      sunAzimuthDeg: found.azimuthDeg,
      events: eventFigures(found),
      verdict: plan.verdict.kind === "unknown" ? null : plan.verdict.kind,
    },
    credits: report.credits,
    attachments: [sheetText(parts, day.date)],
  };
}

function clockLines({ site, found }: SunPlan, setUp: Date): string[] {
  const { day, span, events } = found;
  const zone = site.timeZone;
  const steady = day.steady;
  const lines = [
    {
      at: setUp,
      words: "Set up in the shade: filters on the fronts and taped, finders off, then inspect again.",
    },
    {
      at: span.start,
      words: `Doors open; the Sun stands ${whereOfSun(site, span.start)}. Turn your back to it and use the shadows.`,
    },
    ...(steady !== null && steady.end > span.start && steady.end < span.end
      ? [{ at: steady.end, words: "From now on the warmed ground stirs the air: low power." }]
      : []),
    ...events.map(({ at, title }) => ({ at, words: `The ${title} is at its deepest.` })),
    { at: span.end, words: "Close: caps on every telescope before anybody walks away." },
  ];
  return lines
    .sort((one, other) => one.at.getTime() - other.at.getTime())
    .map(({ at, words }) => `${clockTime(at, zone)} ${words}`);
}

function whereOfSun(site: Site, at: Date): string {
  return whereWords(bodyPlace("Sun", site, at), site.skyline);
}

/** What each instrument is used for, or that it stays packed. */
function stationLine({ site, found, guests, audience }: SunPlan, instrument: Instrument): string {
  const name = instrumentWords(instrument);
  const capital = `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;
  const { diameterArcmin } = sunDisc(site, found.span.start);
  switch (instrument.kind) {
    case "eyes":
      return `${capital}, behind viewers to ISO 12312-2: the disc as wide as the Moon; a spot only if it is larger than the Earth several times over. Say: “A hundred and nine Earths would stand side by side across it.”`;
    case "binoculars":
      return `${capital}: they stay in their cases while the Sun is up.`;
    case "telescope": {
      const { uses } = viewerOf(instrument, VIEWING);
      const use =
        uses.filter(({ trueFieldDeg }) => trueFieldDeg * 60 >= diameterArcmin * 1.2).at(-1) ?? uses[0];
      const at = use === undefined ? "low power" : power(use.power);
      const each = Math.floor((intervalHours(found.span) * 3600 * instrument.count) / guests);
      return `${capital}, each behind a certified full-aperture filter over the FRONT, finder off: the whole disc at ${at}, darker towards its edge; spots with their grey rims if there are any that day. Time for ${guests} guests: ${durationWords(each / 3600)} each, ${AUDIENCES[audience].secondsPerGuest} s needed. Say: “A spot is dark because it is cooler: 4,000 degrees instead of 5,500.”`;
    }
    case "solar-telescope":
      return `${capital}, by its maker's rules: the disc in one red colour, flames at the edge and bright patches if there are any that day. Say: “What stands at its edge is hydrogen held up by magnetism, and often taller than the Earth.”`;
  }
}

function discLines(site: Site, at: Date): string[] {
  const disc = sunDisc(site, at);
  const lean = Math.abs(disc.axisDeg).toFixed(0);
  return [
    `${disc.diameterArcmin.toFixed(1)}′ across; its axis leans ${lean}° ${disc.axisDeg >= 0 ? "east" : "west"} of north.`,
    "Whether there are spots nobody can say so far ahead: look two days before, behind a filter.",
  ];
}

/** The Moon by day is for bare eyes, and only well away from the Sun. */
function daylightMoonLines(site: Site, { span }: SunSession): string[] {
  const middle = new Date((span.start.getTime() + span.end.getTime()) / 2);
  const moon = bodyPlace("Moon", site, middle);
  const apart = separationDeg(moon, bodyPlace("Sun", site, middle));
  if (moon.altitudeDeg < 15 || apart <= SUN_GUARD_DEG + 10 || moon.illuminatedFraction < 0.15) return [];
  return [
    `The Moon is up by day, ${Math.round(apart)}° from the Sun, ${whereWords(moon, site.skyline)}: for bare eyes only, standing in the Sun's shadow; no glass points anywhere but at the filtered Sun.`,
  ];
}
