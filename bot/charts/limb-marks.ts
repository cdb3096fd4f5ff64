/**
 * Marks around a disc: ticks on the limb with a letter outside, and rows of further
 * views under the first.
 *
 * @packageDocumentation
 */
import type { DiscView } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { type Turning, towards } from "./disc.ts";
import { leading, lettering, wrapped } from "./lettering.ts";
import { type Drawing, MARGIN_PX, ROOM_PX } from "./page.ts";
import { join, line, type Point, type Svg } from "./svg.ts";

const CAPTION_PX = 14;

/** Room that a mark takes outside the limb. */
export const MARK_PX = 24;

/** A tick outside the limb and a letter beyond it. */
export function limbMark(
  centre: Point,
  radius: number,
  positionAngleDeg: number,
  view: Turning,
  letter: string,
  ink: string,
): Svg {
  const at = towards(centre, positionAngleDeg, radius + 16, view);
  return join([
    line(
      towards(centre, positionAngleDeg, radius + 1, view),
      towards(centre, positionAngleDeg, radius + 7, view),
      { stroke: ink, "stroke-width": 2 },
    ),
    lettering({ x: at.x, y: at.y + 5 }, [letter], { sizePx: 14, weight: "bold", ink, anchor: "middle" }),
  ]);
}

/**
 * Views in rows, each with its caption beneath.
 *
 * @param perRow - at most so many side by side
 * @param mostRadiusPx - of a disc; less where the row is narrow
 */
export function viewRows(
  views: readonly DiscView[],
  top: number,
  perRow: number,
  mostRadiusPx: number,
  drawDisc: (centre: Point, radius: number, view: DiscView) => Svg,
): Drawing {
  const columns = Math.min(perRow, Math.max(1, views.length));
  const width = ROOM_PX / columns;
  const radius = Math.min(mostRadiusPx, width / 2 - MARK_PX - 2);
  const drawn: Svg[] = [];
  let y = top;
  for (let i = 0; i < views.length; i += columns) {
    let tallest = 0;
    views.slice(i, i + columns).forEach((view, column) => {
      const middle = MARGIN_PX + width * (column + 0.5);
      const lines = wrapped(view.caption, width - 10, CAPTION_PX);
      const captionY = y + 2 * (radius + MARK_PX) + 13;
      drawn.push(
        drawDisc({ x: middle, y: y + radius + MARK_PX }, radius, view),
        lettering({ x: middle, y: captionY }, lines, {
          sizePx: CAPTION_PX,
          anchor: "middle",
          ink: PALETTE.boneQuiet,
        }),
      );
      tallest = Math.max(tallest, captionY + lines.length * leading(CAPTION_PX) - y);
    });
    y += tallest;
  }
  return { heightPx: y - top, content: join(drawn) };
}
