/**
 * The mean of a quantity over some spans.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { ForecastHour } from "./forecast-hour.ts";
import { type InstantQuantity, LONGEST_STEP_MS } from "./interpolate.ts";

/**
 * Mean over time, with the quantity running linearly between instants.
 *
 * @param hours - in order of time
 * @param spans - not overlapping
 * @returns over the part that is known; `null` when none is
 */
export function meanOver(
  hours: readonly ForecastHour[],
  quantity: InstantQuantity,
  spans: readonly Interval[],
): number | null {
  let sum = 0;
  let lengthMs = 0;
  let from: { readonly ms: number; readonly value: number } | null = null;
  for (const hour of hours) {
    const value = hour[quantity];
    if (value === null) continue;
    const to = { ms: hour.at.getTime(), value };
    if (from !== null && to.ms - from.ms <= LONGEST_STEP_MS) {
      for (const span of spans) {
        const startMs = Math.max(from.ms, span.start.getTime());
        const endMs = Math.min(to.ms, span.end.getTime());
        if (startMs >= endMs) continue;
        const middle = ((startMs + endMs) / 2 - from.ms) / (to.ms - from.ms);
        sum += (from.value + (to.value - from.value) * middle) * (endMs - startMs);
        lengthMs += endMs - startMs;
      }
    }
    from = to;
  }
  return lengthMs === 0 ? null : sum / lengthMs;
}
