/**
 * A year of one object: twelve bars of dark, Moon-free hours a night, the best weeks
 * under a bracket.
 *
 * @packageDocumentation
 */
import type { SeasonChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { lettering, SMALL_PX, shortened, widthOf } from "./lettering.ts";
import { type Drawing, HATCH, MARGIN_PX, ROOM_PX } from "./page.ts";
import { held } from "./scale.ts";
import { join, line, NOTHING, type Point, path, rect, type Svg, through } from "./svg.ts";

const BARS_PX = 150;
const BRACKET_PX = 34;
const FIGURE_PX = 16;

type Best = NonNullable<SeasonChart["best"]>;

/** A bracket's runs across the year: two when it runs over the year's end. */
export function bracketRuns(best: Best): readonly (readonly [number, number])[] {
  const from = held(best.fromMonth, 0, 12);
  const to = held(best.toMonth, 0, 12);
  if (to >= from) return [[from, to]];
  return [
    [0, to],
    [from, 12],
  ];
}

/** Whether a run takes at least half of a month, or lies within it. */
function holdsMonth([from, to]: readonly [number, number], month: number): boolean {
  const shared = Math.min(to, month + 1) - Math.max(from, month);
  return shared > 0 && shared >= Math.min(0.5, to - from);
}

export function drawSeason(chart: SeasonChart): Drawing {
  const count = Math.max(1, chart.months.length);
  const pitch = ROOM_PX / count;
  const top = (chart.best === null ? 0 : BRACKET_PX) + FIGURE_PX;
  const base = top + BARS_PX;
  const most = Math.max(1, ...chart.months.map(({ hoursPerNight }) => hoursPerNight));
  const runs = chart.best === null ? [] : bracketRuns(chart.best);
  const bars = chart.months.map(({ label, hoursPerNight }, i) => {
    const height = (BARS_PX * Math.max(0, hoursPerNight)) / most;
    const middle = MARGIN_PX + (i + 0.5) * pitch;
    const best = runs.some((run) => holdsMonth(run, i));
    const figure = hoursPerNight < 0.05 ? "0" : hoursPerNight.toFixed(hoursPerNight < 9.95 ? 1 : 0);
    const shape = { x: middle - pitch * 0.36, y: base - height, width: pitch * 0.72 };
    return join([
      rect(shape.x, shape.y, shape.width, height, { fill: best ? PALETTE.copper : HATCH }),
      best
        ? NOTHING
        : rect(shape.x, shape.y, shape.width, height, {
            fill: "none",
            stroke: PALETTE.bone,
            "stroke-width": height > 0 ? 1.2 : 0,
          }),
      lettering({ x: middle, y: base - height - 5 }, [figure], {
        anchor: "middle",
        weight: best ? "bold" : "regular",
        halo: PALETTE.umber,
      }),
      lettering({ x: middle, y: base + 17 }, [shortened(label, pitch - 2)], {
        anchor: "middle",
        weight: best ? "bold" : "regular",
      }),
    ]);
  });
  return {
    heightPx: base + 24,
    content: join([
      ...bars,
      line(
        { x: MARGIN_PX, y: base },
        { x: MARGIN_PX + ROOM_PX, y: base },
        { stroke: PALETTE.boneQuiet, "stroke-width": 1.2 },
      ),
      chart.best === null ? NOTHING : bracket(chart.best, runs),
    ]),
  };
}

/** The bracket and its words; open where it runs over the year's end. */
function bracket(best: Best, runs: readonly (readonly [number, number])[]): Svg {
  const y = 22;
  const xOf = (month: number) => MARGIN_PX + (month / 12) * ROOM_PX;
  const label = shortened(best.label, ROOM_PX, 14, "bold");
  const half = widthOf(label, 14, "bold") / 2;
  const widest = [...runs].sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0] ?? [0, 12];
  const middle = held(xOf((widest[0] + widest[1]) / 2), MARGIN_PX + half, MARGIN_PX + ROOM_PX - half);
  const foot = (x: number): Point => ({ x, y: y + 9 });
  const runPath = ([from, to]: readonly [number, number]) => {
    const open = { start: runs.length > 1 && from === 0, end: runs.length > 1 && to === 12 };
    const corners = [
      ...(open.start ? [] : [foot(xOf(from))]),
      { x: xOf(from), y },
      { x: xOf(to), y },
      ...(open.end ? [] : [foot(xOf(to))]),
    ];
    return path(through(corners), { stroke: PALETTE.copper, "stroke-width": 2.4 });
  };
  return join([
    ...runs.map(runPath),
    lettering({ x: middle, y: SMALL_PX }, [label], {
      sizePx: 14,
      weight: "bold",
      ink: PALETTE.copper,
      anchor: "middle",
    }),
  ]);
}
