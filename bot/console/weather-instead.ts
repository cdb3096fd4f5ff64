/**
 * What `--forecast` puts in the place of the network: saved files, or nothing at all.
 *
 * @packageDocumentation
 */
import type { WeatherInstead } from "../world.ts";

/**
 * @param words - the flag's values; none means the network may be asked
 * @throws AskError in `forecast` when a file cannot be read
 */
export async function weatherInstead(words: readonly string[]): Promise<WeatherInstead> {
  if (words.length === 0) return null;
  const [{ NO_FORECASTS, savedForecasts }, { NO_PLACES }] = await Promise.all([
    import("../forecast/saved-files.ts"),
    import("../forecast/geocoding.ts"),
  ]);
  const forecasts = words.includes("none") ? NO_FORECASTS : savedForecasts(words);
  return { forecasts, places: NO_PLACES };
}
