/**
 * A site, a night and a few cameras for tests of hours and rankings: invented, all of them.
 *
 * @packageDocumentation
 */
import { PHOTOMETRY } from "../../../config/photometry.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import type { CameraRig, Filter, Sensor } from "../../../core/rig/rig.ts";
import type { Site } from "../../../core/site.ts";
import { observingConditions } from "../../../core/targets/observing-conditions.ts";
import { fakeRig } from "../rig/fake-rig.ts";

export const FELL: Site = {
  name: "Fell End",
  latitudeDeg: 54.5,
  longitudeDeg: -2.6,
  elevationMetres: 0,
  timeZone: "Europe/London",
  skyline: [],
  sky: null,
  brightDirections: [],
  seeingArcsec: null,
};

export const KAROO: Site = {
  ...FELL,
  name: "A farm at 34° south",
  latitudeDeg: -34,
  longitudeDeg: 19,
  timeZone: "Africa/Johannesburg",
};

const MODE = {
  setting: "gain 100",
  electronsPerAdu: 0.25,
  readNoiseElectrons: 1.5,
  saturationElectrons: 15_000,
};
const FLAT = [{ wavelengthNm: 550, efficiency: 0.6 }];

const MONO: Sensor = {
  name: "mono",
  widthMm: 23.5,
  heightMm: 15.7,
  pixelUm: 3.76,
  channels: [{ name: "mono", pixelShare: 1, efficiency: FLAT }],
  modes: [MODE],
  darkElectronsPerSecond: 0.002,
  darkReferenceCelsius: -10,
  darkDoublingCelsius: 6,
  bitsPerPixel: 16,
};

const COLOUR: Sensor = {
  ...MONO,
  name: "colour",
  channels: [
    {
      name: "red",
      pixelShare: 0.25,
      efficiency: [
        { wavelengthNm: 550, efficiency: 0 },
        { wavelengthNm: 610, efficiency: 0.5 },
      ],
    },
    {
      name: "green",
      pixelShare: 0.5,
      efficiency: [
        { wavelengthNm: 450, efficiency: 0 },
        { wavelengthNm: 535, efficiency: 0.6 },
        { wavelengthNm: 620, efficiency: 0 },
      ],
    },
    {
      name: "blue",
      pixelShare: 0.25,
      efficiency: [
        { wavelengthNm: 465, efficiency: 0.5 },
        { wavelengthNm: 550, efficiency: 0 },
      ],
    },
  ],
};

export const LONG_MONO: CameraRig = fakeRig({
  name: "800 mm f/4",
  optics: "mirror",
  focalLengthMm: 800,
  focalRatio: 4,
  obstruction: 0.33,
  throughput: 0.8,
  sensor: MONO,
  modified: false,
  mode: MODE,
  sensorTemperature: { kind: "set", celsius: -10 },
  flipAfterMinutes: 5,
});
export const SHORT_COLOUR: CameraRig = {
  ...LONG_MONO,
  name: "135 mm f/2.8",
  optics: "refractor",
  focalLengthMm: 135,
  focalRatio: 2.8,
  obstruction: 0,
  throughput: 0.9,
  sensor: COLOUR,
  guided: false,
  mount: "tracker",
};

const line = (name: string, centreNm: number): Filter => ({
  name,
  bands: [{ name, centreNm, widthNm: 7 }],
  transmission: 0.85,
});
export const H_ALPHA = line("Hα", 656.3);
export const OXYGEN = line("[O III]", 500.7);

/** The night of a date at a site, under a sky of 20.8 mag/arcsec² and air of 5 °C. */
export function nightOf(site: Site, date: string) {
  return {
    times: nightTimes(site, nightOn(date, site.timeZone)),
    conditions: observingConditions({
      site,
      zenithMagArcsec2: 20.8,
      aerosolExtinction: PHOTOMETRY.aerosolExtinction,
      photometry: PHOTOMETRY,
      airCelsiusAt: () => 5,
    }),
  };
}
