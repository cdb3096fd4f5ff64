/**
 * Open-Meteo's air quality: aerosol, for how clear the air is between the clouds.
 *
 * @packageDocumentation
 */
import { AIR_QUALITY_DAYS, CREDITS, REFRESH } from "../../config/forecast-services.ts";
import { openMeteoSource } from "./open-meteo.ts";
import type { PoliteHost } from "./polite-host.ts";
import type { WeatherSource } from "./weather-source.ts";

export const AIR_QUALITY_NAME = "Open-Meteo air quality";

/** The aerosol forecast as a source; it knows no cloud and has no vote. */
export function airQuality(host: PoliteHost, base: string, nowMs: () => number): WeatherSource {
  return openMeteoSource({
    host,
    nowMs,
    name: AIR_QUALITY_NAME,
    credit: CREDITS.airQuality,
    keyPrefix: "open-meteo-air/1",
    leastAgeMs: REFRESH.airQualityMs,
    address: `${base}/v1/air-quality`,
    variables: ["aerosol_optical_depth"],
    models: [],
    days: AIR_QUALITY_DAYS,
  });
}
