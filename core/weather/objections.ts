/**
 * What speaks against observing in some weather, each with its value and the limit it broke.
 *
 * A value exactly at its limit passes. What is unknown raises no objection, save cloud:
 * without cloud nothing is known.
 *
 * @packageDocumentation
 */
import { withDewPoint } from "./dew.ts";
import type { ForecastHour } from "./forecast-hour.ts";
import type { ObservingLimits } from "./observing-limits.ts";

export type Objection =
  | { readonly kind: "cloud"; readonly percent: number; readonly limitPercent: number }
  | { readonly kind: "cloud-unknown" }
  | { readonly kind: "rain"; readonly millimetres: number; readonly limitMillimetres: number }
  /** The one limit that must not be reached: under 20 %, as the club says it. */
  | { readonly kind: "rain-chance"; readonly percent: number; readonly underPercent: number }
  | {
      readonly kind: "gusts";
      readonly metresPerSecond: number;
      readonly limitMetresPerSecond: number;
    }
  /** Where no gusts are given: the mean wind alone is already over the limit for gusts. */
  | { readonly kind: "wind"; readonly metresPerSecond: number; readonly limitMetresPerSecond: number }
  | { readonly kind: "fog"; readonly percent: number; readonly limitPercent: number }
  | { readonly kind: "visibility"; readonly metres: number; readonly limitMetres: number }
  | {
      readonly kind: "fog-risk";
      readonly spreadCelsius: number;
      readonly limitSpreadCelsius: number;
      readonly windMetresPerSecond: number;
      readonly limitWindMetresPerSecond: number;
    };

export type ObjectionKind = Objection["kind"];

/** `usable` is the club's own limit; `poor` the poorer one that counts toward a marginal night. */
export type Grade = "usable" | "poor";

/**
 * Everything that speaks against observing in one weather; empty means usable.
 *
 * @param hour - the weather at an instant
 * @param grade - by which limits
 */
export function objections(
  hour: ForecastHour,
  limits: ObservingLimits,
  grade: Grade = "usable",
): readonly Objection[] {
  return [
    ...cloudObjections(hour, limits, grade),
    ...rainObjections(hour, limits),
    ...windObjections(hour, limits),
    ...fogObjections(hour, limits, grade),
  ];
}

function cloudObjections(hour: ForecastHour, limits: ObservingLimits, grade: Grade): Objection[] {
  const percent = hour.cloudPercent;
  if (percent === null) return [{ kind: "cloud-unknown" }];
  const plain = grade === "usable" ? limits.cloudPercent : limits.poorCloudPercent;
  const limitPercent = isHighCloudAlone(hour, limits) ? Math.max(plain, limits.highCloudPercent) : plain;
  return percent > limitPercent ? [{ kind: "cloud", percent, limitPercent }] : [];
}

/** Providers round each layer to whole percents: their sum may fall short by as much. */
const ROUNDING_PERCENT = 1;

/** Low and middle layers all but empty, and the layers together enough for the total. */
function isHighCloudAlone(hour: ForecastHour, limits: ObservingLimits): boolean {
  const { lowCloudPercent, midCloudPercent } = hour;
  const unaccounted = cloudOutsideLayers(hour);
  return (
    unaccounted !== null &&
    unaccounted <= ROUNDING_PERCENT &&
    lowCloudPercent !== null &&
    midCloudPercent !== null &&
    lowCloudPercent <= limits.otherLayersPercent &&
    midCloudPercent <= limits.otherLayersPercent
  );
}

/** Total cloud that the layers cannot make up even side by side; `null` when a layer is unknown. */
function cloudOutsideLayers(hour: ForecastHour): number | null {
  const { cloudPercent, lowCloudPercent, midCloudPercent, highCloudPercent } = hour;
  if (cloudPercent === null || lowCloudPercent === null) return null;
  if (midCloudPercent === null || highCloudPercent === null) return null;
  return cloudPercent - lowCloudPercent - midCloudPercent - highCloudPercent;
}

function rainObjections(hour: ForecastHour, limits: ObservingLimits): Objection[] {
  const found: Objection[] = [];
  const { precipitationMm: millimetres, precipitationProbabilityPercent: percent } = hour;
  if (millimetres !== null && millimetres > limits.precipitationMm) {
    found.push({ kind: "rain", millimetres, limitMillimetres: limits.precipitationMm });
  }
  if (percent !== null && percent >= limits.precipitationProbabilityPercent) {
    found.push({ kind: "rain-chance", percent, underPercent: limits.precipitationProbabilityPercent });
  }
  return found;
}

function windObjections(hour: ForecastHour, limits: ObservingLimits): Objection[] {
  const limitMetresPerSecond = limits.gustMetresPerSecond;
  const { gustMetresPerSecond, windMetresPerSecond } = hour;
  if (gustMetresPerSecond !== null) {
    if (gustMetresPerSecond <= limitMetresPerSecond) return [];
    return [{ kind: "gusts", metresPerSecond: gustMetresPerSecond, limitMetresPerSecond }];
  }
  if (windMetresPerSecond === null || windMetresPerSecond <= limitMetresPerSecond) return [];
  return [{ kind: "wind", metresPerSecond: windMetresPerSecond, limitMetresPerSecond }];
}

/** Two decimal temperatures a degree apart differ by a hair more or less in binary. */
const ROUNDING_CELSIUS = 1e-9;

function fogObjections(hour: ForecastHour, limits: ObservingLimits, grade: Grade): Objection[] {
  const found: Objection[] = [];
  const { fogPercent: percent, visibilityMetres: metres } = hour;
  if (percent !== null && percent > limits.fogPercent) {
    found.push({ kind: "fog", percent, limitPercent: limits.fogPercent });
  }
  if (metres !== null && metres < limits.visibilityMetres) {
    found.push({ kind: "visibility", metres, limitMetres: limits.visibilityMetres });
  }
  if (grade === "poor") return found;
  const spread = spreadCelsius(hour);
  const windMetresPerSecond = hour.windMetresPerSecond;
  if (spread === null || windMetresPerSecond === null) return found;
  const limitSpreadCelsius = limits.fogRiskSpreadCelsius;
  const limitWindMetresPerSecond = limits.fogRiskWindMetresPerSecond;
  if (spread <= limitSpreadCelsius + ROUNDING_CELSIUS && windMetresPerSecond < limitWindMetresPerSecond) {
    found.push({
      kind: "fog-risk",
      spreadCelsius: spread,
      limitSpreadCelsius,
      windMetresPerSecond,
      limitWindMetresPerSecond,
    });
  }
  return found;
}

type Threshold = { readonly value: (hour: ForecastHour) => number | null; readonly limit: number };

/** Every linear quantity whose passing of a limit may change the objections. */
export function thresholds(limits: ObservingLimits): readonly Threshold[] {
  return [
    { value: (hour) => hour.cloudPercent, limit: limits.cloudPercent },
    { value: (hour) => hour.cloudPercent, limit: limits.poorCloudPercent },
    { value: (hour) => hour.cloudPercent, limit: limits.highCloudPercent },
    { value: (hour) => hour.lowCloudPercent, limit: limits.otherLayersPercent },
    { value: (hour) => hour.midCloudPercent, limit: limits.otherLayersPercent },
    { value: cloudOutsideLayers, limit: ROUNDING_PERCENT },
    { value: (hour) => hour.windMetresPerSecond, limit: limits.gustMetresPerSecond },
    { value: (hour) => hour.windMetresPerSecond, limit: limits.fogRiskWindMetresPerSecond },
    { value: (hour) => hour.fogPercent, limit: limits.fogPercent },
    { value: (hour) => hour.visibilityMetres, limit: limits.visibilityMetres },
    { value: spreadCelsius, limit: limits.fogRiskSpreadCelsius },
  ];
}

function spreadCelsius(hour: ForecastHour): number | null {
  const { temperatureCelsius, dewPointCelsius } = withDewPoint(hour);
  return temperatureCelsius === null || dewPointCelsius === null
    ? null
    : temperatureCelsius - dewPointCelsius;
}
