/**
 * The light of one night at one site, ready to be asked for any direction and wavelength.
 *
 * @packageDocumentation
 */
import { moonlightNanolamberts } from "../night/moonlight.ts";
import { type NightLight, nightLight } from "../night/night-light.ts";
import { nanolamberts } from "../night/sky-brightness.ts";
import { skyGlowNanolamberts } from "../night/sky-glow.ts";
import { twilightNanolamberts } from "../night/twilight-glow.ts";
import type { Photometry } from "../photometry.ts";
import type { Site } from "../site.ts";
import { angleBetweenDeg, RAD_PER_DEG, type Vector3 } from "../sky/angles.ts";
import { extinctionPerAirmass, V_BAND_NM } from "./extinction.ts";
import type { Horizontal } from "./visibility.ts";

export type ObservingConditions = {
  readonly site: Site;
  /** Moonless zenith sky, V magnitudes per square arcsecond. */
  readonly zenithMagArcsec2: number;
  /** Aerosol extinction at 550 nm, magnitudes per air mass. */
  readonly aerosolExtinction: number;
  readonly photometry: Photometry;
  /** Air temperature at an instant, °C: from the forecast, else assumed. */
  readonly airCelsiusAt: (utMs: number) => number;
  /** Sun and Moon at an instant. */
  readonly lightAt: (utMs: number) => NightLight;
};

/** Gathers what the light sums need; `lightAt` follows from the site, and remembers its instants. */
export function observingConditions(given: Omit<ObservingConditions, "lightAt">): ObservingConditions {
  const follow = nightLight(given.site);
  const remembered = new Map<number, NightLight>();
  return {
    ...given,
    lightAt(utMs) {
      const known = remembered.get(utMs);
      if (known !== undefined) return known;
      const light = follow(utMs);
      remembered.set(utMs, light);
      return light;
    },
  };
}

/** Direction of a place in the sky: north, east, up. */
export function horizonDirection(place: Horizontal): Vector3 {
  const altitude = place.altitudeDeg * RAD_PER_DEG;
  const azimuth = place.azimuthDeg * RAD_PER_DEG;
  return [Math.cos(altitude) * Math.cos(azimuth), Math.cos(altitude) * Math.sin(azimuth), Math.sin(altitude)];
}

/** Extinction at a wavelength under these conditions, magnitudes per air mass. */
export function extinctionAt(conditions: ObservingConditions, wavelengthNm: number): number {
  const { site, aerosolExtinction } = conditions;
  return extinctionPerAirmass(wavelengthNm, site.elevationMetres, aerosolExtinction);
}

/** What shines in one direction at one instant, in nanolamberts. */
export type SkyLight = {
  /** Airglow, starlight and lamps: V. */
  readonly glow: number;
  /** V. */
  readonly twilight: number;
  /** Moonlight carried to a wavelength. */
  readonly moonAt: (wavelengthNm: number) => number;
  /** From the Moon, degrees. */
  readonly moonSeparationDeg: number;
  readonly light: NightLight;
};

/** The sky's light in a direction at an instant. */
export function skyLight(conditions: ObservingConditions, place: Horizontal, utMs: number): SkyLight {
  const { photometry, site } = conditions;
  const light = conditions.lightAt(utMs);
  const extinctionV = extinctionAt(conditions, V_BAND_NM);
  const moonSeparationDeg = angleBetweenDeg(
    horizonDirection(place),
    horizonDirection({ altitudeDeg: light.moonAltitudeDeg, azimuthDeg: light.moonAzimuthDeg }),
  );
  return {
    glow: skyGlowNanolamberts({
      zenithNanolamberts: nanolamberts(conditions.zenithMagArcsec2),
      altitudeDeg: place.altitudeDeg,
      azimuthDeg: place.azimuthDeg,
      extinctionV,
      brightDirections: site.brightDirections,
      spreadDeg: photometry.brightDirectionSpreadDeg,
    }),
    twilight: twilightNanolamberts(light.sunAltitudeDeg),
    moonAt: (wavelengthNm) =>
      moonlightNanolamberts({
        moonAltitudeDeg: light.moonAltitudeDeg,
        targetAltitudeDeg: place.altitudeDeg,
        separationDeg: moonSeparationDeg,
        phaseAngleDeg: light.phaseAngleDeg,
        extinctionV,
        extinction: extinctionAt(conditions, wavelengthNm),
        wavelengthNm,
        litShare: light.litShare,
      }),
    moonSeparationDeg,
    light,
  };
}
