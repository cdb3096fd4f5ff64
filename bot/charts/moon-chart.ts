/**
 * The Moon as a line drawing, as each kind of view shows it: the lit part, the axis, and
 * what stands on the terminator, named.
 *
 * @packageDocumentation
 */
import type { DiscView, MoonChart } from "../../commands/chart.ts";
import { MOON_RADIUS_KM } from "../../config/moon.ts";
import { PALETTE } from "../../config/palette.ts";
import { DEG_PER_RAD, RAD_PER_DEG } from "../../core/sky/angles.ts";
import { type GlobeAspect, globePoint, isOnLit, litPath, type Turning } from "./disc.ts";
import { leading, lettering, nameLines, SMALL_PX } from "./lettering.ts";
import { limbMark, MARK_PX, viewRows } from "./limb-marks.ts";
import { type Drawing, MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import { spread } from "./scale.ts";
import { circle, group, join, type Point, path, type Svg, through } from "./svg.ts";

const GREAT_RADIUS_PX = 104;
const NAMES_A_SIDE = 9;
const NAME_ROOM_PX = 76;

type Feature = MoonChart["features"][number];

function aspectOf(chart: MoonChart): GlobeAspect {
  return {
    longitudeDeg: chart.librationLongitudeDeg,
    latitudeDeg: chart.librationLatitudeDeg,
    axisDeg: chart.axisDeg,
  };
}

export function drawMoon(chart: MoonChart): Drawing {
  const [first, ...others] = chart.views;
  if (first === undefined) return { heightPx: 0, content: join([]) };
  const great = viewRows([first], 0, 1, GREAT_RADIUS_PX, (centre, radius, view) =>
    join([disc(chart, centre, radius, view), names(chart, centre, radius, view)]),
  );
  const rest = viewRows(others, great.heightPx + 6, 3, 46, (centre, radius, view) =>
    disc(chart, centre, radius, view),
  );
  return {
    heightPx: great.heightPx + (others.length === 0 ? 0 : rest.heightPx + 6),
    content: join([great.content, rest.content]),
  };
}

function disc(chart: MoonChart, centre: Point, radius: number, view: DiscView): Svg {
  const mark = (angle: number, letter: string) =>
    limbMark(centre, radius, angle, view, letter, PALETTE.boneQuiet);
  return group({ "data-disc": "moon" }, [
    circle(centre, radius, { fill: PALETTE.umberRaised, stroke: PALETTE.lilac, "stroke-width": 1.6 }),
    path(litPath(centre, radius, chart.brightLimbDeg, chart.illuminatedFraction, view), {
      fill: PALETTE.lilac,
      "data-lit": "moon",
    }),
    ...chart.features.map((feature) => outline(feature, chart, centre, radius, view)),
    mark(chart.axisDeg, "N"),
    mark(chart.axisDeg + 180, "S"),
  ]);
}

/** A feature's rim on the globe, foreshortened; what lies round the back is left out. */
function outline(feature: Feature, chart: MoonChart, centre: Point, radius: number, view: Turning): Svg {
  const aspect = aspectOf(chart);
  const spanDeg = (feature.diameterKm / 2 / MOON_RADIUS_KM) * DEG_PER_RAD;
  const least = (2.2 / radius) * DEG_PER_RAD;
  const rim = rimPoints(feature, Math.max(spanDeg, least)).map(([longitude, latitude]) =>
    globePoint(longitude, latitude, aspect, centre, radius, view),
  );
  if (rim.some(({ towardsUs }) => towardsUs < 0)) return join([]);
  const data = through(rim, true);
  const width = radius > 60 ? 2.2 : 1.4;
  if (feature.onTerminator) {
    return join([
      path(data, { stroke: PALETTE.umber, "stroke-width": width * 2 }),
      path(data, { stroke: PALETTE.copper, "stroke-width": width }),
    ]);
  }
  const middle = globePoint(feature.longitudeDeg, feature.latitudeDeg, aspect, centre, radius, view);
  const onLit = isOnLit(middle, centre, radius, chart.brightLimbDeg, chart.illuminatedFraction, view);
  return path(data, { stroke: onLit ? PALETTE.umber : PALETTE.lilac, "stroke-opacity": onLit ? 0.75 : 0.5 });
}

/** Longitudes and latitudes of a small circle about a feature's middle. */
function rimPoints(feature: Feature, spanDeg: number): (readonly [number, number])[] {
  const latitude = feature.latitudeDeg * RAD_PER_DEG;
  const span = spanDeg * RAD_PER_DEG;
  return Array.from({ length: 28 }, (_, i) => {
    const bearing = (i / 28) * 2 * Math.PI;
    const sine =
      Math.sin(latitude) * Math.cos(span) + Math.cos(latitude) * Math.sin(span) * Math.cos(bearing);
    const turn = Math.atan2(
      Math.sin(bearing) * Math.sin(span) * Math.cos(latitude),
      Math.cos(span) - Math.sin(latitude) * sine,
    );
    return [
      feature.longitudeDeg + turn * DEG_PER_RAD,
      Math.asin(Math.min(1, Math.max(-1, sine))) * DEG_PER_RAD,
    ];
  });
}

/** Names in the margins beside the disc, joined to their features; the terminator's come first. */
function names(chart: MoonChart, centre: Point, radius: number, view: DiscView): Svg {
  const aspect = aspectOf(chart);
  const seen = chart.features
    .map((feature) => ({
      feature,
      at: globePoint(feature.longitudeDeg, feature.latitudeDeg, aspect, centre, radius, view),
    }))
    .filter(({ at }) => at.towardsUs > 0)
    .sort((a, b) => Number(b.feature.onTerminator) - Number(a.feature.onTerminator));
  const left = seen.filter(({ at }) => at.x < centre.x).slice(0, NAMES_A_SIDE);
  const right = seen.filter(({ at }) => at.x >= centre.x).slice(0, NAMES_A_SIDE);
  return join([sideNames(left, "left", centre, radius), sideNames(right, "right", centre, radius)]);
}

function sideNames(
  side: readonly { readonly feature: Feature; readonly at: Point }[],
  where: "left" | "right",
  centre: Point,
  radius: number,
): Svg {
  const step = leading(SMALL_PX);
  const set = side.map(({ feature, at }) => {
    const weight = feature.onTerminator ? ("bold" as const) : ("regular" as const);
    return { feature, at, weight, lines: nameLines(feature.name, NAME_ROOM_PX, 2, SMALL_PX, weight) };
  });
  const tops = spread(
    set.map(({ at, lines }) => ({ centre: at.y, extent: lines.length * step + 3 })),
    centre.y - radius - MARK_PX,
    centre.y + radius + MARK_PX,
  );
  const x = where === "left" ? MARGIN_PX : PAGE_WIDTH_PX - MARGIN_PX;
  return join(
    set.map(({ feature, at, lines, weight }, i) => {
      const middle = tops[i] ?? at.y;
      const ink = feature.onTerminator ? PALETTE.copper : PALETTE.boneQuiet;
      const edge = where === "left" ? x + NAME_ROOM_PX + 2 : x - NAME_ROOM_PX - 2;
      return join([
        path(through([{ x: edge, y: middle }, at]), {
          stroke: feature.onTerminator ? PALETTE.copper : PALETTE.boneFaint,
          "stroke-width": 1,
        }),
        lettering({ x: edge, y: middle - (lines.length * step) / 2 + SMALL_PX - 1 }, lines, {
          anchor: where === "left" ? "end" : "start",
          weight,
          ink,
          halo: PALETTE.umber,
        }),
      ]);
    }),
  );
}
