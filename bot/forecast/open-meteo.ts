/**
 * Open-Meteo: several models and many places in one request.
 *
 * Times are asked for as UTC, for its local times know no clock change.
 *
 * @packageDocumentation
 */
import {
  CREDITS,
  OPEN_METEO_CELLS_PER_REQUEST,
  OPEN_METEO_DAYS,
  OPEN_METEO_MODELS,
} from "../../config/forecast-services.ts";
import { MS_PER_HOUR } from "../../core/sky/time.ts";
import type { Cell } from "./cell.ts";
import { parsedJson } from "./json-shape.ts";
import { readOpenMeteo } from "./open-meteo-answer.ts";
import { type PoliteHost, type Refusal, UnreadableAnswer } from "./polite-host.ts";
import type { ReadForecast, WeatherSource } from "./weather-source.ts";

const ASKED: readonly string[] = [
  "cloud_cover",
  "cloud_cover_low",
  "cloud_cover_mid",
  "cloud_cover_high",
  "temperature_2m",
  "dew_point_2m",
  "wind_speed_10m",
  "wind_gusts_10m",
  "precipitation",
  "precipitation_probability",
  "visibility",
  "wind_speed_250hPa",
];

/** Open-Meteo's forecast as a source. */
export function openMeteo(host: PoliteHost, base: string, nowMs: () => number): WeatherSource {
  return openMeteoSource({
    host,
    nowMs,
    name: "Open-Meteo",
    credit: CREDITS.openMeteo,
    keyPrefix: `open-meteo/${OPEN_METEO_MODELS.join("+")}/1`,
    leastAgeMs: 0,
    address: `${base}/v1/forecast`,
    variables: ASKED,
    models: OPEN_METEO_MODELS,
    days: OPEN_METEO_DAYS,
  });
}

type OpenMeteoService = Pick<WeatherSource, "name" | "credit" | "keyPrefix" | "leastAgeMs"> & {
  readonly host: PoliteHost;
  readonly nowMs: () => number;
  readonly address: string;
  readonly variables: readonly string[];
  /** Empty where the service has no choice of models. */
  readonly models: readonly string[];
  readonly days: { readonly past: number; readonly ahead: number };
};

/** Any of Open-Meteo's services that answer hour by hour. */
export function openMeteoSource(service: OpenMeteoService): WeatherSource {
  const { name, credit, keyPrefix, leastAgeMs } = service;
  const read = (body: string) => readOpenMeteo(parsedJson(body), name);
  return {
    name,
    credit,
    keyPrefix,
    leastAgeMs,
    cellsPerRequest: OPEN_METEO_CELLS_PER_REQUEST,
    read,
    async fetch(cells) {
      const hearing = await service.host.ask({
        url: addressOf(service, cells),
        weight: cells.length * weightOf(service),
        read: (text) => bodiesOf(text, cells.length, read),
      });
      if (hearing.kind !== "heard") {
        return { kind: "failed", why: hearing.kind === "unheard" ? hearing.why : "sent nothing" };
      }
      const fetchedAt = new Date(service.nowMs());
      const answers = hearing.value.map((body) => ({
        body,
        fetchedAt,
        expiresAt: fetchedAt,
        lastModified: null,
      }));
      return { kind: "answered", answers };
    },
  };
}

function addressOf(service: OpenMeteoService, cells: readonly Cell[]): string {
  const options = [
    `latitude=${cells.map((cell) => cell.latitude).join(",")}`,
    `longitude=${cells.map((cell) => cell.longitude).join(",")}`,
    `hourly=${service.variables.join(",")}`,
    ...(service.models.length > 0 ? [`models=${service.models.join(",")}`, "wind_speed_unit=ms"] : []),
    "timezone=GMT",
    "timeformat=unixtime",
    `past_days=${service.days.past}`,
    `forecast_days=${service.days.ahead}`,
  ];
  return `${service.address}?${options.join("&")}`;
}

/** Its own weighing of one place: ten variables of one model for a fortnight are 1. */
function weightOf({ variables, models, days }: OpenMeteoService): number {
  const fortnights = Math.max(1, (days.past + days.ahead) / 14);
  return Math.max(1, ((variables.length * Math.max(1, models.length)) / 10) * fortnights);
}

/** Each place's part of an answer, as text of its own, and each one readable. */
function bodiesOf(text: string, count: number, read: (body: string) => ReadForecast): string[] {
  const answer = parsedJson(text);
  const places = Array.isArray(answer) ? answer : [answer];
  if (places.length !== count) {
    throw new UnreadableAnswer(`${places.length} places where ${count} were asked for`);
  }
  return places.map((place) => {
    const body = JSON.stringify(place);
    read(body);
    return body;
  });
}

/** How long it asks us to stay away: its counters begin anew at the minute, the hour and midnight UTC. */
export function openMeteoPauseMs({ status, text }: Refusal, nowMs: number): number | null {
  if (status !== 429) return null;
  const untilNext = (spanMs: number) => spanMs - (nowMs % spanMs);
  if (/minutely/i.test(text)) return untilNext(60_000);
  if (/hourly/i.test(text)) return untilNext(MS_PER_HOUR);
  return /daily/i.test(text) ? untilNext(24 * MS_PER_HOUR) : null;
}
