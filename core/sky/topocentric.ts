/**
 * From the Earth's centre to the ground: a body's altitude, quickly, as time goes on.
 *
 * @packageDocumentation
 */
import type { BodyName } from "../targets/sky-object.ts";
import { DEG_PER_RAD, RAD_PER_DEG } from "./angles.ts";
import { geocentricTrack } from "./ephemeris.ts";
import type { GroundPosition } from "./frame.ts";

const KM_PER_AU = 149_597_870.7;
/** WGS 84. */
const EARTH_RADIUS_KM = 6378.137;
const EARTH_FLATTENING = 1 / 298.257223563;

/** From the observer to a body's centre, airless: along north, east and up, AU. */
export type HorizonVector = { readonly north: number; readonly east: number; readonly up: number };

export type HeightOfBody = {
  /** Of the body's centre: true (airless), topocentric. */
  readonly altitudeDeg: number;
  /** From the observer. */
  readonly distanceAu: number;
};

/** The observer from the Earth's centre, AU: along the equator's plane and along the axis. */
function observerAu(position: GroundPosition): { readonly across: number; readonly along: number } {
  const latitude = position.latitudeDeg * RAD_PER_DEG;
  const squash = (1 - EARTH_FLATTENING) ** 2;
  const curve = EARTH_RADIUS_KM / Math.sqrt(Math.cos(latitude) ** 2 + squash * Math.sin(latitude) ** 2);
  const heightKm = position.elevationMetres / 1000;
  return {
    across: ((curve + heightKm) * Math.cos(latitude)) / KM_PER_AU,
    along: ((curve * squash + heightKm) * Math.sin(latitude)) / KM_PER_AU,
  };
}

/**
 * Where a body stands over a place, as a function of the instant in epoch milliseconds.
 *
 * Sun and Moon within 2″ of SOFA and Swiss Ephemeris, planets within 30″.
 */
export function horizonTrack(body: BodyName, position: GroundPosition): (utMs: number) => HorizonVector {
  const geocentric = geocentricTrack(body);
  const { across, along } = observerAu(position);
  const latitude = position.latitudeDeg * RAD_PER_DEG;
  const sinLatitude = Math.sin(latitude);
  const cosLatitude = Math.cos(latitude);

  return (utMs) => {
    const centre = geocentric(utMs);
    const sidereal = (centre.siderealDeg + position.longitudeDeg) * RAD_PER_DEG;
    const cosSidereal = Math.cos(sidereal);
    const sinSidereal = Math.sin(sidereal);
    // Towards the meridian at the equator, and towards the pole.
    const meridian = centre.x * cosSidereal + centre.y * sinSidereal - across;
    const pole = centre.z - along;
    return {
      north: pole * cosLatitude - meridian * sinLatitude,
      east: centre.y * cosSidereal - centre.x * sinSidereal,
      up: meridian * cosLatitude + pole * sinLatitude,
    };
  };
}

/** A body's altitude over a place, as {@link horizonTrack}. */
export function heightTrack(body: BodyName, position: GroundPosition): (utMs: number) => HeightOfBody {
  const track = horizonTrack(body, position);
  return (utMs) => {
    const { north, east, up } = track(utMs);
    return {
      altitudeDeg: Math.atan2(up, Math.hypot(north, east)) * DEG_PER_RAD,
      distanceAu: Math.hypot(north, east, up),
    };
  };
}
