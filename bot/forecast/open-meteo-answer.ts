/**
 * What Open-Meteo answers, read with suspicion: forecast, ensemble and air quality share one shape.
 *
 * Units are read from the answer; a model that does not cover the place is left out,
 * and the last one left loses the suffix that names it.
 *
 * @packageDocumentation
 */
import type { ForecastHour, ModelForecast } from "../../core/weather/forecast-hour.ts";
import { isKnown } from "../../core/weather/interpolate.ts";
import { isRecord, type JsonRecord, member, numberOrNull } from "./json-shape.ts";
import { UnreadableAnswer } from "./polite-host.ts";
import { conversionFrom, possible, QUANTITIES, type Quantity, unknownHour } from "./quantities.ts";
import type { ReadForecast } from "./weather-source.ts";

/** Its layers part at these heights above the ground. */
const LAYER_BOUNDARIES_METRES = [3000, 8000] as const;

/** Names a variable answers to, today's first; the upper wind is taken at the level nearest 250 hPa. */
const NAMES: Readonly<Record<Exclude<Quantity, "fogPercent">, readonly string[]>> = {
  cloudPercent: ["cloud_cover", "cloudcover"],
  lowCloudPercent: ["cloud_cover_low", "cloudcover_low"],
  midCloudPercent: ["cloud_cover_mid", "cloudcover_mid"],
  highCloudPercent: ["cloud_cover_high", "cloudcover_high"],
  temperatureCelsius: ["temperature_2m"],
  dewPointCelsius: ["dew_point_2m", "dewpoint_2m"],
  humidityPercent: ["relative_humidity_2m", "relativehumidity_2m"],
  windMetresPerSecond: ["wind_speed_10m", "windspeed_10m"],
  gustMetresPerSecond: ["wind_gusts_10m", "windgusts_10m"],
  precipitationMm: ["precipitation"],
  precipitationProbabilityPercent: ["precipitation_probability"],
  visibilityMetres: ["visibility"],
  aerosolOpticalDepth: ["aerosol_optical_depth"],
  upperWindMetresPerSecond: [
    "wind_speed_250hPa",
    "windspeed_250hPa",
    "wind_speed_300hPa",
    "wind_speed_200hPa",
  ],
};

/** The unit it gives where the answer does not say. */
const DOCUMENTED_UNITS: Readonly<Partial<Record<Quantity, string>>> = {
  temperatureCelsius: "°C",
  dewPointCelsius: "°C",
  windMetresPerSecond: "km/h",
  gustMetresPerSecond: "km/h",
  upperWindMetresPerSecond: "km/h",
  precipitationMm: "mm",
  visibilityMetres: "m",
  aerosolOpticalDepth: "",
};

/**
 * Reads an answer for one place (of several, the first).
 *
 * @param answer - parsed JSON
 * @param provider - as credited
 * @throws UnreadableAnswer when it is none, is a refusal, or its times make no sense
 */
export function readOpenMeteo(answer: unknown, provider: string): ReadForecast {
  const place: unknown = Array.isArray(answer) ? answer[0] : answer;
  if (member(place, "error") === true) {
    throw new UnreadableAnswer(`a refusal: ${String(member(place, "reason") ?? "no reason given")}`);
  }
  if (!isRecord(place) || numberOrNull(place.latitude) === null) throw new UnreadableAnswer("no forecast");
  const hourly = place.hourly;
  if (hourly === undefined) return { models: [], problems: [`${provider} gave no hours.`] };
  if (!isRecord(hourly)) throw new UnreadableAnswer("hours in an unknown form");
  const times = timesOf(hourly.time, numberOrNull(place.utc_offset_seconds) ?? 0);
  const units = isRecord(place.hourly_units) ? place.hourly_units : {};
  const problems = new Set<string>();
  const models = suffixesOf(hourly).flatMap((suffix): ModelForecast[] => {
    const hours = hoursOf({ hourly, units, times, suffix, provider, problems }).filter(isKnown);
    if (hours.length === 0) return [];
    return [
      {
        provider,
        model: suffix === "" ? "best match" : suffix,
        issuedAt: null,
        fetchedAt: null,
        layerBoundariesMetres: LAYER_BOUNDARIES_METRES,
        hours,
        sample: false,
      },
    ];
  });
  return { models, problems: [...problems] };
}

/** Hours in order: seconds since 1970, or local text `2026-03-08T02:00` at one offset for the whole series. */
function timesOf(value: unknown, offsetSeconds: number): readonly number[] {
  if (!Array.isArray(value)) throw new UnreadableAnswer("no times");
  const times = value.map((entry: unknown) => {
    if (typeof entry === "number") return entry * 1000;
    if (typeof entry !== "string" || !/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?$/.test(entry)) return Number.NaN;
    return Date.parse(`${entry}Z`) - offsetSeconds * 1000;
  });
  times.forEach((ms, index) => {
    const isLater = index === 0 || ms > (times[index - 1] ?? Number.NaN);
    if (!isLater || Number.isNaN(new Date(ms).getTime())) throw new UnreadableAnswer("times out of order");
  });
  return times;
}

const EVERY_NAME: readonly string[] = Object.values(NAMES)
  .flat()
  .sort((one, other) => other.length - one.length);

/** After a variable's name these make another variable of it, not a model. */
const NOT_A_MODEL = /^(\d|spread$|type$|previous_day)/;

/** None at all, or a short plain word: a file may hold anything. */
const MODEL_NAME = /^[a-zA-Z0-9_.-]{0,60}$/;

/** What names the models in the keys; the empty text for a lone one. */
function suffixesOf(hourly: JsonRecord): readonly string[] {
  const suffixes = new Set<string>();
  for (const key of Object.keys(hourly)) {
    const name = EVERY_NAME.find((known) => key === known || key.startsWith(`${known}_`));
    if (name === undefined) continue;
    const suffix = key.slice(name.length + 1);
    if (MODEL_NAME.test(suffix) && !NOT_A_MODEL.test(suffix)) suffixes.add(suffix);
  }
  return [...suffixes];
}

type Series = {
  readonly hourly: JsonRecord;
  readonly units: JsonRecord;
  readonly times: readonly number[];
  readonly suffix: string;
  readonly provider: string;
  readonly problems: Set<string>;
};

function hoursOf(series: Series): ForecastHour[] {
  const columns = Object.entries(NAMES).flatMap(([quantity, names]) => {
    const values = columnOf(series, quantity as Exclude<Quantity, "fogPercent">, names);
    return values === null ? [] : [{ quantity, values }];
  });
  return series.times.map((ms, index) => {
    const known = columns.map(({ quantity, values }) => [quantity, values[index] ?? null]);
    return { ...unknownHour(new Date(ms)), ...Object.fromEntries(known) };
  });
}

/** One quantity's values in our unit; `null` when the model lacks it or it must be refused. */
function columnOf(
  { hourly, units, times, suffix, provider, problems }: Series,
  quantity: Quantity,
  names: readonly string[],
): readonly (number | null)[] | null {
  const keys = names.map((name) => (suffix === "" ? name : `${name}_${suffix}`));
  const key = keys.find((candidate) => Object.hasOwn(hourly, candidate));
  const values = key === undefined ? undefined : hourly[key];
  if (key === undefined || !Array.isArray(values)) return null;
  const { words } = QUANTITIES[quantity];
  const refuse = (why: string) => {
    problems.add(`${provider} gave ${words} ${why}: it is not used.`);
    return null;
  };
  if (values.length !== times.length) return refuse(`for ${values.length} of ${times.length} hours`);
  const numbers = values.map(numberOrNull);
  if (numbers.every((value) => value === null)) return null;
  const unit = String(units[key] ?? DOCUMENTED_UNITS[quantity] ?? "%");
  const convert = conversionFrom(quantity, unit);
  if (convert === null) return refuse(`in “${unit.slice(0, 20)}”`);
  if (quantity === "cloudPercent" && isShareOfOne(numbers)) return refuse("on a scale of 0 to 1");
  const converted = numbers.map((value) => (value === null ? null : possible(quantity, convert(value))));
  if (converted.some((value, index) => value === null && numbers[index] !== null)) {
    problems.add(`${provider} gave some ${words} that cannot be: those hours are unknown.`);
  }
  return converted;
}

/** Hours enough, all within 0 to 1, for a series of mostly ones to be on the wrong scale. */
const SUSPECT_HOURS = 48;

/** Cloud comes in whole percents; fractions up to 1, or a week of noughts and ones, are shares of one. */
function isShareOfOne(values: readonly (number | null)[]): boolean {
  const known = values.filter((value) => value !== null);
  if (known.some((value) => value > 1)) return false;
  if (known.some((value) => value > 0 && value < 1)) return true;
  const ones = known.filter((value) => value === 1).length;
  return known.length >= SUSPECT_HOURS && ones * 4 >= known.length;
}
