/**
 * The demo's sample forecast: invented hours, laid on tonight by whole days and marked as a sample.
 *
 * @packageDocumentation
 */
import { existsSync, readFileSync } from "node:fs";
import type { Forecasts } from "../../commands/context.ts";
import { MS_PER_DAY, MS_PER_HOUR } from "../../core/sky/time.ts";
import { readSavedForecast } from "./saved-files.ts";

/** From the sources, and from the compiled copy one folder deeper. */
const PLACES_OF_THE_FILE = [
  "../../config/data/demo-forecast.json",
  "../../../config/data/demo-forecast.json",
];

/** The file's first night is the one before tonight; its hours begin at noon UTC. */
const NIGHTS_BEFORE_TONIGHT = 1;
const FIRST_HOUR_OF_DAY = 12;

/** A day of the sample begins here: late enough for the night in progress, early enough for the coming one. */
const NEW_DAY_HOUR = 6;

/**
 * Forecasts from the sample, whatever the place; for the demo at the terminal alone.
 *
 * @throws Error when the shipped file is missing or damaged
 */
export function sampleForecasts(): Forecasts {
  const url = PLACES_OF_THE_FILE.map((place) => new URL(place, import.meta.url)).find(existsSync);
  if (url === undefined) throw new Error("config/data/demo-forecast.json is missing");
  const { models, credits } = readSavedForecast(readFileSync(url, "utf8"), "demo-forecast.json");
  const startMs = Math.min(...models.flatMap((model) => model.hours[0]?.at.getTime() ?? []));
  return {
    async at(_place, from) {
      const today = Math.floor((from.getTime() - NEW_DAY_HOUR * MS_PER_HOUR) / MS_PER_DAY);
      const firstMs = (today - NIGHTS_BEFORE_TONIGHT) * MS_PER_DAY + FIRST_HOUR_OF_DAY * MS_PER_HOUR;
      const shiftMs = firstMs - startMs;
      const laid = models.map((model) => ({
        ...model,
        hours: model.hours.map((hour) => ({ ...hour, at: new Date(hour.at.getTime() + shiftMs) })),
      }));
      return { models: laid, credits, problems: [] };
    },
  };
}

/** The live weather, or the sample where nothing live is known. */
export function liveOrSample(live: Forecasts, sample: Forecasts): Forecasts {
  return {
    async at(place, from) {
      const report = await live.at(place, from);
      if (report.models.length > 0) return report;
      return { ...(await sample.at(place, from)), problems: report.problems };
    },
  };
}
