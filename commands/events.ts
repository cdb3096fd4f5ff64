/**
 * `events`: eclipses, meteor showers, close approaches, planets, phases, seasons and a typed
 * comet, by date, for the site and in its zone; as a calendar file too.
 *
 * @packageDocumentation
 */
import { EVENTS_AHEAD_DAYS } from "../config/outreach.ts";
import { PHOTOMETRY } from "../config/photometry.ts";
import { UNKNOWN_AIR_CELSIUS } from "../config/rig-defaults.ts";
import { nightOn, nightsFrom } from "../core/night/local-night.ts";
import { zenithMagArcsec2 } from "../core/night/sky-brightness.ts";
import type { CometElements } from "../core/outreach/comet-orbit.ts";
import type { Site } from "../core/site.ts";
import { observingConditions } from "../core/targets/observing-conditions.ts";
import type { Answer, Section } from "./answer.ts";
import { type CalendarEntry, calendarFile } from "./calendar-file.ts";
import { cautionsFor } from "./cautions.ts";
import {
  type CometNight,
  cometEvents,
  cometFigures,
  cometNights,
  cometSection,
  cometSummary,
  isNearSun,
} from "./comet-events.ts";
import type { Command } from "./command.ts";
import { eclipseEvents } from "./eclipse-events.ts";
import { keptOptions } from "./kept-options.ts";
import { COMET, cometOption } from "./read/comet.ts";
import { oneOfWords } from "./read/one-of.ts";
import { defineChoice, NIGHT, NIGHTS, SITE, SKY } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import { skyOf } from "./read/sky.ts";
import { type DaySpan, daySpanOf, FROM_DATE, TO_DATE } from "./read/span.ts";
import type { Request } from "./request.ts";
import { showerEvents } from "./shower-events.ts";
import { EVENT_KINDS, type EventKind, type SkyEvent } from "./sky-event.ts";
import { approachEvents, moonEvents, planetSkyEvents, seasonEvents } from "./wanderer-events.ts";
import { clockTime } from "./words/clock.ts";
import { dayWords, shortDayWords } from "./words/day-words.ts";
import { SHADOW_CONVENTION } from "./words/eclipse-words.ts";

const NAMED_IN_SUMMARY = 3;

export const events: Command = {
  definition: {
    name: "events",
    description: "Eclipses, meteors, conjunctions, planets, phases, comets: by date, for your site",
    options: [
      SITE,
      FROM_DATE,
      TO_DATE,
      NIGHT,
      NIGHTS,
      defineChoice("kind", "One kind alone", EVENT_KINDS),
      COMET,
      SKY,
    ],
  },
  audience: "member",

  async answer(request, context) {
    const only = oneOfWords(request, "kind", EVENT_KINDS);
    const comet = cometOption(request);
    const site = await siteOf(request, context);
    const sky = skyOf(request, site);
    const span = daySpanOf(request, site, EVENTS_AHEAD_DAYS);
    const conditions = observingConditions({
      site,
      zenithMagArcsec2: zenithMagArcsec2(sky.quality, PHOTOMETRY.bortleMagArcsec2),
      aerosolExtinction: PHOTOMETRY.aerosolExtinction,
      photometry: PHOTOMETRY,
      airCelsiusAt: () => UNKNOWN_AIR_CELSIUS,
    });
    const within = { from: span.start, to: span.end };
    const gather: Readonly<Record<EventKind, () => readonly SkyEvent[]>> = {
      eclipses: () => eclipseEvents(site, within),
      meteors: () => showerEvents(site, conditions, within),
      conjunctions: () => approachEvents(site, within),
      planets: () => planetSkyEvents(within),
      moon: () => moonEvents(within),
      seasons: () => seasonEvents(site, within),
      comets: () => (comet === null ? [] : cometEvents(comet, within)),
    };
    const kinds = only === null ? EVENT_KINDS : [only];
    const found = kinds
      .flatMap((kind) => gather[kind]())
      .sort((one, other) => one.at.getTime() - other.at.getTime());
    const nights = nightsFrom(nightOn(span.date, site.timeZone), span.days);
    return describeEvents(request, {
      site,
      span,
      found,
      only,
      comet: comet === null ? null : { elements: comet, nights: cometNights(site, comet, nights) },
      assumption: kinds.includes("meteors") ? sky.assumption : null,
    });
  },
};

type FoundEvents = {
  readonly site: Site;
  readonly span: DaySpan;
  /** By date. */
  readonly found: readonly SkyEvent[];
  readonly only: EventKind | null;
  readonly comet: { readonly elements: CometElements; readonly nights: readonly CometNight[] } | null;
  /** What the meteors' numbers rest on for want of the site's own sky. */
  readonly assumption: string | null;
};

function describeEvents(request: Request, all: FoundEvents): Answer {
  const { site, span, found, comet } = all;
  const zone = site.timeZone;
  const solar = found.some((event) => event.solar) || (comet !== null && isNearSun(comet.nights));
  return {
    title: `In the sky over ${site.name}, ${span.days === 1 ? dayWords(span.start, zone) : `${span.days} days from ${dayWords(span.start, zone)}`}`,
    summary: summaryWords(all),
    sections: [
      eventTable(all),
      ...detailSections(all),
      ...(comet === null ? [] : [cometSection(comet.elements, comet.nights, zone)]),
      { heading: "", lines: notes(all) },
    ].filter(({ lines, table }: Section) => lines.length > 0 || table !== undefined),
    charts: [],
    cautions: cautionsFor({ solar }),
    next: followUps(request, all),
    figures: {
      site: {
        name: site.name,
        latitudeDeg: site.latitudeDeg,
        longitudeDeg: site.longitudeDeg,
        timeZone: site.timeZone,
      },
      from: span.start.toISOString(),
      to: span.end.toISOString(),
      events: found.map((event) => ({
        kind: event.kind,
        title: event.title,
        at: event.at.toISOString(),
        seenFromSite: event.seen,
        solarCaution: event.solar,
        ...event.figures,
      })),
      comet: comet === null ? null : cometFigures(comet.elements, comet.nights),
    },
    credits: [],
    ...(found.length === 0
      ? {}
      : { attachments: [calendarFile("events", found.map(calendarEntry), request.at)] }),
  };
}

/** An event as a calendar keeps it; anything solar carries the whole caution first. */
function calendarEntry(event: SkyEvent): CalendarEntry {
  return {
    key: event.key,
    start: event.start,
    end: event.end,
    title: event.title,
    cautions: cautionsFor({ solar: event.solar }).map(({ text }) => text),
    lines: [...(event.fromHere === "" ? [] : [`${capitalised(event.fromHere)}.`]), ...event.lines],
    place: null,
  };
}

function summaryWords({ found, site, only, comet }: FoundEvents): string {
  const zone = site.timeZone;
  const seen = found.filter((event) => event.notable);
  if (only === "comets" && comet === null) {
    return "No comet's orbit is kept here, for orbits go stale: type its elements under “comet”.";
  }
  if (only === "comets" && comet !== null) return cometSummary(comet.elements, comet.nights);
  if (seen.length > 0) {
    const words = seen
      .slice(0, NAMED_IN_SUMMARY)
      .map((event) => `${event.title} (${shortDayWords(event.start, zone)})`);
    const more = seen.length > words.length ? `, and ${seen.length - words.length} more` : "";
    return `To see from here: ${words.join("; ")}${more}.`;
  }
  return found.length === 0
    ? "Nothing of the kind happens in that time."
    : "Nothing of it is much to see from here.";
}

function eventTable({ found, site }: FoundEvents): Section {
  if (found.length === 0) return { heading: "", lines: [] };
  const zone = site.timeZone;
  return {
    heading: "By date",
    lines: [],
    table: {
      columns: ["When", "What", "From here"],
      rows: found.map((event) => [
        `${shortDayWords(event.at, zone)} ${clockTime(event.at, zone)}`,
        event.title,
        event.fromHere === "" ? "–" : event.fromHere,
      ]),
    },
  };
}

const DETAILED: readonly { readonly kind: EventKind; readonly heading: string }[] = [
  { kind: "eclipses", heading: "Eclipses" },
  { kind: "meteors", heading: "Meteor showers" },
];

function detailSections({ found }: FoundEvents): Section[] {
  return DETAILED.map(({ kind, heading }) => ({
    heading,
    lines: found
      .filter((event) => event.kind === kind && event.lines.length > 0)
      .map((event) => `${event.title}: ${event.lines.join(" ")}`),
  }));
}

function notes({ found, site, assumption, comet, only }: FoundEvents): string[] {
  const types = new Set(found.map((event) => event.figures.type));
  return [
    `Times are those of ${site.timeZone}.`,
    ...(types.has("lunar-eclipse") ? [SHADOW_CONVENTION] : []),
    ...(types.has("meteor-shower")
      ? [
          "Meteors an hour are for one practised pair of eyes under a clear sky, at the peak's own rate: rough.",
        ]
      : []),
    ...(types.has("meteor-shower") && assumption !== null ? [assumption] : []),
    ...(comet === null && only === null
      ? [
          "Comets are not listed: no orbits are kept here, for they go stale. Type one's elements under “comet”.",
        ]
      : []),
  ];
}

function followUps(request: Request, { found }: FoundEvents): Answer["next"] {
  const kept = keptOptions(request, ["site"]);
  const solar = found.find(({ figures, seen }) => figures.type === "solar-eclipse" && seen);
  return [
    ...(solar === undefined
      ? []
      : [
          {
            label: "The Sun that day",
            command: "sun",
            options: { ...kept, date: solar.at.toISOString().slice(0, 10) },
          },
        ]),
    { label: "The Moon tonight", command: "moon", options: kept },
    { label: "The planets tonight", command: "planets", options: kept },
  ];
}

function capitalised(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
