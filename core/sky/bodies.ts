/**
 * Sun, Moon and planets from a site: place, size, brightness, phase.
 *
 * Places are topocentric and airless: Sun and Moon within 2″, planets within 30″.
 *
 * @packageDocumentation
 */
import { Body, Equator, GeoVector, Horizon, Illumination, Observer } from "astronomy-engine";
import type { BodyName } from "../targets/sky-object.ts";
import { angleBetweenDeg, DEG_PER_RAD, RAD_PER_DEG, turnDeg } from "./angles.ts";
import type { GroundPosition } from "./frame.ts";
import { engineTime } from "./time.ts";
import { heightTrack } from "./topocentric.ts";

export type BodyPlace = {
  /** Of the true equator and equinox of date. */
  readonly raDeg: number;
  readonly decDeg: number;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  /** From the observer. */
  readonly distanceAu: number;
  /** Equatorial. */
  readonly semidiameterArcsec: number;
  /** Visual, within 0.2; the Moon's by its phase alone. */
  readonly magnitude: number;
  /** Share of the disc that is lit as seen from the site; 1 for the Sun. */
  readonly illuminatedFraction: number;
  /** Sun, body, observer: 0 when full, 180 when new; 0 for the Sun. */
  readonly phaseAngleDeg: number;
};

const KM_PER_AU = 149_597_870.7;

/**
 * Radii in km, at the equator.
 *
 * Source: IAU Working Group on Cartographic Coordinates and Rotational Elements 2015
 * (Archinal et al. 2018); the Sun's is IAU 1976's 959.63″ at 1 AU.
 */
const RADIUS_KM: Readonly<Record<BodyName, number>> = {
  Sun: 696_000,
  Moon: 1737.4,
  Mercury: 2440.53,
  Venus: 6051.8,
  Mars: 3396.19,
  Jupiter: 71_492,
  Saturn: 60_268,
  Uranus: 25_559,
  Neptune: 24_764,
};

/**
 * Half the angle a body's disc spans.
 *
 * @param distanceAu - from the observer
 */
export function semidiameterDeg(body: BodyName, distanceAu: number): number {
  return Math.asin(RADIUS_KM[body] / (distanceAu * KM_PER_AU)) * DEG_PER_RAD;
}

/** The lit share of a disc at a phase angle. */
export function litFraction(phaseAngleDeg: number): number {
  return (1 + Math.cos(phaseAngleDeg * RAD_PER_DEG)) / 2;
}

/** A body as seen from a place. */
export function bodyPlace(body: BodyName, position: GroundPosition, at: Date): BodyPlace {
  const time = engineTime(at);
  const name = Body[body];
  const observer = new Observer(position.latitudeDeg, position.longitudeDeg, position.elevationMetres);
  const ofDate = Equator(name, time, observer, true, true);
  const seen = Horizon(time, observer, ofDate.ra, ofDate.dec);
  const phaseAngleDeg = phaseAngleFrom(body, position, at);
  return {
    raDeg: turnDeg(ofDate.ra * 15),
    decDeg: ofDate.dec,
    altitudeDeg: seen.altitude,
    azimuthDeg: turnDeg(seen.azimuth),
    distanceAu: ofDate.dist,
    semidiameterArcsec: semidiameterDeg(body, ofDate.dist) * 3600,
    magnitude: Illumination(name, time).mag,
    illuminatedFraction: litFraction(phaseAngleDeg),
    phaseAngleDeg,
  };
}

/** Phase angle at the site: the Moon's differs from the Earth's centre's by up to 1°. */
function phaseAngleFrom(body: BodyName, position: GroundPosition, at: Date): number {
  if (body === "Sun") return 0;
  const time = engineTime(at);
  if (body !== "Moon") return Illumination(Body[body], time).phase_angle;
  const observer = new Observer(position.latitudeDeg, position.longitudeDeg, position.elevationMetres);
  const moon = Equator(Body.Moon, time, observer, false, true).vec;
  const sun = GeoVector(Body.Sun, time, true);
  return angleBetweenDeg([-moon.x, -moon.y, -moon.z], [sun.x - moon.x, sun.y - moon.y, sun.z - moon.z]);
}

/**
 * Altitude of the Sun's centre: true (airless), topocentric.
 *
 * @returns degrees above the level horizon
 */
export function sunAltitudeDeg(position: GroundPosition, at: Date): number {
  return heightTrack("Sun", position)(at.getTime()).altitudeDeg;
}
