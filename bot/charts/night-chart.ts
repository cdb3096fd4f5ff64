/**
 * A night from left to right: the twilights as a stair, up to three objects, the window
 * as a measured length, cloud by the hour and the Moon's ridge.
 *
 * @packageDocumentation
 */
import type { NightChart } from "../../commands/chart.ts";
import { clockTime } from "../../commands/words/clock.ts";
import { PALETTE } from "../../config/palette.ts";
import { type EndName, endNameRoom, endNames } from "./end-names.ts";
import { leading, lettering, SMALL_PX, shortened, widthOf, wrapped } from "./lettering.ts";
import { moonIcon } from "./moon-icon.ts";
import { oktaCircle } from "./okta.ts";
import { type Drawing, MARGIN_PX, PAGE_WIDTH_PX, ROOM_PX } from "./page.ts";
import { clockHours, held, linear, type Scale, spread } from "./scale.ts";
import { skyPath, stretches } from "./sky-path.ts";
import { join, line, NOTHING, path, type Svg, through } from "./svg.ts";
import { nightGround, stairHeight, treads, twilightStair } from "./twilight-stair.ts";

const LEFT = MARGIN_PX + 32;
const PLOT_PX = 158;
/** Under the horizon, for the names of what sets. */
const NAME_ROW_PX = 22;
const MOON_LANE_PX = 40;
const CLOUD_PX = 30;
const OKTA_RADIUS_PX = 7;

export function drawNight(chart: NightChart): Drawing {
  const from = chart.span.start.getTime();
  const to = chart.span.end.getTime();
  const shown = chart.paths.slice(0, 3);
  const moonName = `Moon ${Math.round(chart.moon.illuminatedFraction * 100)} % lit`;
  const right =
    PAGE_WIDTH_PX - MARGIN_PX - endNameRoom([...shown.map(({ name }) => name), "Moon 100"], 96) - 8;
  const xOf = linear(from, to, LEFT, right);
  const steps = treads(chart.twilights, LEFT, right, xOf);
  const stairs = stairHeight(steps);
  const windowRoom = chart.window === null ? 6 : 26;
  const top = stairs + windowRoom;
  const base = top + PLOT_PX;
  const moonBase = base + NAME_ROW_PX + MOON_LANE_PX;
  const cloudY = moonBase + (chart.cloud.length === 0 ? 0 : 8 + CLOUD_PX / 2);
  const bottom = chart.cloud.length === 0 ? moonBase : cloudY + CLOUD_PX / 2;
  const yOf = linear(0, 90, base, top);
  const objects = objectLines(shown, { from, to, right, xOf, yOf, base, top });
  return {
    heightPx: bottom + 22 + objects.belowPx,
    content: join([
      nightGround(steps, stairs, bottom),
      stairs === 0 ? NOTHING : twilightStair(steps, chart.timeZone),
      heightLines(right, yOf),
      hours(chart, xOf, bottom),
      windowLine(chart, xOf, stairs + 20, bottom),
      objects.content,
      moonLane(chart, moonName, xOf, moonBase, right),
      cloudStrip(chart, xOf, cloudY, right),
      objects.below(bottom + 22),
    ]),
  };
}

function heightLines(right: number, yOf: Scale): Svg {
  return join(
    [0, 30, 60].map((altitude) =>
      join([
        line(
          { x: LEFT, y: yOf(altitude) },
          { x: right, y: yOf(altitude) },
          {
            stroke: altitude === 0 ? PALETTE.boneQuiet : PALETTE.boneFaint,
            "stroke-width": altitude === 0 ? 1.2 : 0.7,
          },
        ),
        lettering({ x: LEFT - 5, y: yOf(altitude) + 4.5 }, [`${altitude}°`], {
          anchor: "end",
          ink: PALETTE.boneQuiet,
        }),
      ]),
    ),
  );
}

function hours(chart: NightChart, xOf: Scale, bottom: number): Svg {
  const span = xOf(chart.span.end.getTime()) - LEFT;
  return join(
    clockHours(chart.span, chart.timeZone, Math.max(1, Math.floor(span / 46))).map((at) => {
      const x = xOf(at.getTime());
      const text = clockTime(at, chart.timeZone);
      const half = widthOf(text) / 2;
      return join([
        line({ x, y: bottom }, { x, y: bottom + 4 }, { stroke: PALETTE.boneQuiet }),
        lettering({ x: held(x, MARGIN_PX + half, PAGE_WIDTH_PX - half - 2), y: bottom + 17 }, [text], {
          anchor: "middle",
          ink: PALETTE.boneQuiet,
        }),
      ]);
    }),
  );
}

/** The window as a draughtsman's dimension: end ticks, long thin sides, the length in words. */
function windowLine(chart: NightChart, xOf: Scale, y: number, bottom: number): Svg {
  if (chart.window === null) return NOTHING;
  const start = held(xOf(chart.window.start.getTime()), LEFT, xOf(chart.span.end.getTime()));
  const end = held(xOf(chart.window.end.getTime()), start, xOf(chart.span.end.getTime()));
  const ink = { stroke: PALETTE.copper };
  const label = shortened(chart.window.label, ROOM_PX, 15, "bold");
  const half = widthOf(label, 15, "bold") / 2;
  const middle = held((start + end) / 2, MARGIN_PX + half, PAGE_WIDTH_PX - MARGIN_PX - half);
  const covers = label !== "" && half + 8 < (end - start) / 2;
  const tick = (x: number) =>
    join([
      line({ x, y: y - 8 }, { x, y: y + 8 }, { ...ink, "stroke-width": 2.4 }),
      line({ x, y: y + 8 }, { x, y: bottom }, { ...ink, "stroke-width": 1, "stroke-dasharray": "3 3" }),
    ]);
  const bar = (x1: number, x2: number) => line({ x: x1, y }, { x: x2, y }, { ...ink, "stroke-width": 2.4 });
  const bars = covers ? [bar(start, middle - half - 5), bar(middle + half + 5, end)] : [bar(start, end)];
  return join([
    ...bars,
    tick(start),
    tick(end),
    lettering(
      { x: covers ? middle : besideWindow(start, end, half), y: y + 5 },
      label === "" ? [] : [label],
      {
        sizePx: 15,
        weight: "bold",
        ink: PALETTE.copper,
        anchor: "middle",
        halo: PALETTE.umber,
      },
    ),
  ]);
}

/** Middle of a label that does not fit into its window: right of it, else left, else held on the page. */
function besideWindow(start: number, end: number, half: number): number {
  const last = PAGE_WIDTH_PX - MARGIN_PX;
  if (end + 7 + 2 * half <= last) return end + 7 + half;
  if (start - 7 - 2 * half >= MARGIN_PX) return start - 7 - half;
  return held((start + end) / 2, MARGIN_PX + half, last - half);
}

type Plot = {
  readonly from: number;
  readonly to: number;
  readonly right: number;
  readonly xOf: Scale;
  readonly yOf: Scale;
  readonly base: number;
  readonly top: number;
};

/**
 * The objects' lines with their names: beside the plot for those still up at its edge,
 * under the horizon where the others set; a sentence for those that never rise.
 */
function objectLines(shown: NightChart["paths"], plot: Plot) {
  const lines: Svg[] = [];
  const beside: EndName[] = [];
  const setting: EndName[] = [];
  const absent: string[] = [];
  shown.forEach(({ name, points }, i) => {
    const all = stretches(points, plot.from, plot.to, plot.xOf, plot.yOf);
    const end = all.at(-1)?.points.at(-1);
    if (end === undefined) {
      absent.push(name);
      return;
    }
    const ink = i === 0 ? PALETTE.copper : PALETTE.bone;
    lines.push(skyPath(all, ink));
    const named: EndName = { text: name, end, ink, weight: i === 0 ? "bold" : "regular" };
    (plot.right - end.x < 12 ? beside : setting).push(named);
  });
  const sentences = absent.flatMap((name) => wrapped(`${name} stays below the horizon.`, ROOM_PX));
  return {
    content: join([
      ...lines.reverse(),
      endNames(beside, plot.right + 8, plot.top - 8, plot.base + 6),
      settingNames(setting, plot.base + SMALL_PX + 3),
    ]),
    belowPx: sentences.length === 0 ? 0 : sentences.length * leading(SMALL_PX) + 6,
    below: (y: number) => lettering({ x: MARGIN_PX, y: y + SMALL_PX + 4 }, sentences),
  };
}

/** Names in a row, each under the end of its line as nearly as the others let it. */
function settingNames(names: readonly EndName[], y: number): Svg {
  const room = ROOM_PX / Math.max(1, names.length) - 8;
  const set = names.map((name) => ({ ...name, text: shortened(name.text, room, SMALL_PX, name.weight) }));
  const centres = spread(
    set.map(({ text, end, weight }) => ({ centre: end.x, extent: widthOf(text, SMALL_PX, weight) + 8 })),
    MARGIN_PX,
    PAGE_WIDTH_PX - MARGIN_PX,
  );
  return join(
    set.map(({ text, end, ink, weight }, i) =>
      lettering({ x: centres[i] ?? end.x, y }, [text], {
        ink,
        weight: weight ?? "regular",
        anchor: "middle",
        halo: PALETTE.umber,
      }),
    ),
  );
}

function moonLane(chart: NightChart, name: string, xOf: Scale, base: number, right: number): Svg {
  const yOf = linear(0, 90, base, base - MOON_LANE_PX);
  const points = chart.moon.points.map((point) => ({ ...point, state: "usable" as const }));
  const ridge = stretches(points, chart.span.start.getTime(), chart.span.end.getTime(), xOf, yOf);
  const centre = { x: MARGIN_PX + 12, y: base - MOON_LANE_PX / 2 };
  const step = leading(SMALL_PX);
  const said = [...name.split(/ (?=\d)/u), ...(ridge.length === 0 ? ["not up"] : [])];
  return join([
    line({ x: LEFT, y: base }, { x: right, y: base }, { stroke: PALETTE.lilac, "stroke-width": 1 }),
    ...ridge.map(({ points: crest }) => {
      const [first, last] = [crest[0], crest.at(-1)];
      if (first === undefined || last === undefined) return NOTHING;
      const ground = [{ x: first.x, y: base }, ...crest, { x: last.x, y: base }];
      return join([
        path(through(ground, true), { fill: PALETTE.lilac, "fill-opacity": 0.38 }),
        path(through(crest), { stroke: PALETTE.lilac, "stroke-width": 2 }),
      ]);
    }),
    moonIcon(centre, 11, chart.moon),
    lettering({ x: right + 8, y: base - MOON_LANE_PX / 2 - ((said.length - 2) * step) / 2 - 2 }, said, {
      ink: PALETTE.lilac,
    }),
  ]);
}

/** Station circles by the hour, every second or third where they would touch. */
function cloudStrip(chart: NightChart, xOf: Scale, y: number, right: number): Svg {
  const inside = chart.cloud.filter(({ at }) => {
    const x = xOf(at.getTime());
    return x >= LEFT - 1 && x <= right - 4;
  });
  if (inside.length === 0) return NOTHING;
  const [first, last] = [inside[0], inside.at(-1)];
  const pitch =
    first === undefined || last === undefined || inside.length < 2
      ? Number.POSITIVE_INFINITY
      : (xOf(last.at.getTime()) - xOf(first.at.getTime())) / (inside.length - 1);
  const every = Math.max(1, Math.ceil((2 * OKTA_RADIUS_PX + 2) / pitch));
  const unknown = inside.every(({ oktas }) => oktas === null);
  return join([
    ...inside
      .filter((_, i) => i % every === 0)
      .map(({ at, oktas }) => oktaCircle({ x: xOf(at.getTime()), y }, OKTA_RADIUS_PX, oktas, PALETTE.umber)),
    lettering({ x: right + 8, y: y + (unknown ? -3 : 4.5) }, unknown ? ["cloud", "unknown"] : ["cloud"]),
  ]);
}
