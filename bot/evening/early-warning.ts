/**
 * What those who are out should know an hour ahead: the sky closing, dew or frost.
 *
 * @packageDocumentation
 */
import { WARN_AHEAD_MS } from "../../config/evening.ts";
import { weatherAt } from "../../core/weather/interpolate.ts";
import { objections } from "../../core/weather/objections.ts";
import type { ObservingLimits } from "../../core/weather/observing-limits.ts";
import type { NightVerdict } from "../../core/weather/verdict.ts";

export type EarlyWarning =
  | { readonly kind: "cloud"; readonly at: Date; readonly percent: number }
  | { readonly kind: "dew" | "frost"; readonly at: Date };

const MINUTE_MS = 60_000;

/**
 * What is forecast to begin within the hour.
 *
 * @param verdict - as judged now
 * @returns none when it is cloudy or wet already: nobody needs to be told
 */
export function earlyWarnings(
  verdict: NightVerdict,
  limits: ObservingLimits,
  at: Date,
): readonly EarlyWarning[] {
  return [...cloudWarning(verdict, limits, at), ...dewWarning(verdict, at)];
}

function isAhead(instant: Date, at: Date): boolean {
  const aheadMs = instant.getTime() - at.getTime();
  return aheadMs > 0 && aheadMs <= WARN_AHEAD_MS;
}

function cloudWarning(verdict: NightVerdict, limits: ObservingLimits, at: Date): readonly EarlyWarning[] {
  const run = verdict.usable.find((span) => span.start <= at && at < span.end);
  if (run === undefined || !isAhead(run.end, at)) return [];
  // Just after the run's end, so that what ended it shows; dawn ends a run without any cloud.
  const weather = weatherAt(verdict.hours, new Date(run.end.getTime() + 5 * MINUTE_MS));
  const cloud = weather === null ? [] : objections(weather, limits).filter(({ kind }) => kind === "cloud");
  return cloud.flatMap((one) =>
    one.kind === "cloud" ? [{ kind: "cloud" as const, at: run.end, percent: one.percent }] : [],
  );
}

function dewWarning(verdict: NightVerdict, at: Date): readonly EarlyWarning[] {
  const wetNow = verdict.dew.some((span) => span.start <= at && at < span.end);
  const next = verdict.dew.find((span) => isAhead(span.start, at));
  return wetNow || next === undefined
    ? []
    : [{ kind: next.kind === "frost" ? "frost" : "dew", at: next.start }];
}
