/**
 * A planet through a night: when it can be seen, where, how large, how bright, at what phase.
 *
 * @packageDocumentation
 */
import { Constellation } from "astronomy-engine";
import { type Interval, intersectIntervals } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import type { Site } from "../site.ts";
import { halfTurnDeg } from "../sky/angles.ts";
import { bodyPlace } from "../sky/bodies.ts";
import { bodyCrossings, transitOfBody } from "../sky/crossings.ts";
import { separationDeg } from "../sky/place.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { bodyNight, highestIn } from "./body-night.ts";
import { parallacticAngleDeg } from "./disc-angles.ts";
import { globeSeen } from "./globe.ts";

export type PlanetName = Exclude<BodyName, "Sun" | "Moon">;

/** From the Sun outward. */
export const PLANETS: readonly PlanetName[] = [
  "Mercury",
  "Venus",
  "Mars",
  "Jupiter",
  "Saturn",
  "Uranus",
  "Neptune",
];

export type PlanetRules = {
  /** Lower than this nobody looks at a planet, degrees. */
  readonly leastAltitudeDeg: number;
  /** Nearer the Sun than this it is lost, and not looked for, degrees. */
  readonly leastElongationDeg: number;
  /** The Sun's centre this far down before a bright planet is looked for, degrees. */
  readonly sunDepthDeg: number;
  /** Fainter than this it needs the darkness, magnitudes. */
  readonly darkSkyMag: number;
};

/** Saturn's ring as the Earth sees it: outer edge of the A ring. */
export type RingView = {
  /** How far it is open, degrees: positive when we see its northern side. */
  readonly tiltDeg: number;
  /** Of the Sun over its plane, likewise: of the other sign, the side we see is dark. */
  readonly sunTiltDeg: number;
  readonly majorArcsec: number;
  readonly minorArcsec: number;
};

export type PlanetLook = {
  readonly at: Date;
  /** True (airless). */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  /** Apparent, of date. */
  readonly raDeg: number;
  readonly decDeg: number;
  /** The IAU's, in full. */
  readonly constellation: string;
  readonly distanceAu: number;
  readonly diameterArcsec: number;
  readonly magnitude: number;
  readonly illuminatedFraction: number;
  readonly phaseAngleDeg: number;
  /** From the Sun, degrees. */
  readonly elongationDeg: number;
  /** East of the Sun: an evening planet. */
  readonly evening: boolean;
  /** Position angles: of the axis's north end, of the bright limb's middle, of the zenith. */
  readonly axisDeg: number;
  readonly brightLimbDeg: number;
  readonly parallacticDeg: number;
  readonly ring: RingView | null;
};

export type PlanetNight = {
  readonly planet: PlanetName;
  /** Over the skyline with the Sun far enough down, and for a faint one in the dark; in order. */
  readonly windows: readonly Interval[];
  readonly rise: Date | null;
  readonly set: Date | null;
  readonly transit: Date | null;
  /** When it stands highest in its windows, else when it is highest at all that night. */
  readonly look: PlanetLook;
};

const KM_PER_AU = 149_597_870.7;
/** Outer edge of the A ring. Source: IAU working group and the Planetary Data System (from memory). */
const RING_RADIUS_KM = 136_775;

/** A planet through the night of some times. */
export function planetNight(
  site: Site,
  times: NightTimes,
  planet: PlanetName,
  rules: PlanetRules,
): PlanetNight {
  const { noon, nextNoon } = times.night;
  const inNight = bodyNight(site, times, planet, rules.leastAltitudeDeg, {
    kind: "centre",
    altitudeDeg: -rules.sunDepthDeg,
  });
  const anyhow = highestIn(inNight.track, [{ start: noon, end: nextNoon }])?.at ?? noon;
  const near = planetLook(site, planet, inNight.best?.at ?? anyhow);
  const windows = usable(inNight.windows, times, near, rules);
  const best = highestIn(inNight.track, windows)?.at ?? null;
  const crossings = bodyCrossings(planet, site, { kind: "rise-set" }, noon, nextNoon);
  return {
    planet,
    windows,
    rise: crossings.find(({ rising }) => rising)?.at ?? null,
    set: crossings.find(({ rising }) => !rising)?.at ?? null,
    transit: transitOfBody(planet, site, noon, nextNoon),
    look: best === null || best.getTime() === near.at.getTime() ? near : planetLook(site, planet, best),
  };
}

function usable(
  windows: readonly Interval[],
  times: NightTimes,
  look: PlanetLook,
  rules: PlanetRules,
): readonly Interval[] {
  if (look.elongationDeg < rules.leastElongationDeg) return [];
  return look.magnitude > rules.darkSkyMag ? intersectIntervals(windows, times.workingWindows) : windows;
}

/** A planet as a site sees it at an instant. */
export function planetLook(site: Site, planet: PlanetName, at: Date): PlanetLook {
  const place = bodyPlace(planet, site, at);
  const sun = bodyPlace("Sun", site, at);
  const globe = globeSeen(planet, null, at);
  return {
    at,
    altitudeDeg: place.altitudeDeg,
    azimuthDeg: place.azimuthDeg,
    raDeg: place.raDeg,
    decDeg: place.decDeg,
    constellation: constellationOf(place.raDeg, place.decDeg),
    distanceAu: place.distanceAu,
    diameterArcsec: 2 * place.semidiameterArcsec,
    magnitude: place.magnitude,
    illuminatedFraction: place.illuminatedFraction,
    phaseAngleDeg: place.phaseAngleDeg,
    elongationDeg: separationDeg(place, sun),
    evening: halfTurnDeg(place.raDeg - sun.raDeg) > 0,
    axisDeg: halfTurnDeg(globe.axisDeg),
    brightLimbDeg: globe.brightLimbDeg,
    parallacticDeg: parallacticAngleDeg(site, place, at),
    ring: planet === "Saturn" ? ringView(globe, place.distanceAu) : null,
  };
}

function ringView({ centre, subsolar }: ReturnType<typeof globeSeen>, distanceAu: number): RingView {
  const majorArcsec = 2 * Math.asin(RING_RADIUS_KM / (distanceAu * KM_PER_AU)) * (180 / Math.PI) * 3600;
  return {
    tiltDeg: centre.latitudeDeg,
    sunTiltDeg: subsolar.latitudeDeg,
    majorArcsec,
    minorArcsec: majorArcsec * Math.abs(Math.sin((centre.latitudeDeg * Math.PI) / 180)),
  };
}

/** The constellation of a place of date; its borders are drawn for 1875, a few arcminutes do not matter here. */
function constellationOf(raDeg: number, decDeg: number): string {
  return Constellation(raDeg / 15, decDeg).name;
}
