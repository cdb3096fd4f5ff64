/**
 * Why an evening suits the public, in sentences.
 *
 * @packageDocumentation
 */
import { intervalHours } from "../../core/interval.ts";
import type { BodyInReach, EveningFacts } from "../../core/outreach/evening-facts.ts";
import {
  type Merit,
  type MeritKind,
  moonShape,
  type WeighedEvening,
} from "../../core/outreach/evening-worth.ts";
import { clockTime, durationWords } from "./clock.ts";
import { compassWords, listWords } from "./sky.ts";

/** Every reason, the weightiest first. */
export function eveningReasons({ facts, merits }: WeighedEvening<EveningFacts>): string[] {
  const kinds = [...new Set(merits.map(({ kind }) => kind))];
  return kinds.map((kind) => reasonOf(kind, facts)).filter((sentence) => sentence !== null);
}

function reasonOf(kind: MeritKind, facts: EveningFacts): string | null {
  switch (kind) {
    case "moon":
    case "moonless":
      return moonReason(facts);
    case "planet":
      return planetReason(facts);
    case "darkness":
    case "no-darkness":
      return darkReason(facts);
    case "event":
      return eventReason(facts);
    case "bedtime":
      return `It runs ${durationWords(facts.session.pastLeaveHours)} past the hour at which they have to leave.`;
    case "weekday":
      return "A day on which they come readily.";
    case "forecast":
    case "sun":
      return null;
  }
}

function darkReason({ darkHours, darkFrom, session, times }: EveningFacts): string {
  const zone = times.night.timeZone;
  if (darkHours > 0 && darkFrom !== null) {
    return darkFrom <= session.start
      ? `Dark from the start, ${durationWords(darkHours)} of it.`
      : `Dark enough for stars and clusters from ${clockTime(darkFrom, zone)}: ${durationWords(darkHours)} before they leave.`;
  }
  return darkFrom === null
    ? "It does not get dark enough for clusters all night: the Moon, planets and bright stars only."
    : `Not dark enough for clusters before ${clockTime(darkFrom, zone)}: the Moon, planets and bright stars only.`;
}

/** A Moon thinner than this leaves the sky dark, wherever it stands. */
const FAINT_MOON = 0.3;

function moonReason({ moon, times, darkHours }: EveningFacts): string {
  const { illuminatedFraction, waxing } = times.moon;
  const percent = Math.round(illuminatedFraction * 100);
  const zone = times.night.timeZone;
  if (moon === null) {
    const isDark = darkHours > 0 && illuminatedFraction < FAINT_MOON;
    return isDark
      ? `No Moon in reach (${percent} % lit): a dark sky and nothing to dazzle.`
      : `No Moon high enough to be shown (${percent} % lit).`;
  }
  const where = `${Math.round(moon.altitudeDeg)}° high in the ${compassWords(moon.azimuthDeg)}`;
  const lost = moon.lostEarly ? `, lost by ${clockTime(moon.span.end, zone)}: show it first` : "";
  const shape = moonShape(illuminatedFraction);
  switch (shape) {
    case "half":
      return `A half-lit Moon (${percent} %), ${where}${lost}: long shadows where its day ends.`;
    case "crescent":
      return `A ${waxing ? "young" : "thin old"} crescent Moon (${percent} %), ${where}${lost}.`;
    case "gibbous":
      return `A Moon more than half lit (${percent} %), ${where}${lost}; it brightens the sky.`;
    case "full":
      return `A full Moon (${percent} %), ${where}${lost}: dazzling, without shadows, and it drowns what is faint.`;
  }
}

function planetReason({ planets, session, times }: EveningFacts): string | null {
  if (planets.length === 0) return null;
  const zone = times.night.timeZone;
  const words = (planet: BodyInReach) => {
    const late = planet.span.start.getTime() > session.start.getTime() + 15 * 60_000;
    const from = late ? ` from ${clockTime(planet.span.start, zone)}` : "";
    const lost = planet.lostEarly ? `, lost by ${clockTime(planet.span.end, zone)}` : "";
    return `${planet.body}${from} (${Math.round(planet.altitudeDeg)}° in the ${compassWords(planet.azimuthDeg)}${lost})`;
  };
  return `${planets.length === 1 ? "A planet" : "Planets"} in reach: ${listWords(planets.map(words))}.`;
}

function eventReason({ events, times }: EveningFacts): string | null {
  if (events.length === 0) return null;
  const zone = times.night.timeZone;
  return events
    .map(({ title, at, kind }) => {
      const capital = `${title.slice(0, 1).toUpperCase()}${title.slice(1)}`;
      return kind === "lunar-eclipse" || kind === "solar-eclipse"
        ? `${capital}, deepest at ${clockTime(at, zone)}.`
        : `${capital}.`;
    })
    .join(" ");
}

/** The chief attractions in a few words: `half-lit Moon, Saturn, 2 h dark`. */
export function attractionWords(facts: EveningFacts, merits: readonly Merit[]): string {
  const { moon, planets, darkHours, events, times } = facts;
  const shape = moonShape(times.moon.illuminatedFraction);
  const moons = {
    crescent: "crescent Moon",
    half: "half-lit Moon",
    gibbous: "bright Moon",
    full: "full Moon",
  };
  const shown = merits.filter(({ weight }) => weight > 0).map(({ kind }) => kind);
  const parts = [
    ...events.map(({ title }) => title),
    ...(moon !== null ? [moons[shape]] : shown.includes("moonless") ? ["no Moon"] : []),
    ...planets.map(({ body }) => body),
    ...(darkHours > 0 ? [`${durationWords(darkHours)} dark`] : ["twilight only"]),
  ];
  return parts.join(", ");
}

/** `1 h 30 min`, of a session. */
export function lengthWords(facts: EveningFacts): string {
  return durationWords(intervalHours(facts.session));
}
