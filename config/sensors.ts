/**
 * Common chips by their maker's code, and common formats: typical values.
 *
 * One row a gain or ISO: electrons per ADU, read noise, saturation. Samples of one
 * chip differ by a tenth or two; a rig may override any figure.
 *
 * @packageDocumentation
 */
import type { Chip } from "../core/rig/chip.ts";
import type { SensorMode } from "../core/rig/rig.ts";
import {
  BACK_LIT_DYES,
  BACK_LIT_PLAIN,
  CHARGE_COUPLED_PLAIN,
  FRONT_LIT_DYES,
  FRONT_LIT_PLAIN,
} from "./efficiency-curves.ts";

const FROM_MEMORY = "typical values, from memory";

function mode(
  setting: string,
  electronsPerAdu: number,
  readNoiseElectrons: number,
  saturationElectrons: number,
): SensorMode {
  return { setting, electronsPerAdu, readNoiseElectrons, saturationElectrons };
}

/** The 3.76 µm pixel that several chips share, read with 16 bits. */
const PIXEL_376_16_BIT = [
  mode("gain 0", 0.78, 3.3, 51_000),
  mode("gain 100", 0.25, 1.5, 16_300),
  mode("gain 200", 0.08, 1.3, 5200),
  mode("gain 300", 0.025, 1.2, 1600),
];

/** Ordinary cameras of some 24 megapixels on the smaller format; 14 bits. */
const SMALL_FORMAT_ISO = [
  mode("ISO 100", 2.0, 5.5, 31_600),
  mode("ISO 200", 1.0, 4.5, 15_800),
  mode("ISO 400", 0.5, 3.6, 7900),
  mode("ISO 800", 0.25, 3.0, 3950),
  mode("ISO 1600", 0.125, 2.7, 1970),
  mode("ISO 3200", 0.0625, 2.6, 990),
];

/** Ordinary cameras of some 24 megapixels on the larger format; 14 bits. */
const LARGE_FORMAT_ISO = [
  mode("ISO 100", 4.8, 6.5, 75_000),
  mode("ISO 200", 2.4, 5.0, 37_900),
  mode("ISO 400", 1.2, 4.0, 18_900),
  mode("ISO 800", 0.6, 3.3, 9480),
  mode("ISO 1600", 0.3, 2.8, 4740),
  mode("ISO 3200", 0.15, 2.6, 2370),
];

const ORDINARY_CAMERA = {
  plain: FRONT_LIT_PLAIN,
  dyes: FRONT_LIT_DYES,
  usualSetting: "ISO 800",
  darkReferenceCelsius: 25,
  darkDoublingCelsius: 6,
  bitsPerPixel: 14,
  usualCelsius: null,
  infraredBlock: true,
  source: FROM_MEMORY,
} as const;

const COOLED_BACK_LIT = {
  plain: BACK_LIT_PLAIN,
  dyes: BACK_LIT_DYES,
  darkReferenceCelsius: 0,
  darkDoublingCelsius: 6,
  bitsPerPixel: 16,
  usualCelsius: -10,
  infraredBlock: false,
  source: FROM_MEMORY,
} as const;

export const CHIPS: readonly Chip[] = [
  {
    ...COOLED_BACK_LIT,
    code: "IMX571",
    widthMm: 23.5,
    heightMm: 15.7,
    pixelUm: 3.76,
    modes: PIXEL_376_16_BIT,
    usualSetting: "gain 100",
    darkElectronsPerSecond: 0.0025,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX455",
    widthMm: 36,
    heightMm: 24,
    pixelUm: 3.76,
    modes: PIXEL_376_16_BIT,
    usualSetting: "gain 100",
    darkElectronsPerSecond: 0.003,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX461",
    widthMm: 43.8,
    heightMm: 32.9,
    pixelUm: 3.76,
    modes: PIXEL_376_16_BIT,
    usualSetting: "gain 100",
    darkElectronsPerSecond: 0.003,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX533",
    widthMm: 11.31,
    heightMm: 11.31,
    pixelUm: 3.76,
    modes: [
      mode("gain 0", 3.1, 3.8, 50_000),
      mode("gain 100", 1.0, 1.5, 16_300),
      mode("gain 200", 0.32, 1.3, 5200),
      mode("gain 300", 0.1, 1.1, 1600),
    ],
    usualSetting: "gain 100",
    darkElectronsPerSecond: 0.0025,
    bitsPerPixel: 14,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX294",
    widthMm: 19.1,
    heightMm: 13.0,
    pixelUm: 4.63,
    modes: [
      mode("gain 0", 3.9, 7.3, 63_700),
      mode("gain 120", 0.98, 1.9, 16_000),
      mode("gain 200", 0.4, 1.6, 6500),
      mode("gain 300", 0.12, 1.4, 1960),
    ],
    usualSetting: "gain 120",
    darkElectronsPerSecond: 0.012,
    bitsPerPixel: 14,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX183",
    widthMm: 13.2,
    heightMm: 8.8,
    pixelUm: 2.4,
    modes: [
      mode("gain 0", 3.6, 3.0, 14_700),
      mode("gain 111", 1.0, 2.2, 4090),
      mode("gain 200", 0.36, 1.7, 1470),
      mode("gain 270", 0.16, 1.6, 650),
    ],
    usualSetting: "gain 111",
    darkElectronsPerSecond: 0.012,
    bitsPerPixel: 12,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX585",
    widthMm: 11.14,
    heightMm: 6.26,
    pixelUm: 2.9,
    modes: [
      mode("gain 0", 9.5, 11, 38_800),
      mode("gain 100", 3.0, 7.5, 12_280),
      mode("gain 200", 0.95, 1.5, 3890),
      mode("gain 300", 0.3, 1.0, 1220),
    ],
    usualSetting: "gain 200",
    darkElectronsPerSecond: 0.011,
    bitsPerPixel: 12,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX410",
    widthMm: 36,
    heightMm: 24,
    pixelUm: 5.94,
    modes: [
      mode("gain 0", 7.2, 6.5, 117_900),
      mode("gain 100", 2.3, 3.6, 37_600),
      mode("gain 200", 0.72, 1.8, 11_790),
      mode("gain 300", 0.23, 1.6, 3760),
    ],
    usualSetting: "gain 200",
    darkElectronsPerSecond: 0.01,
    bitsPerPixel: 14,
  },
  {
    ...COOLED_BACK_LIT,
    code: "IMX178",
    widthMm: 7.4,
    heightMm: 5.0,
    pixelUm: 2.4,
    modes: [
      mode("gain 0", 0.9, 2.2, 14_700),
      mode("gain 100", 0.28, 1.6, 4580),
      mode("gain 200", 0.09, 1.4, 1470),
    ],
    usualSetting: "gain 100",
    darkElectronsPerSecond: 0.02,
    bitsPerPixel: 14,
  },
  {
    ...COOLED_BACK_LIT,
    code: "MN34230",
    widthMm: 17.6,
    heightMm: 13.3,
    pixelUm: 3.8,
    plain: FRONT_LIT_PLAIN,
    dyes: FRONT_LIT_DYES,
    modes: [
      mode("gain 0", 5.0, 3.6, 20_000),
      mode("gain 76", 2.0, 2.3, 8190),
      mode("gain 139", 1.0, 1.7, 4090),
      mode("gain 200", 0.5, 1.4, 2040),
    ],
    usualSetting: "gain 139",
    darkElectronsPerSecond: 0.03,
    bitsPerPixel: 12,
    usualCelsius: -15,
  },
  {
    code: "KAF-8300",
    widthMm: 17.96,
    heightMm: 13.52,
    pixelUm: 5.4,
    plain: CHARGE_COUPLED_PLAIN,
    dyes: null,
    modes: [mode("gain 1", 0.39, 8.5, 25_500)],
    usualSetting: "gain 1",
    darkElectronsPerSecond: 0.15,
    darkReferenceCelsius: 0,
    darkDoublingCelsius: 5.8,
    bitsPerPixel: 16,
    usualCelsius: -20,
    infraredBlock: false,
    source: FROM_MEMORY,
  },
  {
    code: "KAF-16803",
    widthMm: 36.86,
    heightMm: 36.86,
    pixelUm: 9.0,
    plain: CHARGE_COUPLED_PLAIN,
    dyes: null,
    modes: [mode("gain 1", 1.5, 9, 95_000)],
    usualSetting: "gain 1",
    darkElectronsPerSecond: 0.3,
    darkReferenceCelsius: 0,
    darkDoublingCelsius: 6.3,
    bitsPerPixel: 16,
    usualCelsius: -25,
    infraredBlock: false,
    source: FROM_MEMORY,
  },
  {
    code: "ICX694",
    widthMm: 12.49,
    heightMm: 9.99,
    pixelUm: 4.54,
    plain: CHARGE_COUPLED_PLAIN,
    dyes: null,
    modes: [mode("gain 1", 0.27, 4.5, 17_500)],
    usualSetting: "gain 1",
    darkElectronsPerSecond: 0.006,
    darkReferenceCelsius: 0,
    darkDoublingCelsius: 6,
    bitsPerPixel: 16,
    usualCelsius: -15,
    infraredBlock: false,
    source: FROM_MEMORY,
  },
  {
    ...ORDINARY_CAMERA,
    code: "APS-C",
    widthMm: 23.5,
    heightMm: 15.6,
    pixelUm: 3.9,
    modes: SMALL_FORMAT_ISO,
    darkElectronsPerSecond: 0.3,
  },
  {
    ...ORDINARY_CAMERA,
    code: "full frame",
    widthMm: 36,
    heightMm: 24,
    pixelUm: 5.97,
    modes: LARGE_FORMAT_ISO,
    darkElectronsPerSecond: 0.4,
  },
  {
    ...ORDINARY_CAMERA,
    code: "four thirds",
    widthMm: 17.3,
    heightMm: 13.0,
    pixelUm: 3.34,
    modes: SMALL_FORMAT_ISO,
    darkElectronsPerSecond: 0.25,
  },
];

/**
 * What stands in for a sensor of which only size and pixel are known: an ordinary camera's,
 * 3 electrons of read noise and 0.3 electrons a second of dark current at 25 °C.
 */
export const UNKNOWN_CHIP: Omit<Chip, "code" | "widthMm" | "heightMm" | "pixelUm"> = {
  ...ORDINARY_CAMERA,
  modes: SMALL_FORMAT_ISO,
  darkElectronsPerSecond: 0.3,
};
