/**
 * Forecasts from files that somebody saved: the provider is recognised by the shape,
 * the place is taken to be the one asked about, and nothing is fetched.
 *
 * @packageDocumentation
 */
import { readFileSync, statSync } from "node:fs";
import { AskError } from "../../commands/ask-error.ts";
import type { ForecastReport, Forecasts } from "../../commands/context.ts";
import { CREDITS, SAVED_FORECAST_BYTES_AT_MOST } from "../../config/forecast-services.ts";
import { AIR_QUALITY_NAME } from "./air-quality.ts";
import { member, parsedJson } from "./json-shape.ts";
import { looksLikeMetNorway, readMetNorway } from "./met-norway.ts";
import { readOpenMeteo } from "./open-meteo-answer.ts";
import { UnreadableAnswer } from "./polite-host.ts";
import type { ReadForecast } from "./weather-source.ts";

/** No weather at all: no verdict, and no request. */
export const NO_FORECASTS: Forecasts = {
  async at() {
    return { models: [], credits: [], problems: [] };
  },
};

/**
 * Forecasts from saved files, all of them together.
 *
 * @param paths - of at least one file
 * @throws AskError in `forecast` when a file cannot be read or holds no forecast
 */
export function savedForecasts(paths: readonly string[]): Forecasts {
  const reports = paths.map((path) => readSavedForecast(savedText(path), path));
  const report: ForecastReport = {
    models: reports.flatMap((part) => part.models),
    credits: [...new Set(reports.flatMap((part) => part.credits))],
    problems: reports.flatMap((part) => part.problems),
  };
  return {
    async at() {
      return report;
    },
  };
}

function savedText(path: string): string {
  try {
    const { size } = statSync(path);
    if (size <= SAVED_FORECAST_BYTES_AT_MOST) return readFileSync(path, "utf8");
  } catch (fault) {
    const code = fault instanceof Error && "code" in fault ? fault.code : null;
    const why = code === "ENOENT" ? "there is no such file" : "it cannot be read";
    throw refusal(path, `${why}`);
  }
  throw refusal(path, `it is larger than ${Math.floor(SAVED_FORECAST_BYTES_AT_MOST / 1_048_576)} MB`);
}

/**
 * Reads one saved answer.
 *
 * @param name - the file's name, for the message
 * @throws AskError in `forecast` when the text holds no forecast
 */
export function readSavedForecast(text: string, name: string): ForecastReport {
  try {
    const answer = parsedJson(text.replace(/^\uFEFF/, ""));
    if (looksLikeMetNorway(answer)) return credited(readMetNorway(answer), CREDITS.metNorway);
    if (member(answer, "sample") === true) return sampleReport(answer);
    const isAir = hasAerosolAlone(answer);
    return credited(
      readOpenMeteo(answer, isAir ? AIR_QUALITY_NAME : "Open-Meteo"),
      isAir ? CREDITS.airQuality : CREDITS.openMeteo,
    );
  } catch (fault) {
    if (!(fault instanceof UnreadableAnswer)) throw fault;
    throw refusal(name, `it holds no forecast that I know (${fault.message})`);
  }
}

function credited({ models, problems }: ReadForecast, credit: string): ForecastReport {
  return { models, problems, credits: models.length === 0 ? [] : [credit] };
}

/** The demo's own file says of itself that it is invented. */
function sampleReport(answer: unknown): ForecastReport {
  const { models, problems } = readOpenMeteo(answer, "Sample");
  return credited({ models: models.map((model) => ({ ...model, sample: true })), problems }, CREDITS.sample);
}

function hasAerosolAlone(answer: unknown): boolean {
  const hourly = member(Array.isArray(answer) ? answer[0] : answer, "hourly");
  const names = typeof hourly === "object" && hourly !== null ? Object.keys(hourly) : [];
  return (
    names.some((name) => name.startsWith("aerosol_optical_depth")) &&
    !names.some((name) => name.startsWith("cloud"))
  );
}

function refusal(path: string, why: string): AskError {
  const shown = path.length > 80 ? `…${path.slice(-79)}` : path;
  return new AskError(
    "unreadable-forecast",
    "forecast",
    `“forecast” cannot use ${shown}: ${why}. Give a JSON answer saved from Open-Meteo or MET Norway, or none.`,
  );
}
