/**
 * `sun`: a daytime session, always under the solar caution.
 *
 * @packageDocumentation
 */
import { ECLIPSE_AHEAD_DAYS, SUN_DAY, SUNLESS_DAYS_AT_MOST } from "../config/outreach.ts";
import { SUN_GUARD_DEG } from "../core/cautions.ts";
import { intervalHours, longestInterval } from "../core/interval.ts";
import { clearSpans } from "../core/outreach/eclipse-sight.ts";
import { type LocalSolarEclipse, localSolarEclipsesIn } from "../core/outreach/solar-eclipse.ts";
import { nextSunnyDate, type SunDay, sunDay } from "../core/outreach/sun-day.ts";
import { type SunDisc, sunDisc } from "../core/outreach/sun-disc.ts";
import type { Site } from "../core/site.ts";
import { halfTurnDeg } from "../core/sky/angles.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import { separationDeg } from "../core/sky/place.ts";
import type { BodyName } from "../core/targets/sky-object.ts";
import { type Answer, isoOrNull } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { SunChart } from "./chart.ts";
import type { Command } from "./command.ts";
import { sunViews } from "./disc-views.ts";
import { localEclipseFigures } from "./eclipse-figures.ts";
import { spanFigures } from "./object-figures.ts";
import { clockOption, DATE, DAY_TIME, dateOption, dayAfter, localDate } from "./read/day.ts";
import { SITE } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { clockSpan, clockTime, clockTimeOrDash, dateWords, durationWords } from "./words/clock.ts";
import { localEclipseWords } from "./words/eclipse-words.ts";
import { compassWords, listWords } from "./words/sky.ts";

export const sun: Command = {
  definition: {
    name: "sun",
    description: "A daytime session on the Sun: when, how high, its axis; behind front filters only",
    options: [SITE, DATE, DAY_TIME],
  },
  audience: "member",

  async answer(request, context) {
    const site = await siteOf(request, context);
    const day = sunDay(site, dayOf(request, site), SUN_DAY);
    if (day.up.length === 0) throw sunless(site, day.date);
    const disc = sunDisc(site, momentOf(request, site, day));
    return describeSun(request, site, day, disc);
  },
};

/** The date named, else today, else tomorrow once today's Sun has set. */
function dayOf(request: Request, site: Site): string {
  const named = dateOption(request);
  if (named !== null) return named;
  const today = localDate(request.at, site);
  const last = sunDay(site, today, SUN_DAY).up.at(-1);
  return last !== undefined && request.at >= last.end ? dayAfter(today) : today;
}

/** The time named, else now, else the steadiest or highest of the day. */
function momentOf(request: Request, site: Site, day: SunDay): Date {
  const named = clockOption(request, day.date, site);
  const isUp = (at: Date) => day.up.some(({ start, end }) => at >= start && at <= end);
  if (named !== null) {
    if (isUp(named)) return named;
    const spans = day.up.map((span) => clockSpan(span, site.timeZone));
    throw new AskError(
      "sun-down",
      "time",
      `The Sun is down at ${clockTime(named, site.timeZone)} there: “time” must lie within ${listWords(spans)}.`,
    );
  }
  if (isUp(request.at)) return request.at;
  return day.steady?.start ?? longestInterval(day.clear)?.start ?? day.transit?.at ?? day.whole.start;
}

function sunless(site: Site, date: string): AskError {
  const next = nextSunnyDate(site, dayAfter(date), SUNLESS_DAYS_AT_MOST);
  const choice = next === null ? "" : ` It comes up again on ${next}.`;
  return new AskError(
    "no-sun",
    "date",
    `The Sun does not rise at ${site.name} on ${date}: “date” needs a day with the Sun up.${choice}`,
  );
}

function describeSun(request: Request, site: Site, day: SunDay, disc: SunDisc): Answer {
  const cautions = cautionsFor({ solar: true });
  const zone = site.timeZone;
  const [eclipse] = localSolarEclipsesIn(site, day.whole.start, daysAfter(day, ECLIPSE_AHEAD_DAYS));
  const near = bodiesNearSun(site, disc.at);
  return {
    title: `The Sun at ${site.name}, ${dateWords(day.date)}`,
    summary: summaryWords(day),
    sections: [
      { heading: "Through the day", lines: dayLines(day) },
      { heading: `The disc at ${clockTime(disc.at, zone)}`, lines: discLines(disc) },
      {
        heading: "Near the Sun",
        lines: [
          ...near.map(nearWords),
          ...(near.length === 0
            ? ["No planet and no Moon within 30° of it."]
            : [
                "A warning, not a list to look for: pointed there, a telescope takes in the Sun with the next nudge.",
              ]),
        ],
      },
      {
        heading: "Eclipses",
        lines: [
          eclipse === undefined
            ? `None touches this site in the next ${Math.round(ECLIPSE_AHEAD_DAYS / 365)} years.`
            : localEclipseWords(eclipse, clearOf(site, eclipse), zone),
        ],
      },
    ],
    charts: [
      sunChart(
        disc,
        site,
        cautions.map(({ text }) => text),
      ),
    ],
    cautions,
    next: followUps(request),
    figures: sunFigures(site, day, disc, eclipse ?? null, near),
    credits: [],
  };
}

function daysAfter({ whole }: SunDay, days: number): Date {
  return new Date(whole.start.getTime() + days * 86_400_000);
}

function clearOf(site: Site, eclipse: LocalSolarEclipse) {
  return clearSpans(site, "Sun", { start: eclipse.begins.at, end: eclipse.ends.at });
}

function summaryWords(day: SunDay): string {
  const longest = longestInterval(day.clear);
  const height = day.transit === null ? null : Math.round(day.transit.altitudeDeg);
  if (longest === null) {
    return `The Sun comes up but never clears the skyline and ${SUN_DAY.leastAltitudeDeg}° that day${
      height === null ? "" : `; at noon it stands ${height}° high`
    }.`;
  }
  const isAllDay = +longest.start === +day.whole.start && +longest.end === +day.whole.end;
  const spans = isAllDay ? ["all day"] : day.clear.map((span) => clockSpan(span, day.timeZone));
  const noon =
    day.transit === null || height === null
      ? ""
      : `; highest, ${height}°, at ${clockTime(day.transit.at, day.timeZone)}`;
  return `It clears the skyline ${listWords(spans)}${noon}.`;
}

function dayLines(day: SunDay): string[] {
  const zone = day.timeZone;
  const hours = day.clear.reduce((sum, span) => sum + intervalHours(span), 0);
  const lines =
    day.sunrise === null && day.sunset === null
      ? ["It neither rises nor sets that day: it is up throughout."]
      : [
          `Rises ${clockTimeOrDash(day.sunrise, zone)}, sets ${clockTimeOrDash(day.sunset, zone)}, by a level horizon.`,
        ];
  if (hours > 0) lines.push(`Over the skyline and ${SUN_DAY.leastAltitudeDeg}° for ${durationWords(hours)}.`);
  lines.push(
    day.steady === null
      ? "No steady part of the morning clears the skyline: expect a trembling edge."
      : `The air is usually steadiest ${clockSpan(day.steady, zone)}, with the Sun well up and the ground not yet heated (common practice; grass or water beats roofs and tarmac).`,
  );
  return lines;
}

function discLines(disc: SunDisc): string[] {
  const lean = Math.abs(disc.axisDeg).toFixed(1);
  const tilt = Math.abs(disc.centreLatitudeDeg).toFixed(1);
  return [
    `${Math.round(disc.altitudeDeg)}° high in the ${compassWords(disc.azimuthDeg)}, ${disc.diameterArcmin.toFixed(1)}′ across.`,
    `Its axis leans ${lean}° ${disc.axisDeg >= 0 ? "east" : "west"} of north (P), its ${
      disc.centreLatitudeDeg >= 0 ? "north" : "south"
    } pole ${tilt}° towards us (B₀); the middle of the disc is at Carrington longitude ${disc.centreLongitudeDeg.toFixed(1)}° (L₀).`,
  ];
}

type NearSun = { readonly body: BodyName; readonly separationDeg: number; readonly east: boolean };

const COULD_BE_NEAR: readonly BodyName[] = ["Moon", "Mercury", "Venus", "Mars", "Jupiter", "Saturn"];

/** What could tempt somebody to sweep past the Sun. */
function bodiesNearSun(site: Site, at: Date): NearSun[] {
  const sunPlace = bodyPlace("Sun", site, at);
  return COULD_BE_NEAR.map((body) => {
    const place = bodyPlace(body, site, at);
    return {
      body,
      separationDeg: separationDeg(place, sunPlace),
      east: halfTurnDeg(place.raDeg - sunPlace.raDeg) > 0,
    };
  }).filter(({ separationDeg: apart }) => apart <= SUN_GUARD_DEG);
}

function nearWords({ body, separationDeg: apart, east }: NearSun): string {
  const name = body === "Moon" ? "The Moon" : body;
  return `${name} stands ${Math.round(apart)}° ${east ? "east" : "west"} of the Sun: do not look for it while the Sun is up.`;
}

/** The disc as each kind of view shows it, under the whole caution. */
export function sunChart(disc: SunDisc, site: Site, cautions: readonly string[]): SunChart {
  const time = clockTime(disc.at, site.timeZone);
  const lean = `${Math.abs(disc.axisDeg).toFixed(1)}° ${disc.axisDeg >= 0 ? "east" : "west"} of north`;
  return {
    kind: "sun",
    name: "sun",
    title: `The Sun's axis leans ${lean}`,
    alt: `The Sun's disc at ${time} as a certified viewer, a telescope without a diagonal, one with a star diagonal and a projection card show it. The axis leans ${lean}; the middle of the disc lies at latitude ${disc.centreLatitudeDeg.toFixed(1)}°. The solar caution stands above it in full.`,
    caption: `${site.name}, ${time}, zenith up unless a view says otherwise`,
    cautions,
    axisDeg: disc.axisDeg,
    b0Deg: disc.centreLatitudeDeg,
    l0Deg: disc.centreLongitudeDeg,
    views: sunViews(disc.parallacticDeg),
  };
}

function followUps(request: Request): Answer["next"] {
  const site = typeof request.options.site === "string" ? { site: request.options.site } : {};
  return [
    { label: "What comes in the sky", command: "events", options: site },
    { label: "The Moon tonight", command: "moon", options: site },
  ];
}

function sunFigures(
  site: Site,
  day: SunDay,
  disc: SunDisc,
  eclipse: LocalSolarEclipse | null,
  near: readonly NearSun[],
): Answer["figures"] {
  return {
    site: {
      name: site.name,
      latitudeDeg: site.latitudeDeg,
      longitudeDeg: site.longitudeDeg,
      timeZone: site.timeZone,
    },
    date: day.date,
    sunrise: isoOrNull(day.sunrise),
    sunset: isoOrNull(day.sunset),
    transit:
      day.transit === null
        ? null
        : { at: day.transit.at.toISOString(), altitudeDeg: day.transit.altitudeDeg },
    upWindows: spanFigures(day.up),
    clearWindows: spanFigures(day.clear),
    leastAltitudeDeg: SUN_DAY.leastAltitudeDeg,
    steadyWindow:
      day.steady === null
        ? null
        : { start: day.steady.start.toISOString(), end: day.steady.end.toISOString() },
    disc: {
      at: disc.at.toISOString(),
      altitudeDeg: disc.altitudeDeg,
      azimuthDeg: disc.azimuthDeg,
      distanceAu: disc.distanceAu,
      diameterArcmin: disc.diameterArcmin,
      axisPositionAngleDeg: disc.axisDeg,
      b0Deg: disc.centreLatitudeDeg,
      l0Deg: disc.centreLongitudeDeg,
      parallacticAngleDeg: disc.parallacticDeg,
    },
    nextEclipse: eclipse === null ? null : localEclipseFigures(eclipse, clearOf(site, eclipse)),
    nearSun: near.map((each) => ({ ...each })),
  };
}
