/**
 * One quantity against another: a line or a few, named at their ends, with marked points.
 *
 * @packageDocumentation
 */
import type { CurveChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { type EndName, endNameRoom, endNames } from "./end-names.ts";
import { feet, figureWords, heights, type Plot } from "./frame-of-plot.ts";
import { leading, lettering, nameLines, SMALL_PX, widthOf, wrapped } from "./lettering.ts";
import { type Drawing, HATCH, MARGIN_PX, PAGE_WIDTH_PX, ROOM_PX } from "./page.ts";
import type { Box } from "./room-for-names.ts";
import { held, linear, roundStep, roundValues } from "./scale.ts";
import { circle, join, line, NOTHING, type Point, path, type Svg, through } from "./svg.ts";

const PLOT_PX = 190;

/** A line's look by its place in the list: told apart by weight and by dashes. */
const STROKES = [
  { stroke: PALETTE.copper, "stroke-width": 3.4 },
  { stroke: PALETTE.bone, "stroke-width": 1.8 },
  { stroke: PALETTE.bone, "stroke-width": 1.8, "stroke-dasharray": "7 5" },
] as const;

export function drawCurve(chart: CurveChart): Drawing {
  const lines = chart.lines.map((each) => ({ ...each, points: each.points.filter(isFinitePoint) }));
  const marks = chart.marks.filter(isFinitePoint);
  const all = [...lines.flatMap(({ points }) => points), ...marks];
  if (all.length === 0) {
    return { heightPx: 30, content: lettering({ x: MARGIN_PX, y: 18 }, ["Nothing to draw yet."]) };
  }
  const [lowX, highX] = [Math.min(...all.map(({ x }) => x)), Math.max(...all.map(({ x }) => x))];
  const [lowY, highY] = roundedEnds(all.map(({ y }) => y));
  const ys = roundValues(lowY, highY, 4);
  const left = MARGIN_PX + Math.max(20, ...ys.map((y) => widthOf(figureWords(y)))) + 8;
  const names = lines.flatMap(({ name, points }) => (points.length === 0 ? [] : [name]));
  const right = PAGE_WIDTH_PX - MARGIN_PX - (names.length === 0 ? 8 : endNameRoom(names, 92) + 10);
  const yLabel = wrapped(chart.yLabel, ROOM_PX);
  const top = yLabel.length * 16 + 8;
  const base = top + PLOT_PX;
  const plot: Plot = {
    left,
    right,
    top,
    base,
    xOf: linear(lowX, highX, left, right),
    yOf: linear(lowY, highY, base, top),
  };
  const xLabel = wrapped(chart.xLabel, ROOM_PX);
  return {
    heightPx: base + 24 + xLabel.length * 16 + 4,
    content: join([
      lettering({ x: MARGIN_PX, y: SMALL_PX }, yLabel, { ink: PALETTE.boneQuiet }),
      heights(plot, ys),
      feet(plot, chart.xMarks ?? roundValues(lowX, highX, 5).map((at) => ({ at, text: figureWords(at) }))),
      lettering({ x: PAGE_WIDTH_PX - MARGIN_PX, y: base + 36 }, xLabel, {
        anchor: "end",
        ink: PALETTE.boneQuiet,
      }),
      curves(lines, plot),
      ...marks.map((mark) => markOn(plot, mark, lines)),
    ]),
  };
}

function isFinitePoint(point: Point): boolean {
  return Number.isFinite(point.x) && Number.isFinite(point.y);
}

/** The range widened to round steps, from 0 where it does not lie far from it. */
function roundedEnds(values: readonly number[]): [number, number] {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const low = least >= 0 && least < most * 0.5 ? 0 : least;
  const span = most - low || Math.abs(most) || 1;
  const step = roundStep(span, 4);
  const from = Math.floor(low / step + 1e-9) * step;
  const to = Math.ceil((most === low ? low + span : most) / step - 1e-9) * step;
  return [from, to];
}

function curves(lines: CurveChart["lines"], plot: Plot): Svg {
  const ends: EndName[] = [];
  const drawn = lines.map(({ name, points, filled }, i) => {
    const stroke = STROKES[Math.min(i, STROKES.length - 1)] ?? STROKES[0];
    const placed = points.map(({ x, y }) => ({ x: plot.xOf(x), y: plot.yOf(y) }));
    const end = placed.at(-1);
    if (end !== undefined) {
      ends.push({ text: name, end, ink: stroke.stroke, weight: i === 0 ? "bold" : "regular" });
    }
    if (placed.length === 1 && end !== undefined) return circle(end, 3.5, { fill: stroke.stroke });
    return join([
      filled === true ? path(downToFoot(placed, plot), { fill: HATCH, "fill-opacity": 0.5 }) : NOTHING,
      path(through(placed), { ...stroke, "stroke-linejoin": "round", "stroke-linecap": "round" }),
    ]);
  });
  return join([...drawn.reverse(), endNames(ends, plot.right + 10, plot.top - 8, plot.base + 10)]);
}

/** The area under a line. */
function downToFoot(placed: readonly Point[], plot: Plot): string {
  const [first, last] = [placed[0], placed.at(-1)];
  if (first === undefined || last === undefined) return "";
  return through([{ x: first.x, y: plot.base }, ...placed, { x: last.x, y: plot.base }], true);
}

/** A point with a plumb line to the foot and its words where the fewest lines run. */
function markOn(plot: Plot, mark: CurveChart["marks"][number], lines: CurveChart["lines"]): Svg {
  const at = { x: plot.xOf(mark.x), y: plot.yOf(mark.y) };
  const words = nameLines(mark.label, 150, 3, SMALL_PX, "bold");
  const width = Math.max(0, ...words.map((text) => widthOf(text, SMALL_PX, "bold")));
  const height = words.length * leading(SMALL_PX);
  const spots = [
    [at.x + 9, at.y + 8],
    [at.x - 9 - width, at.y - 8 - height],
    [at.x + 9, at.y - 8 - height],
    [at.x - 9 - width, at.y + 8],
  ] as const;
  const boxes = spots.map(([left, top]) => {
    const box = {
      left: held(left, plot.left + 2, Math.max(plot.left + 2, PAGE_WIDTH_PX - MARGIN_PX - width)),
      top: held(top, plot.top - 6, plot.base - height - 2),
    };
    return { ...box, crossed: crossings(plot, lines, { ...box, width, height }) };
  });
  const best = boxes.reduce((least, box) => (box.crossed < least.crossed ? box : least));
  return join([
    line(at, { x: at.x, y: plot.base }, { stroke: PALETTE.boneQuiet, "stroke-dasharray": "2 4" }),
    circle(at, 4.5, { fill: PALETTE.umber, stroke: PALETTE.bone, "stroke-width": 2 }),
    lettering({ x: best.left + width / 2, y: best.top + SMALL_PX - 1 }, words, {
      anchor: "middle",
      weight: "bold",
      halo: PALETTE.umber,
    }),
  ]);
}

/** How many samples along the lines fall into a box. */
function crossings(plot: Plot, lines: CurveChart["lines"], box: Box): number {
  let count = 0;
  for (const { points } of lines) {
    points.forEach((point, i) => {
      const before = points[i - 1] ?? point;
      for (const share of [0.25, 0.5, 0.75, 1]) {
        const x = plot.xOf(before.x + share * (point.x - before.x));
        const y = plot.yOf(before.y + share * (point.y - before.y));
        const inside = x > box.left && x < box.left + box.width && y > box.top && y < box.top + box.height;
        if (inside) count++;
      }
    });
  }
  return count;
}
