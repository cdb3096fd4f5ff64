/**
 * The Sun's disc: its size, how its axis leans, and which part of it faces us.
 *
 * Never for looking without a filter: whoever shows this shows the solar caution first.
 *
 * @packageDocumentation
 */
import { halfTurnDeg } from "../sky/angles.ts";
import { bodyPlace } from "../sky/bodies.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { parallacticAngleDeg } from "./disc-angles.ts";
import { globeSeen } from "./globe.ts";

export type SunDisc = {
  readonly at: Date;
  /** True (airless). */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly distanceAu: number;
  readonly diameterArcmin: number;
  /** P: position angle of the axis's north end, east of north positive, in [-180, 180). */
  readonly axisDeg: number;
  /** B₀: heliographic latitude of the disc's middle. */
  readonly centreLatitudeDeg: number;
  /** L₀: Carrington longitude of the disc's middle, in [0, 360). */
  readonly centreLongitudeDeg: number;
  /** Position angle of the zenith, west of the meridian positive (north of the equator), in [-180, 180). */
  readonly parallacticDeg: number;
};

/**
 * The Sun's disc from a place. P, B₀ and L₀ are those seen from the Earth's centre, as
 * almanacs print them: the site changes them by under 0.003°.
 *
 * @remarks Within 0.01° of Meeus, *Astronomical Algorithms*, chapter 29.
 */
export function sunDisc(position: GroundPosition, at: Date): SunDisc {
  const place = bodyPlace("Sun", position, at);
  const globe = globeSeen("Sun", null, at);
  return {
    at,
    altitudeDeg: place.altitudeDeg,
    azimuthDeg: place.azimuthDeg,
    distanceAu: place.distanceAu,
    diameterArcmin: place.semidiameterArcsec / 30,
    axisDeg: halfTurnDeg(globe.axisDeg),
    centreLatitudeDeg: globe.centre.latitudeDeg,
    centreLongitudeDeg: globe.centre.longitudeDeg,
    parallacticDeg: parallacticAngleDeg(position, place, at),
  };
}
