/**
 * `planets`: which can be seen, when and where, how they look; Jupiter's moons for the hour.
 *
 * @packageDocumentation
 */
import { PLANET_EVENTS_AHEAD_DAYS, PLANET_RULES } from "../config/outreach.ts";
import { nightTimes } from "../core/night/night-times.ts";
import { jovianPhenomena, jovianSystem } from "../core/outreach/jupiter-moons.ts";
import { planetEvents } from "../core/outreach/planet-events.ts";
import { PLANETS, type PlanetNight, planetLook, planetNight } from "../core/outreach/planets.ts";
import type { Site } from "../core/site.ts";
import type { Answer, Section, Table } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import type { JupiterChart } from "./chart.ts";
import type { Command } from "./command.ts";
import { keptOptions } from "./kept-options.ts";
import { type JupiterTonight, type PlanetsTonight, planetFigures } from "./planet-figures.ts";
import { pointingAt } from "./pointings.ts";
import { clockInNight, TIME } from "./read/moment.ts";
import { nightOf } from "./read/night.ts";
import { textOption } from "./read/numbers.ts";
import { oneOfWords } from "./read/one-of.ts";
import { defineChoice, NIGHT, SITE } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { clockTime, dateWords } from "./words/clock.ts";
import { withMinus } from "./words/minus.ts";
import {
  jovianWords,
  phenomenonWords,
  placedWords,
  planetEventWords,
  planetPhaseWords,
  ringWords,
  seenWords,
} from "./words/planet-words.ts";
import { listWords } from "./words/sky.ts";

const VIEWS = ["upright", "inverted", "mirrored"] as const;
type View = (typeof VIEWS)[number];

const DAY_MS = 86_400_000;

export const planets: Command = {
  definition: {
    name: "planets",
    description: "Planets tonight: when, where, size, brightness, phase, ring, Jupiter's moons",
    options: [
      SITE,
      NIGHT,
      TIME,
      defineChoice("planet", "One planet alone", PLANETS),
      defineChoice("view", "How the telescope shows Jupiter; default: upright", VIEWS),
    ],
  },
  audience: "member",

  async answer(request, context) {
    const only = oneOfWords(request, "planet", PLANETS);
    const view = oneOfWords(request, "view", VIEWS) ?? "upright";
    const site = await siteOf(request, context);
    const times = nightTimes(site, nightOf(request, site));
    const { noon, date, timeZone } = times.night;
    const time = textOption(request, "time");
    const named = time === null ? null : clockInNight("time", time, date, timeZone);
    const asked = only === null ? PLANETS : [only];
    const nights = asked.map((planet) => planetNight(site, times, planet, PLANET_RULES));
    // Drawn when it can be seen, or for the hour somebody names.
    const jupiter = nights.find(
      ({ planet, windows }) => planet === "Jupiter" && (windows.length > 0 || named !== null),
    );
    const until = new Date(noon.getTime() + PLANET_EVENTS_AHEAD_DAYS * DAY_MS);
    const found: PlanetsTonight = {
      site,
      times,
      nights,
      events: asked
        .flatMap((planet) => planetEvents(planet, noon, until))
        .sort((one, other) => one.at.getTime() - other.at.getTime()),
      jupiter: jupiter === undefined ? null : jupiterTonight(request, site, jupiter, named),
      named,
    };
    return describePlanets(request, found, view);
  },
};

/** At the time named, else now while it can be seen, else when it is best placed. */
function jupiterTonight(
  request: Request,
  site: Site,
  { windows, look }: PlanetNight,
  named: Date | null,
): JupiterTonight {
  const isSeen = windows.some(({ start, end }) => request.at >= start && request.at <= end);
  const at = named ?? (isSeen ? request.at : look.at);
  return {
    at,
    look: at === look.at ? look : planetLook(site, "Jupiter", at),
    system: jovianSystem(at),
    phenomena: windows.flatMap((window) => jovianPhenomena(window)),
  };
}

function describePlanets(request: Request, found: PlanetsTonight, view: View): Answer {
  const { site, times, nights, jupiter } = found;
  const zone = site.timeZone;
  const cautions = cautionsFor({ pointings: pointingsOf(request, found) });
  return {
    title: `${nights.length === 1 ? (nights[0]?.planet ?? "") : "Planets"} from ${site.name}, the night of ${dateWords(times.night.date)}`,
    summary: summaryWords(nights, zone),
    sections: [
      { heading: "", lines: notes(found), table: planetTable(nights, zone) },
      ...(jupiter === null ? [] : [jupiterSection(jupiter, zone)]),
      ...(found.events.length === 0
        ? []
        : [{ heading: "Ahead", lines: found.events.map((event) => planetEventWords(event, zone)) }]),
    ],
    charts:
      jupiter === null
        ? []
        : [
            jupiterChart(
              jupiter,
              view,
              zone,
              cautions.map(({ text }) => text),
            ),
          ],
    cautions,
    next: followUps(request, nights),
    figures: planetFigures(found),
    credits: [],
  };
}

/** Now, at the time named, and at both ends and the best of every window. */
function pointingsOf(request: Request, { site, nights, jupiter, named }: PlanetsTonight) {
  return nights.flatMap(({ planet, windows, look }) => {
    const instants = [
      request.at,
      ...(windows.length > 0 ? [look.at] : []),
      ...(named === null ? [] : [named]),
      ...(planet === "Jupiter" && jupiter !== null ? [jupiter.at] : []),
      ...windows.flatMap(({ start, end }) => [start, end]),
    ];
    return instants.map((at) => pointingAt(site, { kind: "body", body: planet }, at));
  });
}

function summaryWords(nights: readonly PlanetNight[], zone: string): string {
  const seen = nights.filter(({ windows }) => windows.length > 0);
  if (seen.length === 0) {
    return nights.length === 1
      ? `${nights[0]?.planet ?? "It"} is not to be seen that night.`
      : "No planet clears the skyline with the Sun down that night.";
  }
  const words = seen.map((night) => `${night.planet} ${seenWords(night, zone)}`);
  return `${listWords(words)}.`;
}

function planetTable(nights: readonly PlanetNight[], zone: string): Table {
  return {
    columns: ["Planet", "Seen", "Best", "Size", "Mag", "In"],
    rows: nights.map((night) => [
      night.planet,
      seenWords(night, zone),
      placedWords(night, zone),
      `${night.look.diameterArcsec.toFixed(1)}″`,
      withMinus(night.look.magnitude.toFixed(1)),
      night.look.constellation,
    ]),
  };
}

/** Phases and the ring of those that can be seen. */
function notes({ nights }: PlanetsTonight): string[] {
  return nights.flatMap(({ planet, windows, look }) => {
    if (windows.length === 0) return [];
    if (planet === "Mercury" || planet === "Venus" || planet === "Mars") {
      return [
        `${planet} is ${planetPhaseWords(look)}, ${Math.round(look.elongationDeg)}° ${look.evening ? "east" : "west"} of the Sun.`,
      ];
    }
    return look.ring === null ? [] : [ringWords(look.ring)];
  });
}

function jupiterSection({ at, system, phenomena }: JupiterTonight, zone: string): Section {
  return {
    heading: `Jupiter's moons at ${clockTime(at, zone)}`,
    lines: [jovianWords(system), ...phenomena.map((one) => phenomenonWords(one, zone))],
  };
}

function jupiterChart(
  { at, look, system }: JupiterTonight,
  view: View,
  zone: string,
  cautions: readonly string[],
): JupiterChart {
  // The drawing is upright by Jupiter's own axis; on the sky that leans, and the zenith is up.
  const lean = look.axisDeg - look.parallacticDeg;
  return {
    kind: "jupiter",
    name: "jupiter",
    title: `Jupiter's moons at ${clockTime(at, zone)}, ${view}`,
    alt: `Jupiter and its four moons at ${clockTime(at, zone)}, ${view}. ${jovianWords(system)}`,
    caption:
      view === "mirrored"
        ? "As with a star diagonal; north and west by Jupiter's axis"
        : "North and west by Jupiter's axis",
    cautions,
    turnDeg: view === "inverted" ? lean + 180 : lean,
    mirrored: view === "mirrored",
    moons: system.moons.map(({ numeral, x, y, state }) => ({ numeral, x, y, state })),
    shadows: system.shadows,
  };
}

function followUps(request: Request, nights: readonly PlanetNight[]): Answer["next"] {
  const kept = keptOptions(request, ["site", "night"]);
  const seen = nights.find(({ windows }) => windows.length > 0);
  return [
    ...(seen === undefined
      ? []
      : [
          {
            label: `${seen.planet} through the night`,
            command: "target",
            options: { target: seen.planet, ...kept },
          },
        ]),
    { label: "The Moon", command: "moon", options: kept },
    { label: "What comes in the sky", command: "events", options: kept },
  ];
}
