/**
 * Hours gathered night by night: a stair, one step a night, with the hours still wanted
 * as a dotted riser at its end.
 *
 * @packageDocumentation
 */
import type { ProgressChart } from "../../commands/chart.ts";
import { durationWords, shortDateWords } from "../../commands/words/clock.ts";
import { PALETTE } from "../../config/palette.ts";
import { type EndName, endNameRoom, endNames } from "./end-names.ts";
import { feet, figureWords, heights, type Plot } from "./frame-of-plot.ts";
import { lettering, SMALL_PX, widthOf } from "./lettering.ts";
import { type Drawing, MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import { linear, roundStep, roundValues } from "./scale.ts";
import { join, line, NOTHING, type Point, path, type Svg, through } from "./svg.ts";

const PLOT_PX = 190;

type Line = ProgressChart["lines"][number];

/** Every night on which any line gained, in order. */
export function nightsOf(lines: readonly Line[]): string[] {
  return [...new Set(lines.flatMap(({ steps }) => steps.map(({ night }) => night)))].sort();
}

/**
 * A line's running total after each night.
 *
 * @returns one total a night of `nights`, from its first night on; earlier nights are 0
 */
export function runningHours(line: Line, nights: readonly string[]): number[] {
  let sum = 0;
  return nights.map((night) => {
    for (const step of line.steps) if (step.night === night) sum += step.hours;
    return sum;
  });
}

export function drawProgress(chart: ProgressChart): Drawing {
  const nights = nightsOf(chart.lines);
  if (nights.length === 0) {
    const words = "No subs logged yet: the stair begins with the first night.";
    return { heightPx: 30, content: lettering({ x: MARGIN_PX, y: 18 }, [words]) };
  }
  const totals = chart.lines.map((each) => runningHours(each, nights));
  const most = Math.max(1, ...totals.flat(), ...chart.lines.map(({ wantedHours }) => wantedHours ?? 0));
  const step = roundStep(most, 4);
  const high = Math.ceil(most / step - 1e-9) * step;
  const values = roundValues(0, high, 4);
  const left = MARGIN_PX + Math.max(...values.map((value) => widthOf(figureWords(value)))) + 8;
  const room = endNameRoom([...chart.lines.map(({ name }) => name), "10 h 30 min"], 96);
  const risers = chart.lines.filter(({ wantedHours }) => wantedHours !== null).length * 10;
  const right = PAGE_WIDTH_PX - MARGIN_PX - room - 10 - risers;
  const top = 26;
  const base = top + PLOT_PX;
  const plot: Plot = {
    left,
    right,
    top,
    base,
    xOf: linear(0, nights.length, left, right),
    yOf: linear(0, high, base, top),
  };
  return {
    heightPx: base + 26,
    content: join([
      lettering({ x: MARGIN_PX, y: SMALL_PX }, ["hours"], { ink: PALETTE.boneQuiet }),
      heights(plot, values),
      feet(
        plot,
        nights.map((night, i) => ({ at: i + 0.5, text: shortDateWords(night).replace(/^\S+ /u, "") })),
      ),
      stairs(chart.lines, totals, plot),
    ]),
  };
}

/** One riser a night, at the night's beginning; nothing before the first. */
function stairOf(totals: readonly number[], plot: Plot): Point[] {
  const first = Math.max(
    0,
    totals.findIndex((total) => total > 0),
  );
  return totals.slice(first).flatMap((total, k) => {
    const i = first + k;
    return [
      { x: plot.xOf(i), y: plot.yOf(k === 0 ? 0 : (totals[i - 1] ?? 0)) },
      { x: plot.xOf(i), y: plot.yOf(total) },
      { x: plot.xOf(i + 1), y: plot.yOf(total) },
    ];
  });
}

function stairs(lines: readonly Line[], totals: readonly (readonly number[])[], plot: Plot): Svg {
  const ends: EndName[] = [];
  let riserX = plot.right;
  const drawn = lines.map(({ name, wantedHours }, i) => {
    const hours = totals[i] ?? [];
    const total = hours.at(-1) ?? 0;
    const y = plot.yOf(total);
    const ink = i === 0 ? PALETTE.copper : PALETTE.bone;
    const corners = stairOf(hours, plot);
    ends.push({
      text: name,
      end: { x: plot.right, y },
      ink,
      weight: i === 0 ? "bold" : "regular",
      note: leftWords(total, wantedHours),
    });
    if (wantedHours === null) return strokeOf(corners, ink, i);
    riserX += 10;
    return join([
      strokeOf([...corners, { x: riserX, y }], ink, i),
      wantedHours > total ? riser(riserX, y, plot.yOf(wantedHours), ink) : NOTHING,
    ]);
  });
  return join([...drawn.reverse(), endNames(ends, riserX + 10, plot.top - 12, plot.base + 8)]);
}

function strokeOf(corners: readonly Point[], ink: string, place: number): Svg {
  return path(through(corners), {
    stroke: ink,
    "stroke-width": place === 0 ? 4 : 2,
    "stroke-dasharray": place < 2 ? undefined : "8 5",
    "stroke-linejoin": "miter",
  });
}

function riser(x: number, from: number, to: number, ink: string): Svg {
  return join([
    line(
      { x, y: from },
      { x, y: to },
      { stroke: ink, "stroke-width": 2, "stroke-dasharray": "0.1 5", "stroke-linecap": "round" },
    ),
    line({ x: x - 6, y: to }, { x: x + 6, y: to }, { stroke: ink, "stroke-width": 2 }),
  ]);
}

function leftWords(total: number, wanted: number | null): string {
  if (wanted === null) return durationWords(total);
  return wanted > total ? `${durationWords(wanted - total)} to go` : "done";
}
