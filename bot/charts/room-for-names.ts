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

/** Boxes beside, below and above a thing of some half-extent, the nearest first. */
export function around(
  middle: Point,
  halfWidth: number,
  halfHeight: number,
  box: Pick<Box, "width" | "height">,
) {
  const { width, height } = box;
  const gap = 7;
  const spots = [
    [middle.x + halfWidth + gap, middle.y - height / 2],
    [middle.x - halfWidth - gap - width, middle.y - height / 2],
    [middle.x - width / 2, middle.y + halfHeight + gap],
    [middle.x - width / 2, middle.y - halfHeight - gap - height],
    [middle.x + halfWidth * 0.7 + gap, middle.y + halfHeight * 0.7],
    [middle.x - halfWidth * 0.7 - gap - width, middle.y + halfHeight * 0.7],
    [middle.x + halfWidth * 0.7 + gap, middle.y - halfHeight * 0.7 - height],
    [middle.x - halfWidth * 0.7 - gap - width, middle.y - halfHeight * 0.7 - height],
    [middle.x, middle.y + halfHeight + gap],
    [middle.x - width, middle.y + halfHeight + gap],
    [middle.x, middle.y - halfHeight - gap - height],
    [middle.x - width, middle.y - halfHeight - gap - height],
  ] as const;
  return spots.map(([left, top]): Box => ({ left, top, width, height }));
}
