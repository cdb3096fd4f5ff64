/**
 * The weather between a model's instants.
 *
 * Cloud, temperature, wind and the like run linearly; gusts and rain belong to the
 * time before the instant they are given for (an hour, or the step if it is longer).
 *
 * @packageDocumentation
 */
import { MS_PER_HOUR } from "../sky/time.ts";
import type { ForecastHour } from "./forecast-hour.ts";

/** What is given for an instant. */
const INSTANT_QUANTITIES = [
  "cloudPercent",
  "lowCloudPercent",
  "midCloudPercent",
  "highCloudPercent",
  "temperatureCelsius",
  "dewPointCelsius",
  "humidityPercent",
  "windMetresPerSecond",
  "fogPercent",
  "visibilityMetres",
  "aerosolOpticalDepth",
  "upperWindMetresPerSecond",
] as const;

/** What is given for the time before an instant. */
const PERIOD_QUANTITIES = [
  "gustMetresPerSecond",
  "precipitationMm",
  "precipitationProbabilityPercent",
] as const;

export type InstantQuantity = (typeof INSTANT_QUANTITIES)[number];
export type PeriodQuantity = (typeof PERIOD_QUANTITIES)[number];

/** No service here gives coarser steps than six hours: a wider gap is a gap, and is not bridged. */
export const LONGEST_STEP_MS = 6 * MS_PER_HOUR;

/** Index of the first hour at or after an instant; `hours.length` when there is none. */
export function firstAtOrAfter(hours: readonly ForecastHour[], ms: number): number {
  let low = 0;
  let high = hours.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((hours[middle]?.at.getTime() ?? Number.POSITIVE_INFINITY) < ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * One quantity at an instant, running linearly between its known neighbours.
 *
 * @param hours - in order of time, no two alike
 * @returns `null` outside them, or across a gap longer than six hours
 */
export function instantValue(
  hours: readonly ForecastHour[],
  quantity: InstantQuantity,
  ms: number,
): number | null {
  return instantValueNear(hours, quantity, ms, firstAtOrAfter(hours, ms));
}

/** As {@link instantValue}, the first hour at or after the instant being known. */
function instantValueNear(
  hours: readonly ForecastHour[],
  quantity: InstantQuantity,
  ms: number,
  index: number,
): number | null {
  let after = index;
  while (after < hours.length && hours[after]?.[quantity] === null) after += 1;
  const next = hours[after];
  const nextValue = next?.[quantity] ?? null;
  if (next === undefined || nextValue === null) return null;
  const nextMs = next.at.getTime();
  if (nextMs === ms) return nextValue;
  let before = index - 1;
  while (before >= 0 && hours[before]?.[quantity] === null) before -= 1;
  const last = hours[before];
  const lastValue = last?.[quantity] ?? null;
  if (last === undefined || lastValue === null) return null;
  const lastMs = last.at.getTime();
  if (nextMs - lastMs > LONGEST_STEP_MS) return null;
  return lastValue + ((nextValue - lastValue) * (ms - lastMs)) / (nextMs - lastMs);
}

/** When the time begins that an hour's gusts and rain belong to. */
export function periodStartMs(hours: readonly ForecastHour[], index: number): number {
  const endMs = hours[index]?.at.getTime() ?? Number.NaN;
  const previousMs = hours[index - 1]?.at.getTime();
  if (previousMs === undefined || endMs - previousMs > LONGEST_STEP_MS) return endMs - MS_PER_HOUR;
  return previousMs;
}

/**
 * The weather at an instant.
 *
 * @param hours - one model's, or merged, in order of time, no two alike
 * @returns `null` when nothing at all is known then
 */
export function weatherAt(hours: readonly ForecastHour[], at: Date): ForecastHour | null {
  const ms = at.getTime();
  const index = firstAtOrAfter(hours, ms);
  const instant = (quantity: InstantQuantity) => instantValueNear(hours, quantity, ms, index);
  // Gusts and rain hold for the hour (or step) that the instant lies in.
  const end = ms > periodStartMs(hours, index) ? hours[index] : undefined;
  const period = (quantity: PeriodQuantity) => end?.[quantity] ?? null;
  const hour: ForecastHour = {
    at,
    cloudPercent: instant("cloudPercent"),
    lowCloudPercent: instant("lowCloudPercent"),
    midCloudPercent: instant("midCloudPercent"),
    highCloudPercent: instant("highCloudPercent"),
    temperatureCelsius: instant("temperatureCelsius"),
    dewPointCelsius: instant("dewPointCelsius"),
    humidityPercent: instant("humidityPercent"),
    windMetresPerSecond: instant("windMetresPerSecond"),
    gustMetresPerSecond: period("gustMetresPerSecond"),
    precipitationMm: period("precipitationMm"),
    precipitationProbabilityPercent: period("precipitationProbabilityPercent"),
    fogPercent: instant("fogPercent"),
    visibilityMetres: instant("visibilityMetres"),
    aerosolOpticalDepth: instant("aerosolOpticalDepth"),
    upperWindMetresPerSecond: instant("upperWindMetresPerSecond"),
  };
  return isKnown(hour) ? hour : null;
}

/** Whether an hour says anything. */
export function isKnown(hour: ForecastHour): boolean {
  return (
    INSTANT_QUANTITIES.some((quantity) => hour[quantity] !== null) ||
    PERIOD_QUANTITIES.some((quantity) => hour[quantity] !== null)
  );
}
