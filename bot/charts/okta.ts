/**
 * Cloud cover in eighths as the station circle of weather maps.
 *
 * Source: WMO-No. 485, *Manual on the Global Data-processing and Forecasting System*,
 * the plotting model's symbols for total cloud cover N, from memory.
 *
 * @packageDocumentation
 */
import { PALETTE } from "../../config/palette.ts";
import { circle, group, line, num, type Point, path, type Svg } from "./svg.ts";

/** Quarters of the circle that are filled, clockwise from the top, and the strokes, by oktas. */
const SYMBOLS: readonly {
  readonly quarters: number;
  readonly stroke: "none" | "upright" | "lower" | "left";
}[] = [
  { quarters: 0, stroke: "none" },
  { quarters: 0, stroke: "upright" },
  { quarters: 1, stroke: "none" },
  { quarters: 1, stroke: "lower" },
  { quarters: 2, stroke: "none" },
  { quarters: 2, stroke: "left" },
  { quarters: 3, stroke: "none" },
  { quarters: 4, stroke: "upright" },
  { quarters: 4, stroke: "none" },
];

function sector(centre: Point, radius: number, quarters: number): string {
  if (quarters === 0) return "";
  const { x, y } = centre;
  const r = num(radius);
  const top = `M${num(x)} ${num(y)}V${num(y - radius)}`;
  const to = (px: number, py: number) => `A${r} ${r} 0 0 1 ${num(px)} ${num(py)}`;
  const stops = [to(x + radius, y), to(x, y + radius), to(x - radius, y), to(x, y - radius)];
  return `${top}${stops.slice(0, quarters).join("")}Z`;
}

/**
 * The circle for so many eighths.
 *
 * @param oktas - 0 to 8, rounded; `null` where unknown: a broken circle with a stroke,
 *   after the code figure `/` for cover that was not observed
 * @param ground - what lies beneath, for the gap of seven eighths
 */
export function oktaCircle(centre: Point, radius: number, oktas: number | null, ground: string): Svg {
  const ink = PALETTE.bone;
  const outline = circle(centre, radius, {
    fill: "none",
    stroke: ink,
    "stroke-width": 1.4,
    "stroke-dasharray": oktas === null ? "2 2" : undefined,
  });
  if (oktas === null) {
    const reach = radius * 0.5;
    const slash = line(
      { x: centre.x - reach, y: centre.y + reach },
      { x: centre.x + reach, y: centre.y - reach },
      { stroke: ink, "stroke-width": 1.4 },
    );
    return group({ "data-oktas": "unknown" }, [outline, slash]);
  }
  const eighths = Math.min(8, Math.max(0, Math.round(oktas)));
  const symbol = SYMBOLS[eighths] ?? { quarters: 0, stroke: "none" };
  const ends: Readonly<Record<typeof symbol.stroke, readonly [Point, Point] | null>> = {
    none: null,
    upright: [
      { x: centre.x, y: centre.y - radius },
      { x: centre.x, y: centre.y + radius },
    ],
    lower: [centre, { x: centre.x, y: centre.y + radius }],
    left: [{ x: centre.x - radius, y: centre.y }, centre],
  };
  const stroke = ends[symbol.stroke];
  return group({ "data-oktas": eighths }, [
    path(sector(centre, radius, symbol.quarters), { fill: ink }),
    outline,
    ...(stroke === null
      ? []
      : [
          line(stroke[0], stroke[1], {
            stroke: eighths === 7 ? ground : ink,
            "stroke-width": eighths === 7 ? radius * 0.36 : 1.6,
          }),
        ]),
  ]);
}
