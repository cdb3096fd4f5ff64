/**
 * What would help a picture most, each as a factor on the time.
 *
 * @packageDocumentation
 */
import { variancePerSecond } from "./electrons.ts";
import type { Sensor } from "./rig.ts";
import type { PixelRates } from "./signal-to-noise.ts";

export type Improvement =
  /** A sensor held at this temperature. */
  | { readonly kind: "cooler"; readonly celsius: number; readonly factor: number }
  /** A line filter of half the width. */
  | { readonly kind: "narrower"; readonly factor: number }
  | { readonly kind: "no-moon"; readonly factor: number }
  /** A sky one magnitude darker at the zenith. */
  | { readonly kind: "darker-sky"; readonly factor: number }
  /** Subs so long that read noise is nothing. */
  | { readonly kind: "longer-subs"; readonly factor: number }
  | { readonly kind: "hour-more"; readonly factor: number };

export type ImprovableExposure = {
  readonly rates: PixelRates;
  readonly subSeconds: number;
  readonly totalHours: number;
  readonly sensor: Sensor;
  /** Mean temperature of the sensor through the window. */
  readonly sensorCelsius: number;
  /** What a cooler would hold it at. */
  readonly cooledCelsius: number;
  /** What the Moon costs, as everywhere else: at least 1. */
  readonly moonCost: number;
  /** Whether the light wanted is a line, so that a narrower filter loses none of it. */
  readonly line: boolean;
};

const ONE_MAGNITUDE = 10 ** 0.4;

/**
 * Every change that would shorten the exposure for the same picture, the best first.
 *
 * `factor` is how many hours of now one hour would then be worth; always above 1.
 */
export function improvements(exposure: ImprovableExposure): readonly Improvement[] {
  const { rates, subSeconds, sensor } = exposure;
  const now = variancePerSecond({ ...rates, subSeconds });
  const factorOf = (changed: Partial<PixelRates>) =>
    now / variancePerSecond({ ...rates, ...changed, subSeconds });
  const cooled =
    sensor.darkElectronsPerSecond *
    2 ** ((exposure.cooledCelsius - sensor.darkReferenceCelsius) / sensor.darkDoublingCelsius);
  const all: Improvement[] = [
    {
      kind: "cooler",
      celsius: exposure.cooledCelsius,
      factor: exposure.sensorCelsius > exposure.cooledCelsius ? factorOf({ dark: cooled }) : 1,
    },
    { kind: "no-moon", factor: exposure.moonCost },
    { kind: "darker-sky", factor: factorOf({ glow: rates.glow / ONE_MAGNITUDE }) },
    { kind: "longer-subs", factor: factorOf({ readNoiseElectrons: 0 }) },
  ];
  if (exposure.line) {
    all.push({ kind: "narrower", factor: factorOf({ glow: rates.glow / 2, moon: rates.moon / 2 }) });
  }
  if (exposure.totalHours > 0) {
    all.push({ kind: "hour-more", factor: (exposure.totalHours + 1) / exposure.totalHours });
  }
  return all.filter(({ factor }) => factor > 1).sort((one, other) => other.factor - one.factor);
}
