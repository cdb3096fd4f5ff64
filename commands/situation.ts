/**
 * Where, when and under what sky a question is asked: gathered once, for commands about a night.
 *
 * @packageDocumentation
 */
import { PHOTOMETRY } from "../config/photometry.ts";
import { UNKNOWN_AIR_CELSIUS } from "../config/rig-defaults.ts";
import type { Interval } from "../core/interval.ts";
import type { NightTimes } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import { zenithMagArcsec2 } from "../core/night/sky-brightness.ts";
import type { Site } from "../core/site.ts";
import { aerosolExtinction } from "../core/targets/extinction.ts";
import { type ObservingConditions, observingConditions } from "../core/targets/observing-conditions.ts";
import type { ForecastHour } from "../core/weather/forecast-hour.ts";
import { weatherAt } from "../core/weather/interpolate.ts";
import { meanOver } from "../core/weather/mean.ts";
import { type NightVerdict, nightVerdict } from "../core/weather/verdict.ts";
import type { Context, ForecastReport } from "./context.ts";
import { limitsOf } from "./read/limits.ts";
import { nightOf } from "./read/night.ts";
import { siteOf } from "./read/site.ts";
import { skyOf } from "./read/sky.ts";
import type { Request } from "./request.ts";

export type Situation = {
  readonly site: Site;
  readonly times: NightTimes;
  readonly report: ForecastReport;
  readonly verdict: NightVerdict;
  /** Clear spans of the darkness; `null` when no forecast speaks of the night. */
  readonly clear: readonly Interval[] | null;
  readonly conditions: ObservingConditions;
  /** What was taken for want of data, a sentence each. */
  readonly assumptions: readonly string[];
};

/**
 * Gathers site, night, forecast and light.
 *
 * @throws AskError for a site, night or sky that cannot be read
 */
export async function situationOf(request: Request, context: Context): Promise<Situation> {
  const site = await siteOf(request, context);
  const sky = skyOf(request, site);
  const times = nightTimes(site, nightOf(request, site));
  const report = await context.forecasts.at(site, request.at);
  const verdict = nightVerdict(times, report.models, await limitsOf(request, context), request.at);
  const depth = meanOver(verdict.hours, "aerosolOpticalDepth", times.workingWindows);
  return {
    site,
    times,
    report,
    verdict,
    clear: verdict.kind === "unknown" ? null : verdict.usable,
    conditions: observingConditions({
      site,
      zenithMagArcsec2: zenithMagArcsec2(sky.quality, PHOTOMETRY.bortleMagArcsec2),
      aerosolExtinction: depth === null ? PHOTOMETRY.aerosolExtinction : aerosolExtinction(depth),
      photometry: PHOTOMETRY,
      airCelsiusAt: airOf(verdict.hours),
    }),
    assumptions: sky.assumption === null ? [] : [sky.assumption],
  };
}

/** The air by the hour, from the forecast where it reaches. */
function airOf(hours: readonly ForecastHour[]): (utMs: number) => number {
  return (utMs) => weatherAt(hours, new Date(utMs))?.temperatureCelsius ?? UNKNOWN_AIR_CELSIUS;
}
