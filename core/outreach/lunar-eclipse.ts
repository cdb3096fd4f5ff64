/**
 * Lunar eclipses: when the Moon passes through the Earth's shadow, and how deeply.
 *
 * The same for everybody; a site only decides whether the Moon is up.
 *
 * @packageDocumentation
 */
import { moonPhases } from "../night/moon-phases.ts";
import { angleBetweenDeg, DEG_PER_RAD, type Vector3 } from "../sky/angles.ts";
import { semidiameterDeg } from "../sky/bodies.ts";
import { geocentricTrack } from "../sky/ephemeris.ts";
import { highestBetween, rootBetween } from "../sky/roots.ts";

export type LunarEclipseKind = "penumbral" | "partial" | "total";

export type LunarEclipse = {
  readonly kind: LunarEclipseKind;
  readonly penumbraBegins: Date;
  /** The umbra's edge first touches the Moon; `null` of a penumbral eclipse. */
  readonly partialBegins: Date | null;
  readonly totalBegins: Date | null;
  readonly greatest: Date;
  readonly totalEnds: Date | null;
  readonly partialEnds: Date | null;
  readonly penumbraEnds: Date;
  /** Share of the Moon's diameter inside the umbra; over 1 when total, negative when it misses. */
  readonly umbralMagnitude: number;
  readonly penumbralMagnitude: number;
};

const MS_PER_HOUR = 3_600_000;
const EARTH_RADIUS_AU = 6378.137 / 149_597_870.7;

/** Danjon's shadow, over the Moon's equatorial parallax: 1/85 more for the air, 1/594 less for the flattening. */
const DANJON = 1 + 1 / 85 - 1 / 594;

/**
 * Eclipses of the Moon within a span, by their greatest phase, in order.
 *
 * @remarks
 * Contacts within 10 s of Swiss Ephemeris (more of a graze), which holds the same convention:
 * Danjon's, as {@link DANJON}. Chauvenet's older one, 1/50 on the whole shadow, has the umbra
 * reach the Moon half a minute earlier; the real edge is not sharp to better than that.
 *
 * Source: F. Espenak & J. Meeus, *Five Millennium Canon of Lunar Eclipses*, NASA/TP-2009-214172
 * (from memory).
 */
export function lunarEclipsesIn(from: Date, to: Date): LunarEclipse[] {
  const early = new Date(from.getTime() - MS_PER_HOUR);
  const late = new Date(to.getTime() + MS_PER_HOUR);
  return moonPhases(early, late, "full")
    .map(({ at }) => eclipseNear(at))
    .filter((eclipse) => eclipse !== null)
    .filter(({ greatest }) => greatest >= from && greatest < to);
}

type Shadow = {
  /** Of the Moon's middle from the shadow's, seen from the Earth's centre. */
  readonly apartDeg: number;
  readonly umbraDeg: number;
  readonly penumbraDeg: number;
  readonly moonDeg: number;
};

function shadowTrack(): (utMs: number) => Shadow {
  const sunTrack = geocentricTrack("Sun");
  const moonTrack = geocentricTrack("Moon");
  return (utMs) => {
    const sun = sunTrack(utMs);
    const moon = moonTrack(utMs);
    const antisun: Vector3 = [-sun.x, -sun.y, -sun.z];
    const sunDistance = Math.hypot(sun.x, sun.y, sun.z);
    const moonDistance = Math.hypot(moon.x, moon.y, moon.z);
    const sunDeg = semidiameterDeg("Sun", sunDistance);
    const sunParallaxDeg = parallaxDeg(sunDistance);
    const earthDeg = DANJON * parallaxDeg(moonDistance);
    return {
      apartDeg: angleBetweenDeg(antisun, [moon.x, moon.y, moon.z]),
      umbraDeg: earthDeg + sunParallaxDeg - sunDeg,
      penumbraDeg: earthDeg + sunParallaxDeg + sunDeg,
      moonDeg: semidiameterDeg("Moon", moonDistance),
    };
  };
}

function parallaxDeg(distanceAu: number): number {
  return Math.asin(EARTH_RADIUS_AU / distanceAu) * DEG_PER_RAD;
}

function eclipseNear(fullMoon: Date): LunarEclipse | null {
  const shadow = shadowTrack();
  const full = fullMoon.getTime();
  const closest = highestBetween((ms) => -shadow(ms).apartDeg, full - MS_PER_HOUR, full + MS_PER_HOUR);
  /** How deep the Moon's far edge (+1) or near edge (−1) stands inside the shadow, degrees. */
  const depth = (which: "umbraDeg" | "penumbraDeg", edge: 1 | -1) => (ms: number) => {
    const now = shadow(ms);
    return now[which] + edge * now.moonDeg - now.apartDeg;
  };
  const passage = (height: (ms: number) => number) => {
    if (height(closest) <= 0) return { begins: null, ends: null };
    const [early, late] = [closest - 4 * MS_PER_HOUR, closest + 4 * MS_PER_HOUR];
    const at = (ms: number) => new Date(Math.round(ms));
    return {
      begins: at(rootBetween(height, early, height(early), closest, height(closest))),
      ends: at(rootBetween(height, closest, height(closest), late, height(late))),
    };
  };
  const penumbra = passage(depth("penumbraDeg", 1));
  if (penumbra.begins === null || penumbra.ends === null) return null;
  const partial = passage(depth("umbraDeg", 1));
  const total = passage(depth("umbraDeg", -1));
  const diameter = 2 * shadow(closest).moonDeg;
  return {
    kind: total.begins !== null ? "total" : partial.begins !== null ? "partial" : "penumbral",
    penumbraBegins: penumbra.begins,
    partialBegins: partial.begins,
    totalBegins: total.begins,
    greatest: new Date(Math.round(closest)),
    totalEnds: total.ends,
    partialEnds: partial.ends,
    penumbraEnds: penumbra.ends,
    umbralMagnitude: depth("umbraDeg", 1)(closest) / diameter,
    penumbralMagnitude: depth("penumbraDeg", 1)(closest) / diameter,
  };
}
