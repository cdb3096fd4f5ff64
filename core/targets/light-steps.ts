/**
 * Spans of time cut into steps over which the sky's light changes little: what sums over windows share.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import { rootBetween } from "../sky/roots.ts";
import { MS_PER_HOUR } from "../sky/time.ts";
import type { ObservingConditions } from "./observing-conditions.ts";

/** One step of a sum through spans of time: its middle, and how long it is. */
export type Step = { readonly utMs: number; readonly hours: number };

/** Steps of the sum: the light changes slowly. */
const STEP_MS = 5 * 60_000;

/** From one instant to another, epoch milliseconds. */
type Piece = { readonly from: number; readonly to: number };

/**
 * Cuts spans of time into steps of at most five minutes, on the clock's own fives: windows of many
 * targets then share their instants, and the light of each is worked out once.
 */
export function stepsThrough(windows: readonly Interval[]): Step[] {
  return pieces(windows).map(stepOf);
}

/**
 * As {@link stepsThrough}, and cut where the Moon rises or sets as well: moonlight begins all at once
 * there, and a step across it would be taken as lit or dark in whole.
 */
export function lightSteps(windows: readonly Interval[], conditions: ObservingConditions): Step[] {
  const height = (utMs: number) => conditions.lightAt(utMs).moonAltitudeDeg;
  return pieces(windows)
    .flatMap((piece) => cutAtZero(piece, height))
    .map(stepOf);
}

function pieces(windows: readonly Interval[]): Piece[] {
  return windows.flatMap(({ start, end }) => {
    const cut: Piece[] = [];
    let from = start.getTime();
    while (from < end.getTime()) {
      const to = Math.min(end.getTime(), (Math.floor(from / STEP_MS) + 1) * STEP_MS);
      cut.push({ from, to });
      from = to;
    }
    return cut;
  });
}

function cutAtZero({ from, to }: Piece, height: (utMs: number) => number): Piece[] {
  const early = height(from);
  const late = height(to);
  if (early > 0 === late > 0) return [{ from, to }];
  const at = Math.round(rootBetween(height, from, early, to, late));
  return [
    { from, to: at },
    { from: at, to },
  ].filter((piece) => piece.to > piece.from);
}

function stepOf({ from, to }: Piece): Step {
  return { utMs: (from + to) / 2, hours: (to - from) / MS_PER_HOUR };
}
