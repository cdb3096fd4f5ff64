/**
 * The weather services opened: forecasts and places over one set of connections.
 *
 * @packageDocumentation
 */
import { setTimeout as sleepFor } from "node:timers/promises";
import type { Places } from "../../commands/context.ts";
import {
  type AllowanceWindow,
  ANSWER_BUDGET_MS,
  MET_NORWAY_ALLOWANCE,
  OPEN_METEO_ALLOWANCE,
  PATIENCE,
  type Patience,
  USER_AGENT_NAME,
} from "../../config/forecast-services.ts";
import { airQuality } from "./air-quality.ts";
import { Allowance } from "./allowance.ts";
import { type ForecastCache, memoryCache } from "./cache.ts";
import { geocodedPlaces } from "./geocoding.ts";
import { httpExchanger } from "./http-exchange.ts";
import { type LiveForecasts, liveForecasts } from "./live-forecasts.ts";
import { metNorway } from "./met-norway.ts";
import { openMeteo, openMeteoPauseMs } from "./open-meteo.ts";
import { type HostRules, type HostTools, PoliteHost } from "./polite-host.ts";

export type ForecastSettings = {
  /** Where each service is asked, without a slash at the end. */
  readonly hosts: {
    readonly openMeteo: string;
    readonly airQuality: string;
    readonly geocoding: string;
    readonly metNorway: string;
  };
  /** Who runs this bot: goes into the User-Agent; `null` when not set. */
  readonly contact: string | null;
  /** Default: in memory. */
  readonly cache?: ForecastCache;
  /** How long one answer waits for the weather, all services together. */
  readonly budgetMs?: number;
  readonly patience?: Patience;
  /** Epoch milliseconds; default: the system's clock. */
  readonly nowMs?: () => number;
  readonly sleep?: (ms: number) => Promise<void>;
  /** For the log; default: nothing. */
  readonly warn?: (sentence: string) => void;
};

export type Weather = {
  readonly forecasts: LiveForecasts;
  readonly places: Places;
  /** Ends what is under way. */
  close(): Promise<void>;
};

/** Opens the services; nothing is asked before the first question. */
export function openWeather(settings: ForecastSettings): Weather {
  const patience = settings.patience ?? PATIENCE;
  const nowMs = settings.nowMs ?? Date.now;
  const warn = settings.warn ?? (() => undefined);
  const exchanger = httpExchanger(userAgentOf(settings.contact), patience);
  const tools: HostTools = {
    exchanger,
    patience,
    nowMs,
    warn,
    sleep: settings.sleep ?? ((ms) => sleepFor(ms, undefined, { ref: false })),
    random: Math.random,
  };
  const host = (name: string, windows: readonly AllowanceWindow[], pauseMs?: HostRules["pauseMs"]) =>
    new PoliteHost(
      { name, allowance: new Allowance(windows), ...(pauseMs === undefined ? {} : { pauseMs }) },
      tools,
    );
  const { hosts } = settings;
  const sources = [
    openMeteo(host("Open-Meteo", OPEN_METEO_ALLOWANCE, openMeteoPauseMs), hosts.openMeteo, nowMs),
    metNorway(host("MET Norway", MET_NORWAY_ALLOWANCE), hosts.metNorway, nowMs),
    airQuality(
      host("Open-Meteo air quality", OPEN_METEO_ALLOWANCE, openMeteoPauseMs),
      hosts.airQuality,
      nowMs,
    ),
  ];
  return {
    forecasts: liveForecasts({
      sources,
      cache: settings.cache ?? memoryCache(),
      nowMs,
      budgetMs: settings.budgetMs ?? ANSWER_BUDGET_MS,
      failedPauseMs: patience.failedPauseMs,
      sleep: tools.sleep,
      random: tools.random,
      warn,
    }),
    places: geocodedPlaces(host("Open-Meteo", OPEN_METEO_ALLOWANCE, openMeteoPauseMs), hosts.geocoding),
    close: () => exchanger.close(),
  };
}

/** A name, and whom to write to: services refuse those who hide. */
export function userAgentOf(contact: string | null): string {
  return contact === null ? USER_AGENT_NAME : `${USER_AGENT_NAME} (${contact})`;
}
