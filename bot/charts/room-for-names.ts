/**
 * Places for names among other things in a round picture.
 *
 * @packageDocumentation
 */
import type { Point } from "./svg.ts";

export type Box = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};

/** What has been taken, and the circle in which names must lie. */
export type Room = { readonly centre: Point; readonly radius: number; readonly taken: Box[] };

/** Clear space between things on one line. */
const APART_PX = 6;

function overlaps(a: Box, b: Box): boolean {
  return (
    a.left < b.left + b.width + APART_PX &&
    b.left < a.left + a.width + APART_PX &&
    a.top < b.top + b.height &&
    b.top < a.top + a.height
  );
}

function within(room: Room, box: Box): boolean {
  const far = [box.left, box.left + box.width].flatMap((x) =>
    [box.top, box.top + box.height].map((y) => Math.hypot(x - room.centre.x, y - room.centre.y)),
  );
  return Math.max(...far) <= room.radius;
}

/**
 * Takes the first of several boxes that is free and inside; `null` when none is.
 *
 * @param own - what the name belongs to: it may come as near to that as it likes
 */
export function takeFirst(room: Room, choices: readonly Box[], own: Box | null = null): Box | null {
  const others = room.taken.filter((other) => other !== own);
  const free = choices.find((box) => within(room, box) && !others.some((other) => overlaps(box, other)));
  if (free === undefined) return null;
  room.taken.push(free);
  return free;
}

const GAP_PX = 7;

/** Boxes beside, below and above a thing of some half-extent, then farther and farther round about it. */
export function around(
  middle: Point,
  halfWidth: number,
  halfHeight: number,
  box: Pick<Box, "width" | "height">,
): Box[] {
  const { width, height } = box;
  const beside = [
    [middle.x + halfWidth + GAP_PX, middle.y - height / 2],
    [middle.x - halfWidth - GAP_PX - width, middle.y - height / 2],
    [middle.x - width / 2, middle.y + halfHeight + GAP_PX],
    [middle.x - width / 2, middle.y - halfHeight - GAP_PX - height],
  ] as const;
  const rings = [0, 14, 28, 42].flatMap((farther) =>
    Array.from({ length: 16 }, (_, i) => {
      const angle = ((i + 0.5) / 16) * 2 * Math.PI;
      const x = middle.x + Math.cos(angle) * (halfWidth + GAP_PX + farther + width / 2);
      const y = middle.y + Math.sin(angle) * (halfHeight + GAP_PX + farther + height / 2);
      return [x - width / 2, y - height / 2] as const;
    }),
  );
  return [...beside, ...rings].map(([left, top]): Box => ({ left, top, width, height }));
}

/** The point of a box nearest to another point. */
export function nearest(box: Box, to: Point): Point {
  return {
    x: Math.min(Math.max(to.x, box.left), box.left + box.width),
    y: Math.min(Math.max(to.y, box.top), box.top + box.height),
  };
}
