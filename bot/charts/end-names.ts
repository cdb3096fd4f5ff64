/**
 * Names at the ends of lines, beside the plot and apart from one another; a hairline
 * joins a name to its line where it had to move.
 *
 * @packageDocumentation
 */
import { PALETTE } from "../../config/palette.ts";
import type { Weight } from "./font.ts";
import { leading, lettering, nameLines, SMALL_PX, widthOf } from "./lettering.ts";
import { MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import { spread } from "./scale.ts";
import { join, type Point, path, type Svg, through } from "./svg.ts";

export type EndName = {
  readonly text: string;
  /** Where the line ends. */
  readonly end: Point;
  readonly ink: string;
  readonly weight?: Weight;
  /** Smaller words under the name. */
  readonly note?: string;
};

const MOST_LINES = 3;
const GAP_PX = 4;

/** Room in pixels that names want beside a plot, at most `mostPx`. */
export function endNameRoom(texts: readonly string[], mostPx: number): number {
  const widest = Math.max(0, ...texts.map((text) => widthOf(text, SMALL_PX, "bold")));
  return Math.min(mostPx, Math.ceil(widest) + 2);
}

/**
 * The names in a column.
 *
 * @param left - where the column begins; it runs to the page's margin
 * @param top - highest place a name may reach
 * @param bottom - lowest
 */
export function endNames(names: readonly EndName[], left: number, top: number, bottom: number): Svg {
  const room = PAGE_WIDTH_PX - MARGIN_PX - left;
  const step = leading(SMALL_PX);
  const set = names.map((name) => ({
    ...name,
    lines: nameLines(name.text, room, MOST_LINES, SMALL_PX, name.weight),
    notes: name.note === undefined ? [] : nameLines(name.note, room, 2),
  }));
  const centres = spread(
    set.map(({ end, lines, notes }) => ({
      centre: end.y,
      extent: (lines.length + notes.length) * step + GAP_PX,
    })),
    top,
    bottom,
  );
  return join(
    set.map(({ end, lines, notes, ink, weight }, i) => {
      const centre = centres[i] ?? end.y;
      const first = centre - ((lines.length + notes.length) * step) / 2 + SMALL_PX - 1;
      const moved = Math.abs(centre - end.y) > step / 2;
      const joint = [
        { x: end.x + 2, y: end.y },
        { x: left - 3, y: centre },
      ];
      return join([
        path(moved ? through(joint) : "", { stroke: PALETTE.boneFaint, "stroke-width": 1 }),
        lettering({ x: left, y: first }, lines, { ink, weight: weight ?? "regular", halo: PALETTE.umber }),
        lettering({ x: left, y: first + lines.length * step }, notes, {
          ink: PALETTE.boneQuiet,
          halo: PALETTE.umber,
        }),
      ]);
    }),
  );
}
