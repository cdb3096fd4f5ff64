/**
 * The skyline of a saved site as a chart.
 *
 * @packageDocumentation
 */
import type { SavedSite } from "./books.ts";
import type { CurveChart } from "./chart.ts";
import { skylineSentence } from "./words/site.ts";

/** The skyline from north through south to north, as a curve. */
export function skylineChart(saved: SavedSite): CurveChart {
  const points = saved.site.skyline.map(({ azimuthDeg, altitudeDeg }) => ({ x: azimuthDeg, y: altitudeDeg }));
  const sentence = skylineSentence(saved);
  return {
    kind: "curve",
    name: "skyline",
    title: `The skyline of ${saved.site.name}`,
    alt: `${sentence}.`,
    cautions: [],
    caption: "North at both ends",
    xLabel: "direction",
    yLabel: "height, degrees",
    xMarks: ["north", "east", "south", "west", "north"].map((text, i) => ({ at: 90 * i, text })),
    lines: [{ name: "skyline", points: closed(points), filled: true }],
    marks: [],
  };
}

/** The points carried on to both ends of the circle. */
function closed(points: readonly { x: number; y: number }[]): readonly { x: number; y: number }[] {
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined) return points;
  const gap = first.x + 360 - last.x;
  const atNorth = gap === 0 ? first.y : last.y + ((360 - last.x) / gap) * (first.y - last.y);
  return [
    ...(first.x === 0 ? [] : [{ x: 0, y: atNorth }]),
    ...points,
    { x: 360, y: first.x === 0 ? first.y : atNorth },
  ];
}
