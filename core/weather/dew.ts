/**
 * Dew and frost: when the air gives up its water, and when optics that cool below the air do.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { ForecastHour } from "./forecast-hour.ts";
import { weatherAt } from "./interpolate.ts";
import type { OpticsCooling } from "./observing-limits.ts";

/** Magnus form over water: e = 6.1094 hPa · exp(17.625 T/(243.04 + T)). */
const WATER = { hectopascal: 6.1094, slope: 17.625, offsetCelsius: 243.04 } as const;
/** Over ice: e = 6.1121 hPa · exp(22.587 T/(273.86 + T)). */
const ICE = { hectopascal: 6.1121, slope: 22.587, offsetCelsius: 273.86 } as const;

type Surface = { readonly hectopascal: number; readonly slope: number; readonly offsetCelsius: number };

function saturationHectopascal(surface: Surface, celsius: number): number {
  return surface.hectopascal * Math.exp((surface.slope * celsius) / (surface.offsetCelsius + celsius));
}

function saturatedAtCelsius(surface: Surface, hectopascal: number): number {
  const logarithm = Math.log(hectopascal / surface.hectopascal);
  return (surface.offsetCelsius * logarithm) / (surface.slope - logarithm);
}

/**
 * Dew point of air.
 *
 * @param temperatureCelsius - of the air, in [-40, 50]
 * @param humidityPercent - relative humidity over water, in (0, 100]
 * @returns degrees Celsius, at or below the air's temperature
 *
 * @remarks
 * Error: under 0.1 °C from −40 to 50 °C (the source's 0.38 % of vapour pressure).
 *
 * Source: O. A. Alduchov and R. E. Eskridge 1996, J. Appl. Meteor. 35, 601.
 */
export function dewPoint(temperatureCelsius: number, humidityPercent: number): number {
  const vapour = (humidityPercent / 100) * saturationHectopascal(WATER, temperatureCelsius);
  return saturatedAtCelsius(WATER, vapour);
}

/**
 * Temperature at which the same vapour turns to frost: above the dew point below 0 °C.
 *
 * @param dewPointCelsius - dew point over water
 *
 * @remarks Source: as {@link dewPoint}, the constants over ice.
 */
export function frostPoint(dewPointCelsius: number): number {
  return saturatedAtCelsius(ICE, saturationHectopascal(WATER, dewPointCelsius));
}

/** Fills a missing dew point from temperature and humidity, where both are known. */
export function withDewPoint(hour: ForecastHour): ForecastHour {
  const { dewPointCelsius, temperatureCelsius, humidityPercent } = hour;
  if (dewPointCelsius !== null || temperatureCelsius === null) return hour;
  if (humidityPercent === null || humidityPercent <= 0) return hour;
  return { ...hour, dewPointCelsius: dewPoint(temperatureCelsius, Math.min(100, humidityPercent)) };
}

/**
 * Temperature of optics that face the sky: they cool most when it is clear and calm.
 *
 * @param cloudPercent - total cloud, in [0, 100]
 * @param windMetresPerSecond - 0 or more; `null` when unknown, taken as calm (the worse case)
 *
 * @remarks Source: common practice.
 */
export function opticsCelsius(
  temperatureCelsius: number,
  cloudPercent: number,
  windMetresPerSecond: number | null,
  cooling: OpticsCooling,
): number {
  const windy = (windMetresPerSecond ?? 0) > cooling.halvingWindMetresPerSecond;
  return temperatureCelsius - cooling.coolingCelsius * (1 - cloudPercent / 100) * (windy ? 0.5 : 1);
}

export type DewKind = "dew" | "frost";

/**
 * What settles on optics in this weather.
 *
 * @returns `null` for nothing, and also when temperature, dew point or cloud is unknown
 */
export function dewOnOptics(hour: ForecastHour, cooling: OpticsCooling): DewKind | null {
  const { temperatureCelsius, dewPointCelsius, cloudPercent, windMetresPerSecond } = withDewPoint(hour);
  if (temperatureCelsius === null || dewPointCelsius === null || cloudPercent === null) return null;
  const optics = opticsCelsius(temperatureCelsius, cloudPercent, windMetresPerSecond, cooling);
  if (optics < 0) return optics <= frostPoint(dewPointCelsius) ? "frost" : null;
  return optics <= dewPointCelsius ? "dew" : null;
}

export type DewSpan = Interval & { readonly kind: DewKind };

const MINUTES_PER_SAMPLE = 5;
const MS_PER_SAMPLE = MINUTES_PER_SAMPLE * 60_000;

/**
 * When dew or frost settles on optics.
 *
 * @param hours - one model's or merged, in order of time
 * @param span - where to look
 * @returns spans in order, with edges good to five minutes
 */
export function dewHours(hours: readonly ForecastHour[], span: Interval, cooling: OpticsCooling): DewSpan[] {
  const filled = hours.map(withDewPoint);
  const spans: DewSpan[] = [];
  let current: { kind: DewKind; start: Date; end: Date } | null = null;
  for (let ms = span.start.getTime(); ms < span.end.getTime(); ms += MS_PER_SAMPLE) {
    const start = new Date(ms);
    const end = new Date(Math.min(ms + MS_PER_SAMPLE, span.end.getTime()));
    const weather = weatherAt(filled, start);
    const kind = weather === null ? null : dewOnOptics(weather, cooling);
    if (current !== null && current.kind === kind) {
      current.end = end;
      continue;
    }
    if (current !== null) spans.push(current);
    current = kind === null ? null : { kind, start, end };
  }
  if (current !== null) spans.push(current);
  return spans;
}
