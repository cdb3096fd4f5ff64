/**
 * The words of a framing chart: shooting order, names of what is drawn, north and east.
 *
 * @packageDocumentation
 */
import type { ChartEllipse } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { RAD_PER_DEG } from "../../core/sky/angles.ts";
import { asFramed, ellipseTurnDeg } from "./frame-geometry.ts";
import { CENTRE, halfPx, RADIUS_PX, type View } from "./framing-view.ts";
import { leading, lettering, nameLines, SMALL_PX, widthOf } from "./lettering.ts";
import { around, type Box, nearest, type Room, takeFirst } from "./room-for-names.ts";
import { held } from "./scale.ts";
import { group, join, line, NOTHING, type Point, path, type Svg, through } from "./svg.ts";

/** Strength of names that lie outside the frame: less than inside, still to be read. */
const OUTSIDE_NAMES = 0.7;
const MOST_NAMES = 8;

/** Large numbers in shooting order, each in the middle of its panel. */
export function orderNumbers(view: View, room: Room): Svg {
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
      const sizePx = held(side * 0.45, SMALL_PX, 40);
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

/** Extent of an ellipse on the page: half its width and half its height. */
function halfExtent(each: ChartEllipse, view: View): { readonly width: number; readonly height: number } {
  const turn = ellipseTurnDeg(each, view.chart.positionAngleDeg) * RAD_PER_DEG;
  const [major, minor] = [halfPx(each.majorDeg, view), halfPx(each.minorDeg, view)];
  return {
    width: Math.hypot(major * Math.sin(turn), minor * Math.cos(turn)),
    height: Math.hypot(major * Math.cos(turn), minor * Math.sin(turn)),
  };
}

/** Names of target and neighbours beside their ellipses, as far as there is room. */
export function ellipseNames(view: View, room: Room): Svg {
  const { target, neighbours } = view.chart;
  const wanted = [
    ...(target === null ? [] : [{ each: target, isTarget: true }]),
    ...neighbours.slice(0, MOST_NAMES).map((each) => ({ each, isTarget: false })),
  ]
    .map((one) => {
      const at = view.onPage(asFramed(one.each.xiDeg, one.each.etaDeg, view.chart.positionAngleDeg));
      const half = halfExtent(one.each, view);
      const own: Box = {
        left: at.x - half.width,
        top: at.y - half.height,
        width: 2 * half.width,
        height: 2 * half.height,
      };
      return { ...one, at, half, own };
    })
    .filter(({ at }) => Math.hypot(at.x - CENTRE.x, at.y - CENTRE.y) < RADIUS_PX);
  // A large ellipse is mostly empty: names may stand in it.
  room.taken.push(...wanted.flatMap(({ own }) => (Math.max(own.width, own.height) > 120 ? [] : [own])));
  return join(
    wanted.map(({ each, isTarget, at, half, own }) => {
      const weight = isTarget ? ("bold" as const) : ("regular" as const);
      const lines = [
        ...nameLines(each.name, 150, 2, SMALL_PX, weight),
        ...(isTarget ? [] : nameLines(each.kindWords, 150, 1)),
      ];
      const width = Math.max(0, ...lines.map((text) => widthOf(text, SMALL_PX, weight)));
      const height = lines.length * leading(SMALL_PX);
      const box = takeFirst(room, around(at, half.width, half.height, { width, height }), own);
      if (box === null) return NOTHING;
      const ink = isTarget ? PALETTE.copper : PALETTE.bone;
      return group({ opacity: isTarget || isInside(box, view) ? undefined : OUTSIDE_NAMES }, [
        joint(box, at, half, ink),
        lettering({ x: box.left + width / 2, y: box.top + SMALL_PX - 1 }, lines, {
          anchor: "middle",
          weight,
          ink,
          halo: PALETTE.umber,
        }),
      ]);
    }),
  );
}

/** A hairline from a name to its ellipse where they stand apart. */
function joint(
  box: Box,
  at: Point,
  half: { readonly width: number; readonly height: number },
  ink: string,
): Svg {
  const from = nearest(box, at);
  const reach = Math.hypot((from.x - at.x) / half.width, (from.y - at.y) / half.height);
  const edge = { x: at.x + (from.x - at.x) / reach, y: at.y + (from.y - at.y) / reach };
  if (reach <= 1 || Math.hypot(from.x - edge.x, from.y - edge.y) < 14) return NOTHING;
  return line(from, edge, { stroke: ink, "stroke-width": 0.8 });
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
export function northHand(positionAngleDeg: number, room: Room): Svg {
  const north = positionAngleDeg * RAD_PER_DEG;
  const at = (angle: number, distance: number): Point => ({
    x: CENTRE.x + Math.sin(angle) * distance,
    y: CENTRE.y - Math.cos(angle) * distance,
  });
  const turned = Math.round((((positionAngleDeg % 360) + 360) % 360) * 10) / 10;
  const text = `north ${turned}°`;
  const tip = at(north, RADIUS_PX - 10);
  room.taken.push({ left: tip.x - 10, top: tip.y - 10, width: 20, height: 20 });
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

/** Turns along the rim that a word may stand away from its mark, radians, the least first. */
const ASIDE = [0, 0.1, -0.1, 0.2, -0.2, 0.3, -0.3, 0.4, -0.4] as const;

/** Baseline of a word set inside the rim, as near to its mark as its corners and the brackets allow. */
function rimWord(
  text: string,
  sizePx: number,
  at: (angle: number, distance: number) => Point,
  angle: number,
  room: Room,
): Point {
  const width = widthOf(text, sizePx, "bold");
  const boxes = ASIDE.flatMap((aside) =>
    Array.from({ length: 20 }, (_, i): Box => {
      const middle = at(angle + aside, RADIUS_PX - 22 - 3 * i);
      return { left: middle.x - width / 2, top: middle.y - sizePx / 2, width, height: sizePx };
    }),
  ).sort((a, b) => away(a) - away(b));
  function away(box: Box): number {
    const tip = at(angle, RADIUS_PX - 22);
    return Math.hypot(box.left + width / 2 - tip.x, box.top + sizePx / 2 - tip.y);
  }
  const { left, top } = takeFirst({ ...room, radius: RADIUS_PX - 9 }, boxes) ?? {
    left: CENTRE.x - width / 2,
    top: CENTRE.y - RADIUS_PX / 2,
  };
  return { x: left + width / 2, y: top + sizePx * 0.85 };
}
