/**
 * Words on a chart: never smaller than 13 px on a page 400 px wide, wrapped or
 * shortened to the room there is.
 *
 * @packageDocumentation
 */
import { PALETTE } from "../../config/palette.ts";
import { drawable, FONT_FAMILY, textWidth, type Weight } from "./font.ts";
import { element, group, type Point, type Svg, words } from "./svg.ts";

/** The smallest lettering, in pixels of a page 400 wide. */
export const SMALL_PX = 13;

export type Lettering = {
  readonly sizePx?: number;
  readonly weight?: Weight;
  readonly ink?: string;
  readonly anchor?: "start" | "middle" | "end";
  /** A rim in this colour that keeps lines from running through the letters. */
  readonly halo?: string;
};

/**
 * Lines of text, the first with its baseline at a point.
 *
 * A space stands between the lines in the markup, so that the text reads whole when
 * the tags are taken out.
 */
export function lettering(at: Point, lines: readonly string[], style: Lettering = {}): Svg {
  const sizePx = Math.max(SMALL_PX, style.sizePx ?? SMALL_PX);
  const each = lines.map((text, i) =>
    element("text", { x: at.x, y: at.y + i * leading(sizePx) }, [words(drawable(text))]),
  );
  return group(
    {
      "font-family": FONT_FAMILY,
      "font-size": sizePx,
      "font-weight": style.weight === "bold" ? 700 : undefined,
      "text-anchor": style.anchor === "start" ? undefined : style.anchor,
      fill: style.ink ?? PALETTE.bone,
      stroke: style.halo,
      "stroke-width": style.halo === undefined ? undefined : 4,
      "stroke-linejoin": style.halo === undefined ? undefined : "round",
      "paint-order": style.halo === undefined ? undefined : "stroke",
    },
    each.flatMap((piece, i) => (i === 0 ? [piece] : [words(" "), piece])),
  );
}

/** Distance between baselines. */
export function leading(sizePx: number): number {
  return Math.round(sizePx * 1.25);
}

/** Width in pixels of text as it will be drawn. */
export function widthOf(text: string, sizePx: number = SMALL_PX, weight: Weight = "regular"): number {
  return textWidth(drawable(text), sizePx, weight);
}

/** Text broken into lines no wider than `roomPx`; a word wider than that is broken inside. */
export function wrapped(
  text: string,
  roomPx: number,
  sizePx: number = SMALL_PX,
  weight: Weight = "regular",
): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of drawable(text).split(" ").filter(Boolean)) {
    const longer = current === "" ? word : `${current} ${word}`;
    if (textWidth(longer, sizePx, weight) <= roomPx) {
      current = longer;
      continue;
    }
    if (current !== "") lines.push(current);
    current = "";
    for (const letter of word) {
      if (current !== "" && textWidth(current + letter, sizePx, weight) > roomPx) {
        lines.push(current);
        current = "";
      }
      current += letter;
    }
  }
  if (current !== "") lines.push(current);
  return lines;
}

/** One line no wider than `roomPx`, ended by an ellipsis where it had to be cut. */
export function shortened(
  text: string,
  roomPx: number,
  sizePx: number = SMALL_PX,
  weight: Weight = "regular",
): string {
  const whole = drawable(text);
  if (textWidth(whole, sizePx, weight) <= roomPx) return whole;
  let kept = "";
  for (const letter of whole) {
    if (textWidth(`${kept}${letter}…`, sizePx, weight) > roomPx) break;
    kept += letter;
  }
  return `${kept.trimEnd()}…`;
}

/** A name in at most `most` lines, the last shortened if need be. For names only: cautions are never cut. */
export function nameLines(
  text: string,
  roomPx: number,
  most: number,
  sizePx: number = SMALL_PX,
  weight: Weight = "regular",
): string[] {
  const lines = wrapped(text, roomPx, sizePx, weight);
  if (lines.length <= most) return lines;
  const rest = lines.slice(most - 1).join(" ");
  return [...lines.slice(0, most - 1), shortened(rest, roomPx, sizePx, weight)];
}
