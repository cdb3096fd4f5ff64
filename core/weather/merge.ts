/**
 * Several models made one, hour by hour, by the median.
 *
 * Cloud layers are taken from one provider alone, for each parts the sky at other
 * heights; the dew point is the median air less the median spread, each spread
 * being taken within one model.
 *
 * @packageDocumentation
 */
import { withDewPoint } from "./dew.ts";
import type { ForecastHour, ModelForecast } from "./forecast-hour.ts";
import {
  firstAtOrAfter,
  type InstantQuantity,
  LONGEST_STEP_MS,
  type PeriodQuantity,
  periodStartMs,
  weatherAt,
} from "./interpolate.ts";

/**
 * The middle value, or the mean of the middle two; `null` of none.
 */
export function median(values: readonly number[]): number | null {
  const ordered = [...values].sort((one, other) => one - other);
  const upper = ordered[ordered.length >> 1];
  if (upper === undefined) return null;
  const lower = ordered[(ordered.length - 1) >> 1] ?? upper;
  return lower === upper ? upper : (lower + upper) / 2;
}

/**
 * The median of several models at every instant that any of them gives cloud for.
 *
 * @param models - one provider's, or several
 * @returns hours in order of time; of a single model its own
 *
 * @remarks
 * A model whose steps are longer speaks at the instants between as well, running
 * linearly; its rain is shared out evenly over its step.
 */
export function mergedHours(models: readonly ModelForecast[]): ForecastHour[] {
  const filled: readonly ModelForecast[] = models.map((model) => ({
    ...model,
    hours: model.hours.map(withDewPoint),
  }));
  const layered = modelsWithOneLayering(filled);
  return gridOf(filled).map((ms, index, grid) => {
    const at = new Date(ms);
    const beforeMs = startOfStep(grid[index - 1], ms);
    const said = filled.flatMap((model) => weatherAt(model.hours, at) ?? []);
    const saidOfLayers = layered.flatMap((model) => weatherAt(model.hours, at) ?? []);
    const instant = (quantity: InstantQuantity, among = said) =>
      median(among.flatMap((hour) => hour[quantity] ?? []));
    const period = (quantity: PeriodQuantity, one: (shares: readonly Share[]) => number | []) =>
      median(filled.flatMap((model) => one(periodsBetween(model.hours, quantity, beforeMs, ms))));
    const temperatureCelsius = instant("temperatureCelsius");
    const spreadCelsius = median(said.flatMap((hour) => spreadOf(hour) ?? []));
    return {
      at,
      cloudPercent: instant("cloudPercent"),
      lowCloudPercent: instant("lowCloudPercent", saidOfLayers),
      midCloudPercent: instant("midCloudPercent", saidOfLayers),
      highCloudPercent: instant("highCloudPercent", saidOfLayers),
      temperatureCelsius,
      dewPointCelsius:
        temperatureCelsius === null || spreadCelsius === null ? null : temperatureCelsius - spreadCelsius,
      humidityPercent: instant("humidityPercent"),
      windMetresPerSecond: instant("windMetresPerSecond"),
      gustMetresPerSecond: period("gustMetresPerSecond", mostOf),
      precipitationMm: period("precipitationMm", sumOf),
      precipitationProbabilityPercent: period("precipitationProbabilityPercent", mostOf),
      fogPercent: instant("fogPercent"),
      visibilityMetres: instant("visibilityMetres"),
      aerosolOpticalDepth: instant("aerosolOpticalDepth"),
      upperWindMetresPerSecond: instant("upperWindMetresPerSecond"),
    };
  });
}

/** Where the time before an instant of the grid begins; `null` at its start and after a gap. */
function startOfStep(beforeMs: number | undefined, ms: number): number | null {
  return beforeMs === undefined || ms - beforeMs > LONGEST_STEP_MS ? null : beforeMs;
}

/** Every instant some model gives cloud for; of models without cloud, every instant. */
function gridOf(models: readonly ModelForecast[]): number[] {
  const all = models.flatMap((model) => model.hours);
  const withCloud = all.filter((hour) => hour.cloudPercent !== null);
  const instants = (withCloud.length > 0 ? withCloud : all).map((hour) => hour.at.getTime());
  return [...new Set(instants)].sort((one, other) => one - other);
}

/** The models that part the sky as most of them do; of two ways alike, the first. */
function modelsWithOneLayering(models: readonly ModelForecast[]): ModelForecast[] {
  const groups = new Map<string, ModelForecast[]>();
  for (const model of models) {
    if (model.hours.every((hour) => hour.lowCloudPercent === null)) continue;
    const key = model.layerBoundariesMetres.join("/");
    groups.set(key, [...(groups.get(key) ?? []), model]);
  }
  let largest: ModelForecast[] = [];
  for (const group of groups.values()) if (group.length > largest.length) largest = group;
  return largest;
}

function spreadOf({ temperatureCelsius, dewPointCelsius }: ForecastHour): number | null {
  return temperatureCelsius === null || dewPointCelsius === null
    ? null
    : temperatureCelsius - dewPointCelsius;
}

type Share = { readonly value: number; readonly ofItsPeriod: number };

/** A model's known values for the time between two instants of the merged grid, each with its share of that time. */
function periodsBetween(
  hours: readonly ForecastHour[],
  quantity: PeriodQuantity,
  beforeMs: number | null,
  ms: number,
): Share[] {
  const shares: Share[] = [];
  const from = beforeMs ?? periodStartMs(hours, firstAtOrAfter(hours, ms));
  for (let index = firstAtOrAfter(hours, from + 1); index < hours.length; index += 1) {
    const endMs = hours[index]?.at.getTime() ?? Number.NaN;
    const startMs = periodStartMs(hours, index);
    if (startMs >= ms) break;
    const value = hours[index]?.[quantity] ?? null;
    const sharedMs = Math.min(endMs, ms) - Math.max(startMs, from);
    if (value !== null && sharedMs > 0) shares.push({ value, ofItsPeriod: sharedMs / (endMs - startMs) });
  }
  return shares;
}

function sumOf(shares: readonly Share[]): number | [] {
  return shares.length === 0 ? [] : shares.reduce((sum, share) => sum + share.value * share.ofItsPeriod, 0);
}

function mostOf(shares: readonly Share[]): number | [] {
  return shares.length === 0 ? [] : Math.max(...shares.map((share) => share.value));
}
