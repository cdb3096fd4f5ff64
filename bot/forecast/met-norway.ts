/**
 * MET Norway's Locationforecast, compact and complete: hourly at first, then by six hours.
 *
 * Its gusts stand beside an instant, its rain in periods that begin there; both are
 * given to the hour (or step) before an instant, as everywhere here. What vanishes
 * in the later part is unknown, not zero.
 *
 * @packageDocumentation
 */
import { CREDITS } from "../../config/forecast-services.ts";
import { MS_PER_HOUR } from "../../core/sky/time.ts";
import type { ForecastHour } from "../../core/weather/forecast-hour.ts";
import { isKnown } from "../../core/weather/interpolate.ts";
import type { KeptAnswer } from "./cache.ts";
import { isRecord, member, numberOrNull, parsedJson } from "./json-shape.ts";
import { type PoliteHost, UnreadableAnswer } from "./polite-host.ts";
import { conversionFrom, possible, QUANTITIES, type Quantity, unknownHour } from "./quantities.ts";
import type { ReadForecast, WeatherSource } from "./weather-source.ts";

const NAME = "MET Norway";

/** Its layers part at these heights above the ground: not where others part them. */
const LAYER_BOUNDARIES_METRES = [2000, 5000] as const;

type Field = { readonly name: string; readonly quantity: Quantity; readonly documentedUnit: string };

const INSTANT_FIELDS: readonly Field[] = [
  { name: "cloud_area_fraction", quantity: "cloudPercent", documentedUnit: "%" },
  { name: "cloud_area_fraction_low", quantity: "lowCloudPercent", documentedUnit: "%" },
  { name: "cloud_area_fraction_medium", quantity: "midCloudPercent", documentedUnit: "%" },
  { name: "cloud_area_fraction_high", quantity: "highCloudPercent", documentedUnit: "%" },
  { name: "air_temperature", quantity: "temperatureCelsius", documentedUnit: "celsius" },
  { name: "dew_point_temperature", quantity: "dewPointCelsius", documentedUnit: "celsius" },
  { name: "relative_humidity", quantity: "humidityPercent", documentedUnit: "%" },
  { name: "wind_speed", quantity: "windMetresPerSecond", documentedUnit: "m/s" },
  { name: "wind_speed_of_gust", quantity: "gustMetresPerSecond", documentedUnit: "m/s" },
  { name: "fog_area_fraction", quantity: "fogPercent", documentedUnit: "%" },
];

const PERIOD_FIELDS: readonly Field[] = [
  { name: "precipitation_amount", quantity: "precipitationMm", documentedUnit: "mm" },
  { name: "probability_of_precipitation", quantity: "precipitationProbabilityPercent", documentedUnit: "%" },
];

const PERIODS: readonly { readonly name: string; readonly lengthMs: number }[] = [
  { name: "next_1_hours", lengthMs: MS_PER_HOUR },
  { name: "next_6_hours", lengthMs: 6 * MS_PER_HOUR },
  { name: "next_12_hours", lengthMs: 12 * MS_PER_HOUR },
];

/** MET Norway as a source. */
export function metNorway(host: PoliteHost, base: string, nowMs: () => number): WeatherSource {
  const read = (body: string) => readMetNorway(parsedJson(body));
  return {
    name: NAME,
    credit: CREDITS.metNorway,
    keyPrefix: "met-norway/complete",
    leastAgeMs: 0,
    cellsPerRequest: 1,
    read,
    async fetch([cell], [kept]) {
      if (cell === undefined) return { kind: "answered", answers: [] };
      const since = kept?.lastModified ?? null;
      const hearing = await host.ask({
        url: `${base}/weatherapi/locationforecast/2.0/complete?lat=${cell.latitude}&lon=${cell.longitude}`,
        ...(since === null ? {} : { headers: { "if-modified-since": since } }),
        weight: 1,
        read: (text) => {
          read(text);
          return text;
        },
      });
      const fetchedAt = new Date(nowMs());
      switch (hearing.kind) {
        case "unheard":
          return { kind: "failed", why: hearing.why };
        case "not-modified":
          if (kept === undefined || kept === null) return { kind: "failed", why: "sent nothing" };
          return answered({ ...kept, fetchedAt, expiresAt: hearing.expires ?? fetchedAt });
        case "heard": {
          const { expires, lastModified } = hearing.exchange;
          return answered({ body: hearing.value, fetchedAt, expiresAt: expires ?? fetchedAt, lastModified });
        }
      }
    },
  };
}

function answered(answer: KeptAnswer) {
  return { kind: "answered", answers: [answer] } as const;
}

type Entry = {
  readonly at: Date;
  readonly instant: unknown;
  /** Details of each period, by its length. */
  readonly periods: ReadonlyMap<number, unknown>;
};

/**
 * Reads an answer, compact or complete.
 *
 * @param answer - parsed JSON
 * @throws UnreadableAnswer when it is none, or its times make no sense
 */
export function readMetNorway(answer: unknown): ReadForecast {
  const properties = member(answer, "properties");
  const series = member(properties, "timeseries");
  if (!Array.isArray(series)) throw new UnreadableAnswer("no time series");
  const meta = member(properties, "meta");
  const problems = new Set<string>();
  const reading = readerOf(member(meta, "units"), problems);
  const entries = series.map(entryOf);
  const hours = entries.map((entry, index): ForecastHour => {
    const before = entries[index - 1];
    const stepMs = before === undefined ? 0 : entry.at.getTime() - before.at.getTime();
    if (before !== undefined && stepMs <= 0) throw new UnreadableAnswer("times out of order");
    const fallen = before?.periods.get(stepMs);
    const known = [
      ...INSTANT_FIELDS.map((field) => [field.quantity, reading(entry.instant, field)]),
      ...PERIOD_FIELDS.map((field) => [field.quantity, reading(fallen, field)]),
    ];
    return { ...unknownHour(entry.at), ...Object.fromEntries(known) };
  });
  const known = hours.filter(isKnown);
  if (known.length === 0) return { models: [], problems: [...problems] };
  return {
    models: [
      {
        provider: NAME,
        model: "locationforecast",
        issuedAt: dateOf(member(meta, "updated_at")),
        fetchedAt: null,
        layerBoundariesMetres: LAYER_BOUNDARIES_METRES,
        hours: known,
        sample: false,
      },
    ],
    problems: [...problems],
  };
}

function entryOf(value: unknown): Entry {
  const at = dateOf(member(value, "time"));
  if (at === null) throw new UnreadableAnswer("a time that is none");
  const data = member(value, "data");
  const periods = PERIODS.flatMap(({ name, lengthMs }) => {
    const details = member(member(data, name), "details");
    return details === undefined ? [] : [[lengthMs, details] as const];
  });
  return { at, instant: member(member(data, "instant"), "details"), periods: new Map(periods) };
}

type Reader = (details: unknown, field: Field) => number | null;

function readerOf(units: unknown, problems: Set<string>): Reader {
  return (details, { name, quantity, documentedUnit }) => {
    const value = numberOrNull(member(details, name));
    if (value === null) return null;
    const { words } = QUANTITIES[quantity];
    const unit = String(member(units, name) ?? documentedUnit);
    const convert = conversionFrom(quantity, unit);
    if (convert === null) {
      problems.add(`${NAME} gave ${words} in “${unit.slice(0, 20)}”: it is not used.`);
      return null;
    }
    const found = possible(quantity, convert(value));
    if (found === null) problems.add(`${NAME} gave some ${words} that cannot be: those hours are unknown.`);
    return found;
  };
}

function dateOf(value: unknown): Date | null {
  if (typeof value !== "string" || !/^\d{4}-\d\d-\d\dT/.test(value)) return null;
  const date = new Date(value);
  return Number.isNaN(date.getTime()) ? null : date;
}

/** Whether parsed JSON has the shape of this service's answers. */
export function looksLikeMetNorway(answer: unknown): boolean {
  return (
    isRecord(member(answer, "properties")) &&
    Array.isArray(member(member(answer, "properties"), "timeseries"))
  );
}
