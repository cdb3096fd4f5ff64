/**
 * How the weather services are asked: how often, how much, how patiently, and whom to credit.
 *
 * The limits are the services' own, with room to spare; the rest is this project's choice.
 *
 * @packageDocumentation
 */
import { MS_PER_HOUR, MS_PER_MINUTE } from "../core/sky/time.ts";

/** Goes into every request, with the host's contact when it is set. */
export const USER_AGENT_NAME = "Duskbell/0.1";

/** Models asked of Open-Meteo: four centres, each its own finest over its global one. */
export const OPEN_METEO_MODELS: readonly string[] = [
  "icon_seamless",
  "gfs_seamless",
  "ecmwf_ifs025",
  "ukmo_seamless",
];

/** A day back, so that an evening west of Greenwich is whole; the last outlook's night ends on day nine. */
export const OPEN_METEO_DAYS = { past: 1, ahead: 10 } as const;
export const AIR_QUALITY_DAYS = { past: 1, ahead: 5 } as const;

/** Places in one request: a batch must weigh less than a minute's allowance. */
export const OPEN_METEO_CELLS_PER_REQUEST = 50;

/** Places share a forecast within so many degrees; nothing finer is ever sent. */
export const CELL_DEG = 0.1;

/** A span of time and the weight of requests it may hold. */
export type AllowanceWindow = { readonly spanMs: number; readonly weight: number };

/** Open-Meteo's free service allows 600 a minute, 5,000 an hour, 10,000 a day. */
export const OPEN_METEO_ALLOWANCE: readonly AllowanceWindow[] = [
  { spanMs: MS_PER_MINUTE, weight: 500 },
  { spanMs: MS_PER_HOUR, weight: 4500 },
  { spanMs: 24 * MS_PER_HOUR, weight: 9000 },
];

/** MET Norway allows 20 requests a second of one application in total. */
export const MET_NORWAY_ALLOWANCE: readonly AllowanceWindow[] = [{ spanMs: 1000, weight: 5 }];

export type Patience = {
  readonly connectMs: number;
  readonly totalMs: number;
  readonly bodyBytesAtMost: number;
  /** Tries in all; refusals are never tried again. */
  readonly tries: number;
  /** The first wait between tries; doubled each time, and spread at random by half either way. */
  readonly firstWaitMs: number;
  /** A service that asks for a longer wait is left alone for that long instead. */
  readonly longestWaitMs: number;
  /** No request queues for its share of the allowance longer than this. */
  readonly longestQueueMs: number;
  /** After a refusal such as 403 the service is left alone for so long. */
  readonly refusedPauseMs: number;
  /** A place whose request failed is not asked for again before. */
  readonly failedPauseMs: number;
};

export const PATIENCE: Patience = {
  connectMs: 5000,
  totalMs: 20_000,
  bodyBytesAtMost: 12_000_000,
  tries: 3,
  firstWaitMs: 700,
  longestWaitMs: 15_000,
  longestQueueMs: 5 * MS_PER_MINUTE,
  refusedPauseMs: MS_PER_HOUR,
  failedPauseMs: MS_PER_MINUTE,
};

/** How long an answer is good for before the place is asked for again, unless the service says longer. */
export const REFRESH = {
  ordinaryMs: 3 * MS_PER_HOUR,
  /** While an evening post is watched. */
  watchedMs: MS_PER_HOUR,
  /** Aerosol is computed twice a day. */
  airQualityMs: 6 * MS_PER_HOUR,
  /** A run over many places begins at random within so long. */
  prefetchJitterMs: 20_000,
  /** Older answers are not shown at all, even when nothing newer can be had. */
  uselessAfterMs: 48 * MS_PER_HOUR,
} as const;

/** How long an answer in chat waits for the weather; what comes later serves the next question. */
export const ANSWER_BUDGET_MS = 10_000;

/** Forecasts reach no further, and hours long past are not asked for. */
export const FORECAST_REACH = { pastHours: 24, aheadHours: 16 * 24 } as const;

export const CREDITS = {
  openMeteo: "Weather data by Open-Meteo.com (https://open-meteo.com/), CC BY 4.0, combined here.",
  airQuality: "Aerosol by CAMS through Open-Meteo.com (https://open-meteo.com/), CC BY 4.0.",
  metNorway: "Based on data from MET Norway (https://api.met.no/), CC BY 4.0.",
  sample: "Sample weather, invented for the demonstration.",
} as const;

/** Largest saved forecast that is read. */
export const SAVED_FORECAST_BYTES_AT_MOST = 10_485_760;
