/**
 * Rigs for tests: that of the worked example, with overrides.
 *
 * @packageDocumentation
 */
import type { CameraRig, Filter, SensorChannel } from "../../../core/rig/rig.ts";

export const MONO: readonly SensorChannel[] = [
  { name: "mono", pixelShare: 1, efficiency: [{ wavelengthNm: 550, efficiency: 0.3 }] },
];

/** One in four red, two in four green, one in four blue. */
export const BAYER: readonly SensorChannel[] = [
  {
    name: "red",
    pixelShare: 0.25,
    efficiency: [
      { wavelengthNm: 560, efficiency: 0 },
      { wavelengthNm: 600, efficiency: 0.4 },
      { wavelengthNm: 656.3, efficiency: 0.3 },
      { wavelengthNm: 672.4, efficiency: 0.28 },
    ],
  },
  {
    name: "green",
    pixelShare: 0.5,
    efficiency: [
      { wavelengthNm: 486.1, efficiency: 0.1 },
      { wavelengthNm: 500.7, efficiency: 0.3 },
      { wavelengthNm: 535, efficiency: 0.45 },
      { wavelengthNm: 620, efficiency: 0.05 },
      { wavelengthNm: 660, efficiency: 0 },
    ],
  },
  {
    name: "blue",
    pixelShare: 0.25,
    efficiency: [
      { wavelengthNm: 465, efficiency: 0.4 },
      { wavelengthNm: 486.1, efficiency: 0.35 },
      { wavelengthNm: 500.7, efficiency: 0.2 },
      { wavelengthNm: 540, efficiency: 0 },
    ],
  },
];

/** The rig of the worked example: 400 mm f/5.6, 3.76 µm, a colour array without its infrared block. */
export function fakeRig(overrides: Partial<CameraRig> = {}): CameraRig {
  const mode = {
    setting: "gain 0",
    electronsPerAdu: 1,
    readNoiseElectrons: 3,
    saturationElectrons: 20_000,
  };
  return {
    kind: "camera",
    name: "400 mm f/5.6",
    optics: "refractor",
    focalLengthMm: 400,
    focalRatio: 5.6,
    reducerFactor: 1,
    obstruction: 0,
    throughput: 0.9,
    sensor: {
      name: "23.5 × 15.7 mm",
      widthMm: 23.5,
      heightMm: 15.7,
      pixelUm: 3.76,
      channels: BAYER,
      modes: [mode],
      darkElectronsPerSecond: 0.3,
      darkReferenceCelsius: 25,
      darkDoublingCelsius: 6,
      bitsPerPixel: 16,
    },
    modified: true,
    mode,
    sensorTemperature: { kind: "set", celsius: 35 },
    guided: true,
    guidingArcsec: 1,
    mount: "german",
    flipAfterMinutes: 10,
    filters: [],
    subSeconds: {},
    measuredSkies: [],
    assumptions: [],
    ...overrides,
  };
}

/** A filter of 85 % with one band for each centre and width. */
export function fakeFilter(...bands: readonly (readonly [number, number])[]): Filter {
  return {
    name: bands.map(([centreNm, widthNm]) => `${centreNm}/${widthNm}`).join("+"),
    bands: bands.map(([centreNm, widthNm]) => ({ name: `${centreNm}/${widthNm}`, centreNm, widthNm })),
    transmission: 0.85,
  };
}

export const NO_FILTER: Filter = { name: "none", bands: [], transmission: 1 };
