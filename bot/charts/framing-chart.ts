/**
 * What a rig sees: the sensor upright between its corner brackets in a round piece of sky
 * turned behind it, the target in copper dashes, a mosaic with its order.
 *
 * @packageDocumentation
 */
import type { ChartEllipse, FramingChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { asFramed, ellipseTurnDeg, scaleBar, sharedArea } from "./frame-geometry.ts";
import { CENTRE, halfPx, RADIUS_PX, type View, viewOf } from "./framing-view.ts";
import { ellipseNames, northHand, orderNumbers } from "./framing-words.ts";
import { lettering } from "./lettering.ts";
import { type Drawing, HATCH, MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import type { Box, Room } from "./room-for-names.ts";
import { held } from "./scale.ts";
import { boneInk, starField, surveyPicture } from "./sky-field.ts";
import { circle, element, group, join, line, NOTHING, type Point, path, type Svg, through } from "./svg.ts";

/** Strength of what lies outside the frame. */
const OUTSIDE = 0.33;

export function drawFraming(chart: FramingChart): Drawing {
  const view = viewOf(chart);
  const place = (xiDeg: number, etaDeg: number) =>
    view.onPage(asFramed(xiDeg, etaDeg, chart.positionAngleDeg));
  const picture = surveyPicture(chart.picture, place(0, 0), view.pixelsPerDeg);
  const drawn = join([
    picture === NOTHING ? starField(chart.stars, place, CENTRE, RADIUS_PX) : NOTHING,
    ...chart.neighbours.map((each) => ellipse(each, view, false)),
    chart.target === null ? NOTHING : ellipse(chart.target, view, true),
  ]);
  const arms = view.panels.flatMap((panel) => bracketArms(panel.map(view.onPage)));
  const room: Room = {
    centre: CENTRE,
    radius: RADIUS_PX - 4,
    taken: arms.flatMap(([one, corner, other]) => [boxOf(one, corner), boxOf(corner, other)]),
  };
  const hand = northHand(chart.positionAngleDeg, room);
  const order = view.panels.length > 1 ? orderNumbers(view, room) : NOTHING;
  const names = ellipseNames(view, room);
  return {
    heightPx: CENTRE.y + RADIUS_PX + 34,
    content: join([
      element("defs", {}, [
        boneInk(),
        element("clipPath", { id: "rim" }, [circle(CENTRE, RADIUS_PX, {})]),
        element(
          "clipPath",
          { id: "frame" },
          view.panels.map((corners) => element("path", { d: through(corners.map(view.onPage), true) })),
        ),
      ]),
      circle(CENTRE, RADIUS_PX, { fill: PALETTE.umberRaised, "fill-opacity": 0.45 }),
      group({ "clip-path": "url(#rim)" }, [
        picture,
        picture === NOTHING ? NOTHING : veil(view),
        group({ opacity: OUTSIDE, "data-part": "outside" }, [drawn]),
        group({ "clip-path": "url(#frame)", "data-part": "inside" }, [drawn]),
        seams(view),
      ]),
      circle(CENTRE, RADIUS_PX, { fill: "none", stroke: PALETTE.boneFaint, "stroke-width": 1.2 }),
      ...arms.map((points) =>
        path(through(points), {
          stroke: PALETTE.bone,
          "stroke-width": view.panels.length > 1 ? 1.8 : 3,
          "stroke-linecap": "square",
          "data-part": "bracket",
        }),
      ),
      order,
      names,
      hand,
      foot(view),
    ]),
  };
}

/** The ground laid over a picture outside the frame; a second copy of the picture would take longer. */
function veil(view: View): Svg {
  const holes = view.panels.map((corners) =>
    element("path", { d: through(corners.map(view.onPage), true), fill: "#000000" }),
  );
  return join([
    element(
      "mask",
      { id: "outside", maskUnits: "userSpaceOnUse", x: 0, y: 0, width: PAGE_WIDTH_PX, height: 2 * CENTRE.y },
      [circle(CENTRE, RADIUS_PX, { fill: "#ffffff" }), ...holes],
    ),
    circle(CENTRE, RADIUS_PX, { fill: PALETTE.umber, "fill-opacity": 1 - OUTSIDE, mask: "url(#outside)" }),
  ]);
}

function ellipse(each: ChartEllipse, view: View, isTarget: boolean): Svg {
  const at = view.onPage(asFramed(each.xiDeg, each.etaDeg, view.chart.positionAngleDeg));
  const turn = ellipseTurnDeg(each, view.chart.positionAngleDeg);
  const look = isTarget
    ? { stroke: PALETTE.copper, "stroke-width": 2.4, "stroke-dasharray": "7 5" }
    : { stroke: PALETTE.bone, "stroke-width": 1 };
  return element("ellipse", {
    cx: at.x,
    cy: at.y,
    rx: halfPx(each.minorDeg, view),
    ry: halfPx(each.majorDeg, view),
    transform: `rotate(${-turn} ${at.x} ${at.y})`,
    fill: "none",
    ...look,
  });
}

/** What neighbouring panels share, hatched. */
function seams(view: View): Svg {
  const shared: Svg[] = [];
  view.panels.forEach((one, i) => {
    for (const other of view.panels.slice(i + 1)) {
      const area = sharedArea(one, other);
      if (area.length > 0) {
        shared.push(path(through(area.map(view.onPage), true), { fill: HATCH, "fill-opacity": 0.42 }));
      }
    }
  });
  return join(shared);
}

/** The arms of one panel's corner brackets: from an end over the corner to the other end. */
function bracketArms(corners: readonly Point[]): (readonly [Point, Point, Point])[] {
  return corners.map((corner, i) => {
    const before = corners[(i + corners.length - 1) % corners.length] ?? corner;
    const after = corners[(i + 1) % corners.length] ?? corner;
    const sides = [before, after].map((end) => Math.hypot(end.x - corner.x, end.y - corner.y));
    const arm = held(Math.min(...sides) * 0.18, 4, 26);
    const along = (end: Point, side: number): Point => ({
      x: corner.x + ((end.x - corner.x) / (side || 1)) * arm,
      y: corner.y + ((end.y - corner.y) / (side || 1)) * arm,
    });
    return [along(before, sides[0] ?? 1), corner, along(after, sides[1] ?? 1)];
  });
}

/** What an arm covers, with a little air. */
function boxOf(from: Point, to: Point): Box {
  return {
    left: Math.min(from.x, to.x) - 2,
    top: Math.min(from.y, to.y) - 3,
    width: Math.abs(to.x - from.x) + 4,
    height: Math.abs(to.y - from.y) + 6,
  };
}

/** Under the rim: a scale bar at the left, the field in degrees at the right. */
function foot(view: View): Svg {
  const y = CENTRE.y + RADIUS_PX + 20;
  const bar = scaleBar(90 / view.pixelsPerDeg);
  const end = MARGIN_PX + bar.lengthDeg * view.pixelsPerDeg;
  const { fieldWidthDeg, fieldHeightDeg } = view.chart;
  const each = view.panels.length > 1 ? "each " : "";
  const ink = { stroke: PALETTE.bone, "stroke-width": 2 };
  return join([
    line({ x: MARGIN_PX, y }, { x: end, y }, ink),
    line({ x: MARGIN_PX, y: y - 5 }, { x: MARGIN_PX, y: y + 5 }, ink),
    line({ x: end, y: y - 5 }, { x: end, y: y + 5 }, ink),
    lettering({ x: end + 8, y: y + 5 }, [bar.words], { sizePx: 14 }),
    lettering(
      { x: PAGE_WIDTH_PX - MARGIN_PX, y: y + 5 },
      [`${each}${fieldWords(fieldWidthDeg, fieldHeightDeg)}`],
      { sizePx: 14, anchor: "end" },
    ),
  ]);
}

/** `1.35° × 0.86°`, or in arcminutes where both sides are less than a degree. */
function fieldWords(widthDeg: number, heightDeg: number): string {
  const [size, sign] = Math.max(widthDeg, heightDeg) < 1 ? [60, "′"] : [1, "°"];
  const [width, height] = [widthDeg, heightDeg].map((side) => Number((side * size).toPrecision(3)));
  return `${width}${sign} × ${height}${sign}`;
}
