/**
 * What a rig sees: the sensor upright between its corner brackets in a round piece of sky
 * turned behind it, the target in copper dashes, a mosaic with its order.
 *
 * @packageDocumentation
 */
import type { ChartEllipse, FramingChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import {
  asFramed,
  ellipseTurnDeg,
  enclosing,
  type FramePlace,
  panelCorners,
  scaleBar,
  sharedArea,
} from "./frame-geometry.ts";
import { leading, lettering, nameLines, SMALL_PX, widthOf } from "./lettering.ts";
import { type Drawing, HATCH, MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import { around, type Box, type Room, takeFirst } from "./room-for-names.ts";
import { held } from "./scale.ts";
import { boneInk, starField, surveyPicture } from "./sky-field.ts";
import { circle, element, group, join, line, NOTHING, type Point, path, type Svg, through } from "./svg.ts";

const RADIUS_PX = 178;
const CENTRE: Point = { x: PAGE_WIDTH_PX / 2, y: RADIUS_PX + 4 };
/** How far towards the rim the frame's corners reach. */
const FRAME_SHARE = 0.84;
const OUTSIDE = { sky: 0.33, names: 0.7 } as const;
const MOST_NAMES = 8;

type View = {
  readonly chart: FramingChart;
  readonly panels: readonly (readonly FramePlace[])[];
  readonly pixelsPerDeg: number;
  readonly onPage: (place: FramePlace) => Point;
};

function viewOf(chart: FramingChart): View {
  const alone = {
    order: 1,
    xiDeg: 0,
    etaDeg: 0,
    widthDeg: chart.fieldWidthDeg,
    heightDeg: chart.fieldHeightDeg,
    turnDeg: 0,
  };
  const given = chart.panels.length === 0 ? [alone] : chart.panels;
  const panels = given.map((panel) => panelCorners(panel, chart.positionAngleDeg));
  const { middle, radiusDeg } = enclosing(panels.flat());
  const wanted = (chart.target?.majorDeg ?? 0) * 0.55 * FRAME_SHARE;
  const pixelsPerDeg =
    (RADIUS_PX * FRAME_SHARE) / Math.max(radiusDeg, Math.min(wanted, radiusDeg * 1.8), 1e-6);
  return {
    chart,
    panels,
    pixelsPerDeg,
    onPage: ({ right, up }) => ({
      x: CENTRE.x + (right - middle.right) * pixelsPerDeg,
      y: CENTRE.y - (up - middle.up) * pixelsPerDeg,
    }),
  };
}

export function drawFraming(chart: FramingChart): Drawing {
  const view = viewOf(chart);
  const place = (xiDeg: number, etaDeg: number) =>
    view.onPage(asFramed(xiDeg, etaDeg, chart.positionAngleDeg));
  const picture = surveyPicture(chart.picture, place(0, 0), view.pixelsPerDeg);
  const sky = join([
    picture,
    picture === NOTHING ? starField(chart.stars, place, CENTRE, RADIUS_PX) : NOTHING,
    ...chart.neighbours.map((each) => ellipse(each, view, false)),
    chart.target === null ? NOTHING : ellipse(chart.target, view, true),
  ]);
  const room: Room = { centre: CENTRE, radius: RADIUS_PX - 4, taken: [] };
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
        group({ opacity: OUTSIDE.sky, "data-part": "outside" }, [sky]),
        group({ "clip-path": "url(#frame)", "data-part": "inside" }, [sky]),
        seams(view),
      ]),
      circle(CENTRE, RADIUS_PX, { fill: "none", stroke: PALETTE.boneFaint, "stroke-width": 1.2 }),
      ...view.panels.map((corners) => brackets(corners.map(view.onPage))),
      order,
      names,
      hand,
      foot(view),
    ]),
  };
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

/** Half an axis in pixels, large enough to be seen. */
function halfPx(axisDeg: number, view: View): number {
  return Math.max(5, (axisDeg / 2) * view.pixelsPerDeg);
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

/** Corner brackets of one panel, never a closed box. */
function brackets(corners: readonly Point[]): Svg {
  return join(
    corners.map((corner, i) => {
      const before = corners[(i + corners.length - 1) % corners.length] ?? corner;
      const after = corners[(i + 1) % corners.length] ?? corner;
      const sides = [before, after].map((end) => Math.hypot(end.x - corner.x, end.y - corner.y));
      const arm = held(Math.min(...sides) * 0.2, 4, 26);
      const along = (end: Point, side: number): Point => ({
        x: corner.x + ((end.x - corner.x) / (side || 1)) * arm,
        y: corner.y + ((end.y - corner.y) / (side || 1)) * arm,
      });
      const points = [along(before, sides[0] ?? 1), corner, along(after, sides[1] ?? 1)];
      return path(through(points), {
        stroke: PALETTE.bone,
        "stroke-width": corners.length > 0 && arm > 8 ? 3 : 1.8,
        "stroke-linecap": "square",
      });
    }),
  );
}

/** Large numbers in shooting order, each in the middle of its panel. */
function orderNumbers(view: View, room: Room): Svg {
  return join(
    view.panels.map((corners, i) => {
      const onPage = corners.map(view.onPage);
      const x = onPage.reduce((sum, corner) => sum + corner.x, 0) / onPage.length;
      const y = onPage.reduce((sum, corner) => sum + corner.y, 0) / onPage.length;
      const [a, b, c] = onPage;
      const side =
        a === undefined || b === undefined || c === undefined
          ? 0
          : Math.min(Math.hypot(a.x - b.x, a.y - b.y), Math.hypot(b.x - c.x, b.y - c.y));
      const sizePx = held(side * 0.36, SMALL_PX, 38);
      const text = String(view.chart.panels[i]?.order ?? i + 1);
      const width = widthOf(text, sizePx, "bold");
      room.taken.push({ left: x - width / 2, top: y - sizePx / 2, width, height: sizePx });
      return lettering({ x, y: y + sizePx * 0.35 }, [text], {
        sizePx,
        weight: "bold",
        anchor: "middle",
        halo: PALETTE.umber,
      });
    }),
  );
}

/** Names of target and neighbours beside their ellipses, as far as there is room. */
function ellipseNames(view: View, room: Room): Svg {
  const { target, neighbours } = view.chart;
  const wanted = [
    ...(target === null ? [] : [{ each: target, isTarget: true }]),
    ...neighbours.slice(0, MOST_NAMES).map((each) => ({ each, isTarget: false })),
  ];
  return join(
    wanted.map(({ each, isTarget }) => {
      const at = view.onPage(asFramed(each.xiDeg, each.etaDeg, view.chart.positionAngleDeg));
      const weight = isTarget ? ("bold" as const) : ("regular" as const);
      const lines = [
        ...nameLines(each.name, 150, 2, SMALL_PX, weight),
        ...(isTarget ? [] : nameLines(each.kindWords, 150, 1)),
      ];
      const width = Math.max(0, ...lines.map((text) => widthOf(text, SMALL_PX, weight)));
      const height = lines.length * leading(SMALL_PX);
      const turn = (ellipseTurnDeg(each, view.chart.positionAngleDeg) * Math.PI) / 180;
      const [a, b] = [halfPx(each.majorDeg, view), halfPx(each.minorDeg, view)];
      const halfWidth = Math.hypot(a * Math.sin(turn), b * Math.cos(turn));
      const halfHeight = Math.hypot(a * Math.cos(turn), b * Math.sin(turn));
      const box = takeFirst(room, around(at, halfWidth, halfHeight, { width, height }));
      if (box === null) return NOTHING;
      return group({ opacity: isInside(box, view) ? undefined : OUTSIDE.names }, [
        lettering({ x: box.left + width / 2, y: box.top + SMALL_PX - 1 }, lines, {
          anchor: "middle",
          weight,
          ink: isTarget ? PALETTE.copper : PALETTE.bone,
          halo: PALETTE.umber,
        }),
      ]);
    }),
  );
}

function isInside(box: Box, view: View): boolean {
  const x = box.left + box.width / 2;
  const y = box.top + box.height / 2;
  return view.panels.some((corners) => {
    const onPage = corners.map(view.onPage);
    return onPage.every((from, i) => {
      const to = onPage[(i + 1) % onPage.length] ?? from;
      return (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x) <= 0;
    });
  });
}

/** North on the rim with its angle, and a tick for east. */
function northHand(positionAngleDeg: number, room: Room): Svg {
  const north = (positionAngleDeg * Math.PI) / 180;
  const at = (angle: number, distance: number): Point => ({
    x: CENTRE.x + Math.sin(angle) * distance,
    y: CENTRE.y - Math.cos(angle) * distance,
  });
  const turned = Math.round((((positionAngleDeg % 360) + 360) % 360) * 10) / 10;
  const text = `north ${turned}°`;
  const word = rimWord(text, 15, at, north, room);
  const east = rimWord("E", 14, at, north - Math.PI / 2, room);
  const wedge = [at(north - 0.045, RADIUS_PX), at(north, RADIUS_PX - 20), at(north + 0.045, RADIUS_PX)];
  return join([
    path(through(wedge, true), { fill: PALETTE.copper, "data-hand": "north" }),
    line(at(north - Math.PI / 2, RADIUS_PX), at(north - Math.PI / 2, RADIUS_PX - 10), {
      stroke: PALETTE.bone,
      "stroke-width": 2,
    }),
    lettering(word, [text], {
      sizePx: 15,
      weight: "bold",
      ink: PALETTE.copper,
      anchor: "middle",
      halo: PALETTE.umber,
    }),
    lettering(east, ["E"], { sizePx: 14, anchor: "middle", halo: PALETTE.umber }),
  ]);
}

/** Baseline of a word set just inside the rim, as far out as its corners allow. */
function rimWord(
  text: string,
  sizePx: number,
  at: (angle: number, distance: number) => Point,
  angle: number,
  room: Room,
): Point {
  const width = widthOf(text, sizePx, "bold");
  for (let distance = RADIUS_PX - 24; ; distance -= 3) {
    const middle = at(angle, distance);
    const box = { left: middle.x - width / 2, top: middle.y - sizePx / 2, width, height: sizePx };
    const reach = Math.hypot(
      Math.abs(middle.x - CENTRE.x) + width / 2,
      Math.abs(middle.y - CENTRE.y) + sizePx / 2,
    );
    if (reach > RADIUS_PX - 22 && distance > RADIUS_PX / 2) continue;
    room.taken.push(box);
    return { x: middle.x, y: middle.y + sizePx * 0.35 };
  }
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
      [`${each}${degreesWords(fieldWidthDeg)} × ${degreesWords(fieldHeightDeg)}`],
      { sizePx: 14, anchor: "end" },
    ),
  ]);
}

/** `1.35°`, or `24.5′` below a degree. */
function degreesWords(degrees: number): string {
  return degrees < 1 ? `${Number((degrees * 60).toPrecision(3))}′` : `${Number(degrees.toPrecision(3))}°`;
}
