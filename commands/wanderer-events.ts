/**
 * Moon phases, equinoxes and solstices, oppositions and elongations, close approaches, as events.
 *
 * @packageDocumentation
 */
import { APPROACH_LIMITS, PLANET_RULES } from "../config/outreach.ts";
import { SUN_GUARD_DEG } from "../core/cautions.ts";
import { type MoonPhase, moonPhases } from "../core/night/moon-phases.ts";
import { approachSight, type CloseApproach, closeApproaches } from "../core/outreach/conjunctions.ts";
import { type PlanetEvent, planetEvents } from "../core/outreach/planet-events.ts";
import { PLANETS } from "../core/outreach/planets.ts";
import { type SeasonTurn, seasonTurns } from "../core/outreach/seasons.ts";
import type { Site } from "../core/site.ts";
import { type EventSpan, minutesAfter, type SkyEvent, utcDate } from "./sky-event.ts";
import { clockTime } from "./words/clock.ts";
import { shortDayWords } from "./words/day-words.ts";
import { planetEventTitle } from "./words/planet-words.ts";
import { compassWords } from "./words/sky.ts";

/** New, quarters, full. */
export function moonEvents({ from, to }: EventSpan): SkyEvent[] {
  return moonPhases(from, to).map(({ name, at }) => ({
    ...momentary(at),
    key: `moon-${name}-${utcDate(at)}`,
    kind: "moon",
    title: PHASE_TITLES[name],
    fromHere: "",
    figures: { type: "moon-phase", phase: name },
  }));
}

const PHASE_TITLES: Readonly<Record<MoonPhase["name"], string>> = {
  new: "New Moon",
  "first-quarter": "First quarter",
  full: "Full Moon",
  "last-quarter": "Last quarter",
};

export function seasonEvents(site: Site, { from, to }: EventSpan): SkyEvent[] {
  return seasonTurns(from, to).map(({ name, at }) => ({
    ...momentary(at),
    key: `${name}-${utcDate(at)}`,
    kind: "seasons",
    title: SEASON_TITLES[name],
    fromHere: seasonWords(name, site.latitudeDeg >= 0),
    figures: { type: "season", season: name },
  }));
}

const SEASON_TITLES: Readonly<Record<SeasonTurn["name"], string>> = {
  "march-equinox": "March equinox",
  "june-solstice": "June solstice",
  "september-equinox": "September equinox",
  "december-solstice": "December solstice",
};

function seasonWords(name: SeasonTurn["name"], north: boolean): string {
  switch (name) {
    case "march-equinox":
      return north ? "nights grow shorter" : "nights grow longer";
    case "june-solstice":
      return north ? "the shortest night" : "the longest night";
    case "september-equinox":
      return north ? "nights grow longer" : "nights grow shorter";
    case "december-solstice":
      return north ? "the longest night" : "the shortest night";
  }
}

export function planetSkyEvents({ from, to }: EventSpan): SkyEvent[] {
  return PLANETS.flatMap((planet) => planetEvents(planet, from, to)).map((event) => ({
    ...momentary(event.at),
    key: `${event.planet}-${event.kind}-${utcDate(event.at)}`,
    kind: "planets",
    title: planetEventTitle(event),
    fromHere: planetSight(event),
    notable: event.kind === "opposition",
    solar: event.elongationDeg <= SUN_GUARD_DEG,
    figures: {
      type: "planet",
      planet: event.planet,
      event: event.kind,
      elongationDeg: event.elongationDeg,
    },
  }));
}

function planetSight({ kind, elongationDeg }: PlanetEvent): string {
  switch (kind) {
    case "opposition":
      return "up all night for weeks around";
    case "conjunction":
    case "inferior-conjunction":
    case "superior-conjunction":
      return "by the Sun: not to be looked for";
    case "greatest-elongation-east":
      return `${elongationDeg.toFixed(0)}° from the Sun: in the evening, once all of the Sun is down`;
    case "greatest-elongation-west":
      return `${elongationDeg.toFixed(0)}° from the Sun: in the morning, well before sunrise`;
  }
}

export function approachEvents(site: Site, { from, to }: EventSpan): SkyEvent[] {
  return closeApproaches(from, to, APPROACH_LIMITS).map((approach) => approachEvent(site, approach));
}

function approachEvent(site: Site, approach: CloseApproach): SkyEvent {
  const { at, bodies, separationDeg, elongationDeg } = approach;
  const sight = approachSight(site, approach, PLANET_RULES);
  const [one, other] = bodies;
  const zone = site.timeZone;
  return {
    key: `${one}-${other}-${utcDate(at)}`,
    kind: "conjunctions",
    at,
    start: sight?.at ?? at,
    end: minutesAfter(sight?.at ?? at, sight === null ? 1 : 30),
    title: `${one === "Moon" ? "The Moon" : one} close to ${other}`,
    fromHere:
      sight === null
        ? "not while both are up and the Sun is down"
        : `${shortDayWords(sight.at, zone)} ${clockTime(sight.at, zone)}: ${sight.separationDeg.toFixed(1)}° apart, ${Math.round(sight.altitudeDeg)}° in the ${compassWords(sight.azimuthDeg)}`,
    lines: [],
    seen: sight !== null,
    notable: sight !== null && sight.separationDeg <= APPROACH_LIMITS.moonDeg,
    solar: elongationDeg <= SUN_GUARD_DEG,
    figures: {
      type: "close-approach",
      bodies: [...bodies],
      separationDeg,
      elongationDeg,
      sight: sight === null ? null : { ...sight, at: sight.at.toISOString() },
    },
  };
}

/** An instant at which nothing is to be looked at. */
function momentary(at: Date) {
  return {
    at,
    start: at,
    end: minutesAfter(at, 1),
    lines: [],
    seen: null,
    notable: false,
    solar: false,
  } as const;
}
