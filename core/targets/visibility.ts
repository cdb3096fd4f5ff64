/**
 * When a target can be used: clear of the skyline and high enough, within given spans.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { SkylinePoint } from "../site.ts";
import { skylineAltitudeDeg } from "./skyline.ts";

/** Where something stands: airless altitude, azimuth from north through east, degrees. */
export type Horizontal = { readonly altitudeDeg: number; readonly azimuthDeg: number };

/** Places one target at any instant of the night, for one site. */
export type Placer = (at: Date) => Horizontal;

/** What an object must clear: the site's skyline, and an altitude that the work asks for. */
export type Clearance = {
  readonly skyline: readonly SkylinePoint[];
  /** Least altitude, degrees; applies even over a lower skyline. */
  readonly leastAltitudeDeg: number;
};

/** Steps of the search: a sight between two buildings shorter than this may be missed. */
const STEP_MS = 2 * 60_000;

/** Edges are found to this. */
const EDGE_MS = 250;

/** How far above what it must clear a target stands; negative below it, degrees. */
export function clearanceDeg(place: Horizontal, clearance: Clearance): number {
  const skylineDeg = skylineAltitudeDeg(clearance.skyline, place.azimuthDeg);
  return place.altitudeDeg - Math.max(clearance.leastAltitudeDeg, skylineDeg);
}

/**
 * The parts of the spans in which the target clears the skyline and the least altitude.
 *
 * @param place - the target's place at any instant
 * @param within - spans to look in, in order
 * @returns spans in order; edges good to a quarter of a second, sights under two minutes may be missed
 */
export function visibleIntervals(
  place: Placer,
  clearance: Clearance,
  within: readonly Interval[],
): Interval[] {
  const margin = (ms: number) => clearanceDeg(place(new Date(ms)), clearance);
  return within.flatMap((span) => spansAbove(margin, span.start.getTime(), span.end.getTime()));
}

/** Where a continuous function is at or above zero between two instants. */
function spansAbove(margin: (ms: number) => number, startMs: number, endMs: number): Interval[] {
  const spans: Interval[] = [];
  const steps = Math.max(1, Math.ceil((endMs - startMs) / STEP_MS));
  let before = startMs;
  let wasAbove = margin(before) >= 0;
  let openedMs = wasAbove ? startMs : null;
  for (let step = 1; step <= steps; step++) {
    const now = step === steps ? endMs : startMs + ((endMs - startMs) * step) / steps;
    const isAbove = margin(now) >= 0;
    if (isAbove !== wasAbove) {
      const edge = edgeBetween(margin, before, now, wasAbove);
      if (isAbove) openedMs = edge;
      else if (openedMs !== null) {
        spans.push({ start: new Date(openedMs), end: new Date(edge) });
        openedMs = null;
      }
    }
    before = now;
    wasAbove = isAbove;
  }
  if (openedMs !== null && openedMs < endMs) spans.push({ start: new Date(openedMs), end: new Date(endMs) });
  return spans;
}

function edgeBetween(
  margin: (ms: number) => number,
  fromMs: number,
  toMs: number,
  aboveAtFrom: boolean,
): number {
  let low = fromMs;
  let high = toMs;
  while (high - low > EDGE_MS) {
    const middle = (low + high) / 2;
    if (margin(middle) >= 0 === aboveAtFrom) low = middle;
    else high = middle;
  }
  return Math.round((low + high) / 2);
}
