/**
 * Every quantity of an hour: the units it may come in, and the values that are possible.
 *
 * An unknown unit is refused, never guessed; an impossible value is unknown.
 *
 * @packageDocumentation
 */
import type { ForecastHour } from "../../core/weather/forecast-hour.ts";

export type Quantity = Exclude<keyof ForecastHour, "at">;

type Conversion = (value: number) => number;

type QuantityRule = {
  /** What it is called in a sentence. */
  readonly words: string;
  readonly least: number;
  readonly most: number;
  /** To the unit of `ForecastHour`, by the name the services give the unit. */
  readonly units: Readonly<Record<string, Conversion>>;
};

const asIs: Conversion = (value) => value;
const times =
  (factor: number): Conversion =>
  (value) =>
    value * factor;

const PERCENT: QuantityRule["units"] = { "%": asIs };
const CELSIUS: QuantityRule["units"] = {
  "°C": asIs,
  celsius: asIs,
  C: asIs,
  "°F": (value) => (value - 32) / 1.8,
  K: (value) => value - 273.15,
};
const SPEED: QuantityRule["units"] = {
  "m/s": asIs,
  "km/h": (value) => value / 3.6,
  "mp/h": times(0.44704),
  mph: times(0.44704),
  kn: times(0.514444),
  knots: times(0.514444),
};
const RAIN: QuantityRule["units"] = { mm: asIs, inch: times(25.4), cm: times(10) };
const LENGTH: QuantityRule["units"] = { m: asIs, km: times(1000), ft: times(0.3048) };

const percent = (words: string): QuantityRule => ({ words, least: 0, most: 100, units: PERCENT });
const speed = (words: string): QuantityRule => ({ words, least: 0, most: 150, units: SPEED });

export const QUANTITIES: Readonly<Record<Quantity, QuantityRule>> = {
  cloudPercent: percent("cloud"),
  lowCloudPercent: percent("low cloud"),
  midCloudPercent: percent("middle cloud"),
  highCloudPercent: percent("high cloud"),
  temperatureCelsius: { words: "temperature", least: -90, most: 60, units: CELSIUS },
  dewPointCelsius: { words: "dew point", least: -100, most: 40, units: CELSIUS },
  humidityPercent: { words: "humidity", least: 0, most: 110, units: PERCENT },
  windMetresPerSecond: speed("wind"),
  gustMetresPerSecond: speed("gusts"),
  precipitationMm: { words: "rain", least: 0, most: 1000, units: RAIN },
  precipitationProbabilityPercent: percent("the chance of rain"),
  fogPercent: percent("fog"),
  visibilityMetres: { words: "visibility", least: 0, most: 500_000, units: LENGTH },
  aerosolOpticalDepth: { words: "aerosol", least: 0, most: 20, units: { "": asIs, "1": asIs } },
  upperWindMetresPerSecond: speed("upper-air wind"),
};

/** A value in our unit; `null` when it is no number or not possible. */
export function possible(quantity: Quantity, value: number): number | null {
  const { least, most } = QUANTITIES[quantity];
  return value >= least && value <= most ? value : null;
}

/** How to turn a unit into ours; `null` when the unit is not known. */
export function conversionFrom(quantity: Quantity, unit: string): Conversion | null {
  const { units } = QUANTITIES[quantity];
  return Object.hasOwn(units, unit) ? (units[unit] ?? null) : null;
}

/** An hour of which nothing is known yet. */
export function unknownHour(at: Date): ForecastHour {
  return {
    at,
    cloudPercent: null,
    lowCloudPercent: null,
    midCloudPercent: null,
    highCloudPercent: null,
    temperatureCelsius: null,
    dewPointCelsius: null,
    humidityPercent: null,
    windMetresPerSecond: null,
    gustMetresPerSecond: null,
    precipitationMm: null,
    precipitationProbabilityPercent: null,
    fogPercent: null,
    visibilityMetres: null,
    aerosolOpticalDepth: null,
    upperWindMetresPerSecond: null,
  };
}
