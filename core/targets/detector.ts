/**
 * What looks at the sky: a camera behind one pass band, or the eye.
 *
 * @packageDocumentation
 */
import type { BandResponse, BandSky, ChannelResponse } from "../rig/band-response.ts";
import { darkElectronsPerSecond } from "../rig/electrons.ts";
import { EMISSION_LINES } from "../rig/emission-lines.ts";
import type { CatalogueColumns } from "./catalogue-columns.ts";
import type { BandWork } from "./counting-hours.ts";
import { V_BAND_NM } from "./extinction.ts";

/** What looks at the sky, and what its noise is made of. */
export type Detector = {
  /** Where extinction is taken. */
  readonly wavelengthNm: number;
  /** Weight of sky and Moon, in the detector's own unit for each nanolambert. */
  readonly skies: readonly BandSky[];
  /** The night's own sky, measured; `null` to take it from nanolamberts. */
  readonly measuredSky: number | null;
  /** Noise that is there without any light, at an air temperature. */
  readonly ownNoise: (airCelsius: number) => number;
  /** Of each object above the air; it adds to the noise. */
  readonly signal: Float64Array;
  /** 1 for each object that it is worth pointing at, 0 for one that shows nothing through it. */
  readonly worthwhile: Uint8Array;
  /** An hour counts by this power of the light that arrives: 2 for a picture, 1 for the eye. */
  readonly arrivingPower: number;
};

/**
 * A camera behind one pass band, in electrons a second.
 *
 * @param worthwhile - the objects that its filter shows anything of
 */
export function cameraDetector(columns: CatalogueColumns, work: BandWork, worthwhile: Uint8Array): Detector {
  const { band, rig, subSeconds } = work;
  const readout = rig.mode.readNoiseElectrons ** 2 / subSeconds;
  return {
    wavelengthNm: band.leading.wavelengthNm,
    skies: band.leading.skies,
    measuredSky: band.leading.measuredSkyElectrons,
    ownNoise: (airCelsius) => darkElectronsPerSecond(rig, airCelsius) + readout,
    signal: catalogueSignals(columns, band, band.leading),
    worthwhile,
    arrivingPower: 2,
  };
}

/** The eye: contrast against the sky, in nanolamberts. */
export function eyeDetector(columns: CatalogueColumns): Detector {
  return {
    wavelengthNm: V_BAND_NM,
    skies: [{ wavelengthNm: V_BAND_NM, electronsPerNanolambert: 1 }],
    measuredSky: null,
    ownNoise: () => 0,
    signal: new Float64Array(columns.objects.length),
    worthwhile: new Uint8Array(columns.objects.length).fill(1),
    arrivingPower: 1,
  };
}

/** Noise of one nanolambert of sky. */
export function weightOfSky(detector: Detector): number {
  return detector.skies.reduce((sum, sky) => sum + sky.electronsPerNanolambert, 0);
}

/**
 * Signal of each object above the air through one dye: its line, or its continuum and what lines pass.
 *
 * @returns electrons a second and signal-seeing pixel, by object
 */
export function catalogueSignals(
  columns: CatalogueColumns,
  band: BandResponse,
  channel: ChannelResponse,
): Float64Array {
  const sums = new Float64Array(columns.objects.length);
  for (const each of EMISSION_LINES) {
    const perRayleigh = channel.electronsPerRayleigh[each];
    if (perRayleigh === undefined) continue;
    const rayleigh = columns.rayleigh[each];
    for (let index = 0; index < sums.length; index++) {
      sums[index] = (sums[index] as number) + (rayleigh[index] as number) * perRayleigh;
    }
  }
  for (let index = 0; index < sums.length; index++) {
    const lines = sums[index] as number;
    if (band.line !== null && lines > 0) continue;
    sums[index] = lines + (columns.continuum[index] as number) * channel.electronsPerNanolambert;
  }
  return sums;
}
