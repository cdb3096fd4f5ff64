/**
 * The ruler along the top of the night: a stair that goes down as the sky darkens and
 * up again, each step with its word and its time.
 *
 * @packageDocumentation
 */
import type { NightChart } from "../../commands/chart.ts";
import { clockTime } from "../../commands/words/clock.ts";
import { PALETTE } from "../../config/palette.ts";
import { lettering, widthOf } from "./lettering.ts";
import { MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import type { Scale } from "./scale.ts";
import { join, type Point, path, rect, type Svg, through } from "./svg.ts";

const STEP_PX = 18;
/** Above the first tread, so that its line is not cut. */
const HEAD_PX = 3;

type Twilights = NightChart["twilights"];

/** A stretch of one darkness. */
export type Tread = {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
  /** When it began, if that is on the chart. */
  readonly at: Date | null;
  /** Empty for what comes before the first step. */
  readonly label: string;
};

/** How deep each step lies: as said, or deepening to the middle of the list. */
export function depthsOf(twilights: Twilights): number[] {
  return twilights.map(({ depth }, i) => depth ?? Math.min(i + 1, twilights.length - 1 - i, 4));
}

/**
 * The stair's treads across `[left, right]`; what stands before the first step is one
 * step lighter than it. A step left of the chart names the first tread without a time.
 */
export function treads(twilights: Twilights, left: number, right: number, xOf: Scale): Tread[] {
  const depths = depthsOf(twilights);
  const found: Tread[] = [];
  const first = depths[0];
  let from = left;
  let depth = first === undefined ? 4 : Math.max(0, first - 1);
  let at: Date | null = null;
  let label = "";
  twilights.forEach((twilight, i) => {
    const x = Math.min(Math.max(xOf(twilight.at.getTime()), left), right);
    if (x > from) found.push({ from, to: x, depth, at, label });
    from = x;
    depth = depths[i] ?? 0;
    at = xOf(twilight.at.getTime()) > left ? twilight.at : null;
    label = twilight.label;
  });
  if (right > from || found.length === 0) found.push({ from, to: right, depth, at, label });
  return found;
}

/** The ground's tint under a darkness: from the day's brown to the night's umber. */
function tintOf(depth: number): string {
  const share = Math.min(Math.max(depth / 4, 0), 1);
  const mix = [1, 3, 5].map((i) => {
    const day = Number.parseInt(PALETTE.umberDay.slice(i, i + 2), 16);
    const night = Number.parseInt(PALETTE.umber.slice(i, i + 2), 16);
    return Math.round(day + (night - day) * share)
      .toString(16)
      .padStart(2, "0");
  });
  return `#${mix.join("")}`;
}

/** Room above the first tread: a line's half width, or a row when words stand on that tread. */
function headPx(all: readonly Tread[]): number {
  const shallowest = Math.min(...all.map((tread) => tread.depth));
  const worded = all.some(
    (tread, i) =>
      tread.label !== "" && tread.depth === shallowest && (all[i - 1]?.depth ?? shallowest) <= shallowest,
  );
  return HEAD_PX + (worded ? STEP_PX : 0);
}

/** Height the stair needs. */
export function stairHeight(all: readonly Tread[]): number {
  if (all.every((tread) => tread.label === "")) return 0;
  const depths = all.map((tread) => tread.depth);
  return (Math.max(...depths) - Math.min(...depths)) * STEP_PX + headPx(all);
}

/** The stair's line and words, its top at 0. */
export function twilightStair(all: readonly Tread[], zone: string): Svg {
  const shallowest = Math.min(...all.map((tread) => tread.depth));
  const head = headPx(all);
  const yOf = (depth: number) => head + (depth - shallowest) * STEP_PX;
  const corners: Point[] = all.flatMap(({ from, to, depth }) => [
    { x: from, y: yOf(depth) },
    { x: to, y: yOf(depth) },
  ]);
  return join([
    path(through(corners), { stroke: PALETTE.bone, "stroke-width": 1.6 }),
    ...stepWords(all, zone, yOf),
  ]);
}

type Placed = { readonly left: number; readonly right: number; readonly y: number; readonly text: string };

/**
 * The words of the steps, each beside its own riser: inside the well, or outside it where
 * the well is too narrow. Steps down have their words first; a step up falls back on its time.
 */
function stepWords(all: readonly Tread[], zone: string, yOf: (depth: number) => number): Svg[] {
  const placed: Placed[] = [];
  const edge = PAGE_WIDTH_PX - MARGIN_PX;
  const risers = all.flatMap((tread, i) => {
    const before = all[i - 1];
    return before === undefined ? [] : [{ x: tread.from, between: [before.depth, tread.depth] }];
  });
  const free = (left: number, right: number, y: number) =>
    left >= MARGIN_PX &&
    right <= edge &&
    risers.every(({ x, between }) => {
      const beside = y > yOf(Math.min(...between)) && y < yOf(Math.max(...between));
      return !beside || x < left || x > right;
    }) &&
    placed.every((other) => other.y !== y || right + 8 <= other.left || left >= other.right + 8);
  const steps = all.flatMap((tread, i) => {
    const before = all[i - 1]?.depth ?? Math.max(0, tread.depth - 1);
    return tread.label === "" ? [] : [{ ...tread, rises: tread.depth < before }];
  });
  for (const step of [...steps.filter(({ rises }) => !rises), ...steps.filter(({ rises }) => rises)]) {
    const time = step.at === null ? "" : clockTime(step.at, zone);
    const y = yOf(step.depth + (step.rises ? 1 : 0)) - 5;
    const choices = [`${step.label} ${time}`.trim(), time].flatMap((text) => {
      const width = widthOf(text);
      const [inside, outside] = [step.from + 4, step.from - 4 - width];
      return (step.rises ? [outside, inside] : [inside, outside]).map((left) => ({ text, left, width }));
    });
    const choice = choices.find(({ text, left, width }) => text !== "" && free(left, left + width, y));
    if (choice !== undefined) {
      placed.push({ left: choice.left, right: choice.left + choice.width, y, text: choice.text });
    }
  }
  return placed.map(({ left, y, text }) => lettering({ x: left, y }, [text]));
}

/** The tints of the night behind a plot. */
export function nightGround(all: readonly Tread[], top: number, bottom: number): Svg {
  return join(
    all.map(({ from, to, depth }) =>
      rect(from, top, to - from + 0.3, bottom - top, {
        fill: tintOf(depth),
        "shape-rendering": "crispEdges",
      }),
    ),
  );
}
