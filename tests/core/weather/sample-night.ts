/**
 * A plain night and plain weather for tests of the verdict: dark from 20:00 to 04:00 UTC.
 *
 * @packageDocumentation
 */
import type { NightTimes } from "../../../core/night/night.ts";
import type { ForecastHour, ModelForecast } from "../../../core/weather/forecast-hour.ts";

export function utc(text: string): Date {
  return new Date(`${text}:00Z`);
}

/** The night of 10 October 2026; `darkFrom` and `darkTo` are UTC instants. */
export function nightDark(darkFrom = "2026-10-10T20:00", darkTo = "2026-10-11T04:00"): NightTimes {
  const start = utc(darkFrom);
  const end = utc(darkTo);
  return {
    night: {
      date: "2026-10-10",
      timeZone: "UTC",
      noon: utc("2026-10-10T12:00"),
      nextNoon: utc("2026-10-11T12:00"),
    },
    sunset: utc("2026-10-10T18:00"),
    civilDusk: null,
    nauticalDusk: null,
    astronomicalDusk: start,
    astronomicalDawn: end,
    nauticalDawn: null,
    civilDawn: null,
    sunrise: utc("2026-10-11T06:00"),
    moon: { rise: null, set: null, illuminatedFraction: 0.02, phaseAngleDeg: 170, waxing: true },
    darkWindows: [{ start, end }],
    moonFreeDarkWindows: [{ start, end }],
    deepestTwilight: "astronomical",
    workingWindows: [{ start, end }],
  };
}

/** Known and harmless in every respect, at one instant. */
export function fineHour(at: Date, overrides: Partial<ForecastHour> = {}): ForecastHour {
  return {
    at,
    cloudPercent: 0,
    lowCloudPercent: 0,
    midCloudPercent: 0,
    highCloudPercent: 0,
    temperatureCelsius: 10,
    dewPointCelsius: 2,
    humidityPercent: 58,
    windMetresPerSecond: 3,
    gustMetresPerSecond: 5,
    precipitationMm: 0,
    precipitationProbabilityPercent: 0,
    fogPercent: 0,
    visibilityMetres: 20_000,
    aerosolOpticalDepth: null,
    upperWindMetresPerSecond: 15,
    ...overrides,
  };
}

const MS_PER_HOUR = 3_600_000;

/** Hours from `from`, every `stepHours`, each made by `each(index)`. */
export function hoursFrom(
  from: string,
  count: number,
  each: (index: number) => Partial<ForecastHour> = () => ({}),
  stepHours = 1,
): ForecastHour[] {
  const startMs = utc(from).getTime();
  return Array.from({ length: count }, (_, index) =>
    fineHour(new Date(startMs + index * stepHours * MS_PER_HOUR), each(index)),
  );
}

/** From noon to noon of the plain night, hourly; cloud by the UTC hour counted from noon. */
export function cloudyNight(cloud: (hourFromNoon: number) => number | null): ForecastHour[] {
  return hoursFrom("2026-10-10T12:00", 25, (index) => ({ cloudPercent: cloud(index) }));
}

export function modelOf(
  hours: readonly ForecastHour[],
  overrides: Partial<ModelForecast> = {},
): ModelForecast {
  return {
    provider: "Provider",
    model: "model",
    issuedAt: null,
    fetchedAt: null,
    layerBoundariesMetres: [3000, 8000],
    hours,
    sample: false,
    ...overrides,
  };
}
