/**
 * When the sky is of no use for anything else: hours for darks and bias.
 *
 * @packageDocumentation
 */
import { type Interval, subtractIntervals } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import type { ForecastHour } from "../weather/forecast-hour.ts";
import { weatherAt } from "../weather/interpolate.ts";

export type IdleSpan = Interval & { readonly why: "cloud" | "moon" };

const STEP_MS = 10 * 60_000;

/**
 * The cloudy and the moonlit hours of a night, in order.
 *
 * @param hours - the merged forecast; none gives the moonlit hours alone
 * @param cloudPercent - more cloud than this makes an hour cloudy
 */
export function idleHours(
  times: NightTimes,
  hours: readonly ForecastHour[],
  cloudPercent: number,
): readonly IdleSpan[] {
  const cloudy = times.workingWindows.flatMap((window) => cloudySpans(window, hours, cloudPercent));
  const moonlit = subtractIntervals(subtractIntervals(times.darkWindows, times.moonFreeDarkWindows), cloudy);
  return [
    ...cloudy.map((span) => ({ ...span, why: "cloud" as const })),
    ...moonlit.map((span) => ({ ...span, why: "moon" as const })),
  ].sort((one, other) => one.start.getTime() - other.start.getTime());
}

function cloudySpans(window: Interval, hours: readonly ForecastHour[], cloudPercent: number): Interval[] {
  const spans: { start: Date; end: Date }[] = [];
  for (let ms = window.start.getTime(); ms < window.end.getTime(); ms += STEP_MS) {
    const cloud = weatherAt(hours, new Date(ms))?.cloudPercent ?? null;
    if (cloud === null || cloud <= cloudPercent) continue;
    const end = new Date(Math.min(ms + STEP_MS, window.end.getTime()));
    const last = spans.at(-1);
    if (last && last.end.getTime() === ms) last.end = end;
    else spans.push({ start: new Date(ms), end });
  }
  return spans;
}
