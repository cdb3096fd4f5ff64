/**
 * Planets in words.
 *
 * @packageDocumentation
 */
import { RING_EDGE_DEG } from "../../config/outreach.ts";
import { LEAST_ALTITUDE_DEG } from "../../config/ranking.ts";
import type { JovianMoon, JovianPhenomenon, JovianSystem } from "../../core/outreach/jupiter-moons.ts";
import type { PlanetEvent, PlanetEventKind } from "../../core/outreach/planet-events.ts";
import type { PlanetLook, PlanetNight, RingView } from "../../core/outreach/planets.ts";
import { clockSpan, clockTime } from "./clock.ts";
import { dayWords } from "./day-words.ts";
import { compassWords, listWords } from "./sky.ts";

const EVENT_WORDS: Readonly<Record<PlanetEventKind, string>> = {
  opposition: "at opposition, opposite the Sun and at its best",
  conjunction: "in conjunction, behind the Sun",
  "inferior-conjunction": "in inferior conjunction, between us and the Sun",
  "superior-conjunction": "in superior conjunction, behind the Sun",
  "greatest-elongation-east": "at greatest eastern elongation, in the evening sky",
  "greatest-elongation-west": "at greatest western elongation, in the morning sky",
};

const STATE_WORDS: Readonly<Record<JovianMoon["state"], string>> = {
  clear: "beside the disc",
  transit: "in front of the disc",
  occulted: "behind the disc",
  eclipsed: "in its shadow",
};

/** `18:20 to 23:50`, several joined, or `–`. */
export function seenWords({ windows }: PlanetNight, zone: string): string {
  return windows.length === 0 ? "–" : listWords(windows.map((span) => clockSpan(span, zone)));
}

/** Where it stands when it is best placed. */
export function placedWords({ look, windows, planet }: PlanetNight, zone: string): string {
  if (windows.length === 0) return unseenWords(look);
  const low = look.altitudeDeg < LEAST_ALTITUDE_DEG.public ? ", low in thick air" : "";
  const kind = planet === "Uranus" || planet === "Neptune" ? ", with binoculars and a chart" : "";
  return `${Math.round(look.altitudeDeg)}° in the ${compassWords(look.azimuthDeg)} at ${clockTime(look.at, zone)}${low}${kind}`;
}

function unseenWords(look: PlanetLook): string {
  return look.elongationDeg < 30
    ? `not to be looked for: ${Math.round(look.elongationDeg)}° from the Sun`
    : "not clear of the skyline with the Sun down";
}

/** A phase worth a word: of Mercury, Venus and Mars. */
export function planetPhaseWords(look: PlanetLook): string {
  const percent = Math.round(look.illuminatedFraction * 100);
  if (look.illuminatedFraction < 0.45) return `a crescent, ${percent} % lit`;
  if (look.illuminatedFraction < 0.55) return `half lit, ${percent} %`;
  return look.illuminatedFraction < 0.97 ? `gibbous, ${percent} % lit` : `${percent} % lit`;
}

/** `Saturn's ring is open by 9°, its southern side towards us, 41″ by 6″.` */
export function ringWords({ tiltDeg, sunTiltDeg, majorArcsec, minorArcsec }: RingView): string {
  const size = `${majorArcsec.toFixed(0)}″ by ${minorArcsec.toFixed(1)}″`;
  const side = tiltDeg >= 0 ? "northern" : "southern";
  if (Math.abs(tiltDeg) < RING_EDGE_DEG) {
    return `Saturn's ring is almost edge-on, ${Math.abs(tiltDeg).toFixed(1)}° open: a thin line, ${size}.`;
  }
  const dark = tiltDeg > 0 === sunTiltDeg > 0 ? "" : " and unlit, for the Sun shines on the other";
  return `Saturn's ring is open by ${Math.abs(tiltDeg).toFixed(1)}°, its ${side} side towards us${dark}, ${size}.`;
}

/** `Jupiter is at opposition … on Sunday 10 January 2027 (178° from the Sun).` */
export function planetEventWords({ planet, kind, at, elongationDeg }: PlanetEvent, zone: string): string {
  const apart = kind.startsWith("greatest") ? ` (${elongationDeg.toFixed(1)}° from the Sun)` : "";
  return `${planet} is ${EVENT_WORDS[kind]}, on ${dayWords(at, zone)} at ${clockTime(at, zone)}${apart}.`;
}

/** `Jupiter at opposition`. */
export function planetEventTitle({ planet, kind }: PlanetEvent): string {
  switch (kind) {
    case "opposition":
      return `${planet} at opposition`;
    case "conjunction":
      return `${planet} behind the Sun`;
    case "inferior-conjunction":
      return `${planet} between us and the Sun`;
    case "superior-conjunction":
      return `${planet} behind the Sun`;
    case "greatest-elongation-east":
      return `${planet} farthest east of the Sun`;
    case "greatest-elongation-west":
      return `${planet} farthest west of the Sun`;
  }
}

/** Which moons stand on which side, nearest first, and which are not seen. */
export function jovianWords({ moons, shadows }: JovianSystem): string {
  const beside = (west: boolean) =>
    moons
      .filter(({ state, x }) => state === "clear" && x > 0 === west)
      .sort((one, other) => Math.abs(one.x) - Math.abs(other.x))
      .map(({ numeral, x }) => `${numeral} (${Math.abs(x).toFixed(1)})`);
  const hidden = moons
    .filter(({ state }) => state !== "clear")
    .map(({ numeral, state }) => `${numeral} is ${STATE_WORDS[state]}`);
  const [west, east] = [beside(true), beside(false)];
  const sides = [
    west.length === 0 ? "" : `west of it ${listWords(west)}`,
    east.length === 0 ? "" : `east of it ${listWords(east)}`,
    ...hidden,
    ...shadows.map(({ numeral }) => `the shadow of ${numeral} is on the disc`),
  ].filter((words) => words !== "");
  const line = sides.join("; ");
  return `${line.slice(0, 1).toUpperCase()}${line.slice(1)}; distances in Jupiter's radii from its middle.`;
}

/** `I crosses the disc 00:25 to 02:42.` */
export function phenomenonWords(one: JovianPhenomenon, zone: string): string {
  const from = one.beginsInside ? clockTime(one.start, zone) : null;
  const to = one.endsInside ? clockTime(one.end, zone) : null;
  const span =
    from !== null && to !== null
      ? `${from} to ${to}`
      : from !== null
        ? `from ${from} on`
        : to !== null
          ? `until ${to}`
          : "all the while";
  switch (one.kind) {
    case "transit":
      return `${one.numeral} crosses the disc ${span}.`;
    case "shadow":
      return `The shadow of ${one.numeral} crosses the disc ${span}.`;
    case "occultation":
      return `${one.numeral} is behind the disc ${span}.`;
    case "eclipse":
      return `${one.numeral} is in Jupiter's shadow ${span}.`;
  }
}
