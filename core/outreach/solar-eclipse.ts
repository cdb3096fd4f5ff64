/**
 * Solar eclipses: whether the Moon covers the Sun as a site sees it, how deeply, from when to when.
 *
 * Never for looking without a filter: whoever shows this shows the solar caution first.
 *
 * @packageDocumentation
 */
import { SearchGlobalSolarEclipse } from "astronomy-engine";
import { moonPhases } from "../night/moon-phases.ts";
import { angleBetweenDeg, DEG_PER_RAD, turnDeg, type Vector3 } from "../sky/angles.ts";
import { semidiameterDeg } from "../sky/bodies.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { highestBetween, rootBetween } from "../sky/roots.ts";
import { engineTime } from "../sky/time.ts";
import { type HorizonVector, horizonTrack } from "../sky/topocentric.ts";

export type SolarEclipseKind = "partial" | "annular" | "total";

/** An eclipse as the Earth has it. */
export type SolarEclipse = {
  /** What it is along the middle of its path; an eclipse that changes on the way is named for its greatest. */
  readonly kind: SolarEclipseKind;
  /** When the Moon's shadow passes closest to the Earth's centre. */
  readonly greatest: Date;
};

/** The Sun at one of the moments of an eclipse, airless. */
export type EclipseMoment = {
  readonly at: Date;
  readonly sunAltitudeDeg: number;
  readonly sunAzimuthDeg: number;
};

/** An eclipse as a site has it, without regard to the horizon. */
export type LocalSolarEclipse = {
  readonly kind: SolarEclipseKind;
  /** First contact: the Moon touches the Sun. */
  readonly begins: EclipseMoment;
  /** Second contact: totality or the ring begins; `null` of a partial one. */
  readonly centralBegins: EclipseMoment | null;
  readonly greatest: EclipseMoment;
  /** Third contact. */
  readonly centralEnds: EclipseMoment | null;
  /** Fourth contact: the Moon leaves the Sun. */
  readonly ends: EclipseMoment;
  /** Share of the Sun's diameter covered; of a central eclipse, the Moon's diameter over the Sun's. */
  readonly magnitude: number;
  /** Share of the Sun's disc covered, in [0, 1]. */
  readonly obscuration: number;
};

/**
 * The Moon with the mountains of its limb, over its mean radius of 1737.4 km: k = 0.272 5076 of
 * the Earth's equatorial radius, IAU 1982, for the outer contacts.
 */
const MOON_WITH_MOUNTAINS = 1738.09 / 1737.4;

const MS_PER_MINUTE = 60_000;
/** Parallax moves the site's greatest phase by up to two hours from new Moon. */
const SEARCH_MS = 4 * 60 * MS_PER_MINUTE;
const STEP_MS = 10 * MS_PER_MINUTE;
/** No eclipse lasts longer from its greatest phase to an end. */
const HALF_LENGTH_MS = 130 * MS_PER_MINUTE;

/** Eclipses of the Sun anywhere on the Earth within a span, in order. */
export function solarEclipsesIn(from: Date, to: Date): SolarEclipse[] {
  const found: SolarEclipse[] = [];
  for (const newMoon of eclipticNewMoons(from, to)) {
    const next = SearchGlobalSolarEclipse(engineTime(new Date(newMoon.getTime() - 2 * SEARCH_MS)));
    const greatest = next.peak.date;
    if (Math.abs(greatest.getTime() - newMoon.getTime()) > SEARCH_MS) continue;
    if (greatest < from || greatest >= to) continue;
    found.push({ kind: kindOf(next.kind), greatest });
  }
  return found;
}

/** Eclipses that touch a site within a span, by their greatest phase there, in order. */
export function localSolarEclipsesIn(position: GroundPosition, from: Date, to: Date): LocalSolarEclipse[] {
  return eclipticNewMoons(from, to)
    .map((newMoon) => solarEclipseAt(position, newMoon))
    .filter((eclipse) => eclipse !== null)
    .filter(({ greatest }) => greatest.at >= from && greatest.at < to);
}

/** New Moons close enough to the Sun for an eclipse somewhere; the greatest phase may lie hours off. */
function eclipticNewMoons(from: Date, to: Date): Date[] {
  const early = new Date(from.getTime() - SEARCH_MS);
  return moonPhases(early, new Date(to.getTime() + SEARCH_MS), "new")
    .map(({ at }) => at)
    .filter(canEclipse);
}

function kindOf(kind: string): SolarEclipseKind {
  return kind === "total" || kind === "annular" ? kind : "partial";
}

/** From the Earth's centre the Moon passes the Sun within 1.6° at every new Moon with an eclipse. */
const ECLIPSE_LIMIT_DEG = 1.7;

function canEclipse(newMoon: Date): boolean {
  const centre = { latitudeDeg: 0, longitudeDeg: 0, elevationMetres: 0 };
  // Parallax, a degree at most, is allowed for in the limit.
  return separationsOver(centre)(newMoon.getTime()).separationDeg < ECLIPSE_LIMIT_DEG + 1;
}

/**
 * The eclipse around a new Moon as a site has it.
 *
 * @param greatest - of the eclipse anywhere, as {@link solarEclipsesIn} gives it, or the new Moon
 * @returns `null` when the Moon misses the Sun there
 *
 * @remarks
 * Contacts within 11 s where more than a twentieth of the Sun's diameter is covered; of a mere
 * graze they are uncertain by half a minute. The Moon's limb is a circle: its mountains and
 * valleys shift the contacts of totality by a second or two.
 */
export function solarEclipseAt(position: GroundPosition, greatest: Date): LocalSolarEclipse | null {
  const look = separationsOver(position);
  const closest = closestBetween(
    (ms) => look(ms).separationDeg,
    greatest.getTime() - SEARCH_MS,
    greatest.getTime() + SEARCH_MS,
  );
  const middle = look(closest);
  const outer = (ms: number) => {
    const { separationDeg, sunRadiusDeg, moonRadiusDeg } = look(ms);
    return sunRadiusDeg + moonRadiusDeg * MOON_WITH_MOUNTAINS - separationDeg;
  };
  if (outer(closest) <= 0) return null;
  const inner = (ms: number) => {
    const { separationDeg, sunRadiusDeg, moonRadiusDeg } = look(ms);
    return Math.abs(moonRadiusDeg - sunRadiusDeg) - separationDeg;
  };
  const isCentral = inner(closest) > 0;
  const moment = (ms: number): EclipseMoment => momentOf(look(ms).sun, ms);
  const early = closest - HALF_LENGTH_MS;
  const late = closest + HALF_LENGTH_MS;
  const before = (height: (ms: number) => number) =>
    moment(rootBetween(height, early, height(early), closest, height(closest)));
  const after = (height: (ms: number) => number) =>
    moment(rootBetween(height, closest, height(closest), late, height(late)));
  const { separationDeg, sunRadiusDeg, moonRadiusDeg } = middle;
  return {
    kind: isCentral ? (moonRadiusDeg > sunRadiusDeg ? "total" : "annular") : "partial",
    begins: before(outer),
    centralBegins: isCentral ? before(inner) : null,
    greatest: moment(closest),
    centralEnds: isCentral ? after(inner) : null,
    ends: after(outer),
    magnitude: isCentral
      ? moonRadiusDeg / sunRadiusDeg
      : (sunRadiusDeg + moonRadiusDeg - separationDeg) / (2 * sunRadiusDeg),
    obscuration: coveredShare(sunRadiusDeg, moonRadiusDeg, separationDeg),
  };
}

type Look = {
  readonly separationDeg: number;
  readonly sunRadiusDeg: number;
  readonly moonRadiusDeg: number;
  readonly sun: HorizonVector;
};

/** Sun and Moon side by side over a place. */
function separationsOver(position: GroundPosition): (utMs: number) => Look {
  const sunTrack = horizonTrack("Sun", position);
  const moonTrack = horizonTrack("Moon", position);
  return (utMs) => {
    const sun = sunTrack(utMs);
    const moon = moonTrack(utMs);
    return {
      separationDeg: angleBetweenDeg(axes(sun), axes(moon)),
      sunRadiusDeg: semidiameterDeg("Sun", Math.hypot(...axes(sun))),
      moonRadiusDeg: semidiameterDeg("Moon", Math.hypot(...axes(moon))),
      sun,
    };
  };
}

function axes({ north, east, up }: HorizonVector): Vector3 {
  return [north, east, up];
}

function momentOf(sun: HorizonVector, utMs: number): EclipseMoment {
  return {
    at: new Date(Math.round(utMs)),
    sunAltitudeDeg: Math.atan2(sun.up, Math.hypot(sun.north, sun.east)) * DEG_PER_RAD,
    sunAzimuthDeg: turnDeg(Math.atan2(sun.east, sun.north) * DEG_PER_RAD),
  };
}

/** Where a distance is least: by steps, then by golden section about the least of them. */
function closestBetween(distance: (ms: number) => number, startMs: number, endMs: number): number {
  let best = startMs;
  let least = Number.POSITIVE_INFINITY;
  for (let ms = startMs; ms <= endMs; ms += STEP_MS) {
    const here = distance(ms);
    if (here < least) [best, least] = [ms, here];
  }
  return highestBetween((ms) => -distance(ms), best - STEP_MS, best + STEP_MS);
}

/** The share of one disc that another hides. */
export function coveredShare(radius: number, coveringRadius: number, apart: number): number {
  if (apart >= radius + coveringRadius) return 0;
  if (apart <= Math.abs(radius - coveringRadius)) return Math.min(1, (coveringRadius / radius) ** 2);
  const half = (apart * apart + radius * radius - coveringRadius * coveringRadius) / (2 * apart);
  const angle = Math.acos(half / radius);
  const coveringAngle = Math.acos((apart - half) / coveringRadius);
  const area =
    radius * radius * (angle - Math.sin(2 * angle) / 2) +
    coveringRadius * coveringRadius * (coveringAngle - Math.sin(2 * coveringAngle) / 2);
  return area / (Math.PI * radius * radius);
}
