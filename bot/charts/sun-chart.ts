/**
 * The Sun's disc as each kind of filtered telescope shows it: its axis, its equator and
 * a grid of heliographic latitude and longitude.
 *
 * @packageDocumentation
 */
import type { DiscView, SunChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { type GlobeAspect, globePoint, towards } from "./disc.ts";
import { leading, lettering, wrapped } from "./lettering.ts";
import { limbMark, viewRows } from "./limb-marks.ts";
import { type Drawing, MARGIN_PX, ROOM_PX } from "./page.ts";
import { circle, group, join, line, type Point, path, type Svg, through } from "./svg.ts";

const GRID_DEG = 30;
const STEP_DEG = 5;

export function drawSun(chart: SunChart): Drawing {
  const rows = viewRows(chart.views, 0, chart.views.length === 1 ? 1 : 2, 120, (centre, radius, view) =>
    disc(chart, centre, radius, view),
  );
  const said = wrapped(
    `Middle of the disc: longitude ${Math.round((((chart.l0Deg % 360) + 360) % 360) * 10) / 10}°, latitude ${signed(chart.b0Deg)}°. Axis ${axisWords(chart.axisDeg)}. The heavy line is the Sun's equator.`,
    ROOM_PX,
    14,
  );
  return {
    heightPx: rows.heightPx + 8 + said.length * leading(14),
    content: join([
      rows.content,
      lettering({ x: MARGIN_PX, y: rows.heightPx + 18 }, said, { sizePx: 14, ink: PALETTE.boneQuiet }),
    ]),
  };
}

function signed(degrees: number): string {
  const rounded = Math.abs(degrees).toFixed(1);
  return `${degrees < 0 && rounded !== "0.0" ? "−" : "+"}${rounded}`;
}

function axisWords(axisDeg: number): string {
  const turned = ((((axisDeg + 180) % 360) + 360) % 360) - 180;
  const rounded = Math.abs(turned).toFixed(1);
  if (rounded === "0.0") return "upright on the sky";
  return `leans ${rounded}° ${turned > 0 ? "east" : "west"} of north`;
}

function disc(chart: SunChart, centre: Point, radius: number, view: DiscView): Svg {
  const aspect: GlobeAspect = {
    longitudeDeg: chart.l0Deg,
    latitudeDeg: chart.b0Deg,
    axisDeg: chart.axisDeg,
  };
  const place = (longitude: number, latitude: number) =>
    globePoint(longitude, latitude, aspect, centre, radius, view);
  const mark = (angle: number, letter: string, ink: string) =>
    limbMark(centre, radius, angle, view, letter, ink);
  const thin = { stroke: PALETTE.boneFaint, "stroke-width": 0.9 };
  const parallels = [-60, -30, 30, 60].map((latitude) =>
    path(facing(around((longitude) => place(chart.l0Deg + longitude, latitude))), thin),
  );
  const meridians = Array.from({ length: 360 / GRID_DEG }, (_, i) => {
    const longitude = i * GRID_DEG;
    return path(facing(upwards((latitude) => place(longitude, latitude))), thin);
  });
  return group({ "data-disc": "sun" }, [
    circle(centre, radius, { fill: PALETTE.umberRaised, stroke: PALETTE.bone, "stroke-width": 2 }),
    ...parallels,
    ...meridians,
    path(facing(around((longitude) => place(chart.l0Deg + longitude, 0))), {
      stroke: PALETTE.copper,
      "stroke-width": 3,
      "data-line": "equator",
    }),
    line(towards(centre, chart.axisDeg, radius, view), towards(centre, chart.axisDeg + 180, radius, view), {
      stroke: PALETTE.bone,
      "stroke-width": 1.4,
      "stroke-dasharray": "6 4",
      "data-line": "axis",
    }),
    mark(chart.axisDeg, "N", PALETTE.copper),
    mark(chart.axisDeg + 180, "S", PALETTE.copper),
    mark(90, "E", PALETTE.boneQuiet),
    mark(270, "W", PALETTE.boneQuiet),
  ]);
}

type Facing = Point & { readonly towardsUs: number };

function around(place: (longitude: number) => Facing): Facing[] {
  return Array.from({ length: 360 / STEP_DEG + 1 }, (_, i) => place(i * STEP_DEG - 180));
}

function upwards(place: (latitude: number) => Facing): Facing[] {
  return Array.from({ length: 180 / STEP_DEG + 1 }, (_, i) => place(i * STEP_DEG - 90));
}

/** The runs of a line on the near side, cut where it passes the limb. */
export function facing(points: readonly Facing[]): string {
  const runs: Point[][] = [];
  let run: Point[] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before !== undefined && before.towardsUs >= 0 !== point.towardsUs >= 0) {
      const share = before.towardsUs / (before.towardsUs - point.towardsUs);
      run.push({ x: before.x + share * (point.x - before.x), y: before.y + share * (point.y - before.y) });
      if (point.towardsUs < 0) {
        runs.push(run);
        run = [];
      }
    }
    if (point.towardsUs >= 0) run.push(point);
  });
  runs.push(run);
  return runs.map((each) => through(each)).join("");
}
