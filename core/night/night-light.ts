/**
 * Sun and Moon over a site, quickly, as the night goes on: what lights the sky.
 *
 * @packageDocumentation
 */
import { angleBetweenDeg, DEG_PER_RAD, RAD_PER_DEG, turnDeg } from "../sky/angles.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { type HorizonVector, horizonTrack } from "../sky/topocentric.ts";

export type NightLight = {
  /** Of the Sun's centre, airless. */
  readonly sunAltitudeDeg: number;
  /** Of the Moon's centre, airless. */
  readonly moonAltitudeDeg: number;
  /** From north through east, in [0, 360). */
  readonly moonAzimuthDeg: number;
  /** Sun, Moon, observer: 0 when full, 180 when new. */
  readonly phaseAngleDeg: number;
  /** Share of the Moon's light that the Earth's shadow leaves; 1 outside a lunar eclipse. */
  readonly litShare: number;
};

/** Mean radii of the Earth's umbra and of the Moon, at the Moon's distance, in Earth radii. */
const UMBRA_AT_MEAN_DISTANCE = 0.72;
const MOON_RADIUS = 0.2725;
const EARTH_RADIUS_AU = 6378.137 / 149_597_870.7;

/** Beyond this from full Moon no eclipse is possible. */
const NO_ECLIPSE_PHASE_DEG = 2.5;

/**
 * Follows Sun and Moon over a place.
 *
 * @returns the light at an instant in epoch milliseconds; places within 2″
 *
 * @remarks
 * The lit share takes the umbra as a sharp disc of its mean size and leaves the penumbra out:
 * rough (a tenth), and asked only to say that an eclipsed Moon does not spoil a picture.
 */
export function nightLight(position: GroundPosition): (utMs: number) => NightLight {
  const sunTrack = horizonTrack("Sun", position);
  const moonTrack = horizonTrack("Moon", position);
  return (utMs) => {
    const sun = sunTrack(utMs);
    const moon = moonTrack(utMs);
    const phaseAngleDeg = angleBetweenDeg(
      [-moon.north, -moon.east, -moon.up],
      [sun.north - moon.north, sun.east - moon.east, sun.up - moon.up],
    );
    return {
      sunAltitudeDeg: altitudeOf(sun),
      moonAltitudeDeg: altitudeOf(moon),
      moonAzimuthDeg: turnDeg(Math.atan2(moon.east, moon.north) * DEG_PER_RAD),
      phaseAngleDeg,
      litShare: phaseAngleDeg < NO_ECLIPSE_PHASE_DEG ? litShare(sun, moon, position) : 1,
    };
  };
}

function altitudeOf(vector: HorizonVector): number {
  return Math.atan2(vector.up, Math.hypot(vector.north, vector.east)) * DEG_PER_RAD;
}

/** How much of the Moon's disc the umbra leaves, seen from the Earth's centre. */
function litShare(sun: HorizonVector, moon: HorizonVector, position: GroundPosition): number {
  // Back to the Earth's centre: straight down by its radius, which is close enough here.
  const radius = EARTH_RADIUS_AU + position.elevationMetres / 149_597_870_700;
  const centred = [moon.north, moon.east, moon.up + radius] as const;
  const antisun = [-sun.north, -sun.east, -(sun.up + radius)] as const;
  const distance = Math.hypot(...centred);
  const apart = (distance * Math.sin(angleBetweenDeg(centred, antisun) * RAD_PER_DEG)) / EARTH_RADIUS_AU;
  return 1 - sharedDisc(MOON_RADIUS, UMBRA_AT_MEAN_DISTANCE, apart) / (Math.PI * MOON_RADIUS ** 2);
}

/** Area that two discs have in common. */
function sharedDisc(small: number, large: number, apart: number): number {
  if (apart >= small + large) return 0;
  if (apart <= large - small) return Math.PI * small * small;
  const inSmall = Math.acos((apart * apart + small * small - large * large) / (2 * apart * small));
  const inLarge = Math.acos((apart * apart + large * large - small * small) / (2 * apart * large));
  return (
    small * small * (inSmall - Math.sin(2 * inSmall) / 2) +
    large * large * (inLarge - Math.sin(2 * inLarge) / 2)
  );
}
