/**
 * Scales along a plot's left and foot, for the charts of lines.
 *
 * @packageDocumentation
 */
import { PALETTE } from "../../config/palette.ts";
import { lettering, widthOf } from "./lettering.ts";
import { MARGIN_PX, PAGE_WIDTH_PX } from "./page.ts";
import { held, type Scale } from "./scale.ts";
import { join, line, type Svg } from "./svg.ts";

export type Plot = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly base: number;
  readonly xOf: Scale;
  readonly yOf: Scale;
};

/** A figure without needless digits: `0.5`, `12`, `1200`. */
export function figureWords(value: number): string {
  return String(Number(value.toPrecision(4))).replace("-", "−");
}

/** Hairlines across at round values, each with its figure at the left. */
export function heights(plot: Plot, values: readonly number[]): Svg {
  return join(
    values.map((value) => {
      const y = plot.yOf(value);
      const foot = Math.abs(y - plot.base) < 0.5;
      return join([
        line(
          { x: plot.left, y },
          { x: plot.right, y },
          {
            stroke: foot ? PALETTE.boneQuiet : PALETTE.boneFaint,
            "stroke-width": foot ? 1.2 : 0.6,
          },
        ),
        lettering({ x: plot.left - 6, y: y + 4.5 }, [figureWords(value)], {
          anchor: "end",
          ink: PALETTE.boneQuiet,
        }),
      ]);
    }),
  );
}

/** Ticks under the foot with words; one that would touch the last is left out. */
export function feet(plot: Plot, marks: readonly { readonly at: number; readonly text: string }[]): Svg {
  let taken = Number.NEGATIVE_INFINITY;
  return join(
    marks.map(({ at, text }) => {
      const x = plot.xOf(at);
      const half = widthOf(text) / 2;
      const middle = held(x, MARGIN_PX + half, PAGE_WIDTH_PX - MARGIN_PX - half);
      const tick = line({ x, y: plot.base }, { x, y: plot.base + 4 }, { stroke: PALETTE.boneQuiet });
      if (middle - half < taken + 8) return tick;
      taken = middle + half;
      return join([
        tick,
        lettering({ x: middle, y: plot.base + 18 }, [text], { anchor: "middle", ink: PALETTE.boneQuiet }),
      ]);
    }),
  );
}
