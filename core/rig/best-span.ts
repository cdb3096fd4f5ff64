/**
 * The best part of a night's windows, when there are fewer hours than they offer.
 *
 * @packageDocumentation
 */
import { type Interval, totalHours } from "../interval.ts";
import { MS_PER_HOUR } from "../sky/time.ts";
import { stepsThrough } from "../targets/light-steps.ts";

/**
 * The run of usable time, of a given length, that is worth most.
 *
 * @param windows - usable spans in order; a run may pass from one into the next
 * @param hours - how much time there is, above 0
 * @param worthAt - what an instant is worth, in any unit
 * @returns the windows themselves when they hold no more than that
 */
export function bestSpan(
  windows: readonly Interval[],
  hours: number,
  worthAt: (utMs: number) => number,
): readonly Interval[] {
  if (totalHours(windows) <= hours) return windows;
  const steps = stepsThrough(windows).map((step) => ({ ...step, worth: worthAt(step.utMs) * step.hours }));
  let best = { first: 0, last: 0, worth: Number.NEGATIVE_INFINITY };
  let held = 0;
  let worth = 0;
  let first = 0;
  for (const [last, step] of steps.entries()) {
    held += step.hours;
    worth += step.worth;
    // Drop steps from the front while the run is still long enough without them.
    for (
      let front = steps[first];
      front !== undefined && held - front.hours >= hours - 1e-9;
      front = steps[first]
    ) {
      held -= front.hours;
      worth -= front.worth;
      first++;
    }
    if (held >= hours - 1e-9 && worth > best.worth) best = { first, last, worth };
  }
  const run = steps.slice(best.first, best.last + 1);
  const spans: Interval[] = [];
  let left = hours;
  for (const { utMs, hours: length } of run) {
    const start = utMs - (length / 2) * MS_PER_HOUR;
    const end = start + Math.min(length, left) * MS_PER_HOUR;
    left -= Math.min(length, left);
    const before = spans.at(-1);
    if (end <= start) break;
    if (before !== undefined && start - before.end.getTime() < 1) {
      spans[spans.length - 1] = { start: before.start, end: new Date(end) };
    } else {
      spans.push({ start: new Date(start), end: new Date(end) });
    }
  }
  return spans;
}
