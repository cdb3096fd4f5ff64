/**
 * The electron budget of a pixel: the one that exposures, targets and the ranking share.
 *
 * Electrons are per second and per signal-seeing pixel.
 *
 * @packageDocumentation
 */
import { nanolamberts } from "../night/sky-brightness.ts";
import type { EmissionLine, SurfaceBrightness } from "../targets/sky-object.ts";
import type { ChannelResponse } from "./band-response.ts";
import { EMISSION_LINES } from "./emission-lines.ts";
import type { CameraRig } from "./rig.ts";

/**
 * Electrons of the moonless sky.
 *
 * @param glowNanolamberts - the night's own, in the target's direction
 * @param twilightNanolamberts - what the Sun adds; 0 in darkness
 *
 * @remarks A sky measured by the member stands for the night's own, wherever the target is.
 */
export function glowElectrons(
  channel: ChannelResponse,
  glowNanolamberts: number,
  twilightNanolamberts: number,
): number {
  const perNanolambert = channel.skies.reduce((sum, sky) => sum + sky.electronsPerNanolambert, 0);
  const night = channel.measuredSkyElectrons ?? perNanolambert * glowNanolamberts;
  return night + perNanolambert * twilightNanolamberts;
}

/**
 * Electrons of moonlight.
 *
 * @param moonNanolambertsAt - moonlight at the target, carried to a wavelength
 */
export function moonElectrons(
  channel: ChannelResponse,
  moonNanolambertsAt: (wavelengthNm: number) => number,
): number {
  return channel.skies.reduce(
    (sum, sky) => sum + sky.electronsPerNanolambert * moonNanolambertsAt(sky.wavelengthNm),
    0,
  );
}

/**
 * Electrons of an object's surface above the air; multiply by the air's transmission.
 *
 * @param line - the line a narrow band is for: its continuum counts only where the line is unknown;
 *   `null` of a broad band, where continuum and lines add
 * @returns `null` when nothing that passes is known
 */
export function signalElectrons(
  channel: ChannelResponse,
  line: EmissionLine | null,
  brightness: SurfaceBrightness,
): number | null {
  let lines: number | null = null;
  for (const each of EMISSION_LINES) {
    const rayleigh = brightness.rayleigh[each];
    const perRayleigh = channel.electronsPerRayleigh[each];
    if (rayleigh === undefined || perRayleigh === undefined) continue;
    lines = (lines ?? 0) + rayleigh * perRayleigh;
  }
  if (line !== null && lines !== null) return lines;
  if (brightness.continuumMagArcsec2 === null) return lines;
  return (lines ?? 0) + channel.electronsPerNanolambert * nanolamberts(brightness.continuumMagArcsec2);
}

/** Temperature of the sensor, °C: as set, or so many degrees above the air of the hour. */
export function sensorCelsius(rig: Pick<CameraRig, "sensorTemperature">, airCelsius: number): number {
  switch (rig.sensorTemperature.kind) {
    case "set":
      return rig.sensorTemperature.celsius;
    case "above-air":
      return airCelsius + rig.sensorTemperature.celsius;
  }
}

/**
 * Dark current: it doubles with every so many degrees.
 *
 * @param airCelsius - of the hour; does not matter to a cooled sensor
 *
 * Source: R. Widenhorn et al. 2002, Proc. SPIE 4669, 193 (doubling every 5–8 °C).
 */
export function darkElectronsPerSecond(
  rig: Pick<CameraRig, "sensorTemperature" | "sensor">,
  airCelsius: number,
): number {
  const { darkElectronsPerSecond: reference, darkReferenceCelsius, darkDoublingCelsius } = rig.sensor;
  return reference * 2 ** ((sensorCelsius(rig, airCelsius) - darkReferenceCelsius) / darkDoublingCelsius);
}

/** All that a pixel gathers in a second, and what reading it out costs. */
export type ElectronBudget = {
  readonly signal: number;
  readonly glow: number;
  readonly moon: number;
  readonly dark: number;
  readonly readNoiseElectrons: number;
  readonly subSeconds: number;
};

/**
 * Variance a second: signal + glow + moon + dark + R²/t.
 *
 * The Moon's cost at an instant is this over the same without moon.
 *
 * Source: the CCD equation, W. J. Merline & S. B. Howell 1995, Experimental Astronomy 6, 163.
 */
export function variancePerSecond(budget: ElectronBudget): number {
  return (
    budget.signal +
    budget.glow +
    budget.moon +
    budget.dark +
    (budget.readNoiseElectrons * budget.readNoiseElectrons) / budget.subSeconds
  );
}
