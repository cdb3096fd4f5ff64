/**
 * An object's way across the night: cut where it meets the horizon, and drawn heavy
 * where usable, thin where poor, dotted where the skyline hides it.
 *
 * @packageDocumentation
 */
import type { NightChart, PathState } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import type { Scale } from "./scale.ts";
import { join, type Point, path, type Svg, through } from "./svg.ts";

type Path = NightChart["paths"][number];

/** A stretch of one state. */
export type Stretch = { readonly state: PathState; readonly points: readonly Point[] };

/**
 * The stretches above the level horizon between two instants.
 *
 * @remarks A step between two states belongs to the earlier one; points without a
 * finite altitude break the line.
 */
export function stretches(
  points: Path["points"],
  from: number,
  to: number,
  xOf: Scale,
  yOf: Scale,
): Stretch[] {
  const found: { state: PathState; points: Point[] }[] = [];
  let open = false;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a === undefined || b === undefined) continue;
    const piece = clipped(
      { t: a.at.getTime(), h: a.altitudeDeg },
      { t: b.at.getTime(), h: b.altitudeDeg },
      from,
      to,
    );
    if (piece === null) {
      open = false;
      continue;
    }
    const [start, end] = piece;
    const last = found.at(-1);
    const endPoint = { x: xOf(end.t), y: yOf(end.h) };
    if (open && last !== undefined && last.state === a.state && start.t === a.at.getTime()) {
      last.points.push(endPoint);
    } else {
      found.push({ state: a.state, points: [{ x: xOf(start.t), y: yOf(start.h) }, endPoint] });
    }
    open = end.t === b.at.getTime();
  }
  return found;
}

type Place = { readonly t: number; readonly h: number };

/** The part of a step within the time span and not below 0°; `null` of nothing. */
function clipped(a: Place, b: Place, from: number, to: number): [Place, Place] | null {
  if (!Number.isFinite(a.h) || !Number.isFinite(b.h) || !(b.t > a.t)) return null;
  let low = Math.max(0, (from - a.t) / (b.t - a.t));
  let high = Math.min(1, (to - a.t) / (b.t - a.t));
  if (a.h < 0 && b.h < 0) return null;
  if (a.h < 0) low = Math.max(low, a.h / (a.h - b.h));
  if (b.h < 0) high = Math.min(high, a.h / (a.h - b.h));
  if (!(high > low)) return null;
  const at = (share: number): Place =>
    share === 0 ? a : share === 1 ? b : { t: a.t + share * (b.t - a.t), h: a.h + share * (b.h - a.h) };
  return [at(low), at(high)];
}

const STROKES: Readonly<
  Record<PathState, { readonly "stroke-width": number; readonly "stroke-dasharray"?: string }>
> = {
  usable: { "stroke-width": 4.5 },
  poor: { "stroke-width": 1.6 },
  hidden: { "stroke-width": 2, "stroke-dasharray": "0.1 5" },
};

/** The stretches as lines of one ink, on a rim of the ground that keeps crossing lines apart. */
export function skyPath(all: readonly Stretch[], ink: string): Svg {
  const round = { "stroke-linecap": "round", "stroke-linejoin": "round" } as const;
  const rims = all.map(({ state, points }) =>
    path(through(points), {
      ...round,
      stroke: PALETTE.umber,
      "stroke-width": STROKES[state]["stroke-width"] + 2.4,
    }),
  );
  const lines = all.map(({ state, points }) =>
    path(through(points), { ...round, stroke: ink, "data-state": state, ...STROKES[state] }),
  );
  return join([...rims, ...lines]);
}
