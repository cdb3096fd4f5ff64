/**
 * The page every chart stands on: cautions whole at the top, the title, the caption,
 * then the drawing. It is 400 px wide and as tall as its words and drawing need.
 *
 * @packageDocumentation
 */
import { PALETTE } from "../../config/palette.ts";
import { leading, lettering, wrapped } from "./lettering.ts";
import { element, group, join, line, NOTHING, rect, type Svg } from "./svg.ts";

export const PAGE_WIDTH_PX = 400;
export const MARGIN_PX = 14;
export const ROOM_PX = PAGE_WIDTH_PX - 2 * MARGIN_PX;

/** What a chart draws, its own top at 0. */
export type Drawing = { readonly heightPx: number; readonly content: Svg };

/** Some words or a drawing, and how much of the page's height they take. */
type Block = Drawing;

type Heading = {
  readonly title: string;
  readonly caption: string;
  readonly cautions: readonly string[];
};

const TITLE_PX = 19;
const CAPTION_PX = 14;
const CAUTION_PX = 14;
const CAUTION_PADDING_PX = 9;

/** Pattern of slanting lines for what is neither full nor empty. */
export const HATCH = "url(#hatch)";

/** A caution as a block of the other tone, so that nobody takes it for a caption. */
export function cautionBlock(
  text: string,
  widthPx: number,
  tone: { readonly ground: string; readonly ink: string } = { ground: PALETTE.bone, ink: PALETTE.umber },
): Block {
  const room = widthPx - 2 * CAUTION_PADDING_PX - 6;
  const lines = wrapped(text, room, CAUTION_PX, "bold");
  const height = lines.length * leading(CAUTION_PX) + 2 * CAUTION_PADDING_PX - 2;
  return {
    heightPx: height,
    content: join([
      rect(0, 0, widthPx, height, { fill: tone.ground, rx: 3 }),
      rect(0, 0, 6, height, { fill: PALETTE.copper }),
      lettering({ x: CAUTION_PADDING_PX + 6, y: CAUTION_PADDING_PX + CAUTION_PX - 2 }, lines, {
        sizePx: CAUTION_PX,
        weight: "bold",
        ink: tone.ink,
      }),
    ]),
  };
}

function paragraph(text: string, sizePx: number, bold: boolean, ink: string): Block {
  const lines = wrapped(text, ROOM_PX, sizePx, bold ? "bold" : "regular");
  if (lines.length === 0) return { heightPx: 0, content: NOTHING };
  return {
    heightPx: lines.length * leading(sizePx) + 4,
    content: lettering({ x: 0, y: sizePx }, lines, { sizePx, weight: bold ? "bold" : "regular", ink }),
  };
}

/** The whole picture as SVG text. */
export function page(heading: Heading, drawing: Drawing): string {
  const blocks: Block[] = [
    ...heading.cautions.map((text) => cautionBlock(text, ROOM_PX)),
    paragraph(heading.title, TITLE_PX, true, PALETTE.bone),
    paragraph(heading.caption, CAPTION_PX, false, PALETTE.boneQuiet),
  ].filter((block) => block.heightPx > 0);
  const placed: Svg[] = [];
  let y = MARGIN_PX;
  blocks.forEach((block, i) => {
    placed.push(group({ transform: `translate(${MARGIN_PX} ${y})` }, [block.content]));
    y += block.heightPx + (i < heading.cautions.length ? 8 : 0);
  });
  y += 6;
  placed.push(group({ transform: `translate(0 ${y})` }, [drawing.content]));
  return sheetOfPaper(Math.ceil(y + drawing.heightPx + MARGIN_PX), PALETTE.umber, join(placed));
}

/** The root element, with the ground and the patterns that drawings may use. */
export function sheetOfPaper(
  heightPx: number,
  ground: string,
  content: Svg,
  widthPx = PAGE_WIDTH_PX,
): string {
  const hatch = element(
    "pattern",
    {
      id: "hatch",
      width: 5,
      height: 5,
      patternUnits: "userSpaceOnUse",
      patternTransform: "rotate(45)",
    },
    [line({ x: 2.5, y: 0 }, { x: 2.5, y: 5 }, { stroke: PALETTE.bone, "stroke-width": 1.3 })],
  );
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width: widthPx,
      height: heightPx,
      viewBox: `0 0 ${widthPx} ${heightPx}`,
    },
    [element("defs", {}, [hatch]), rect(0, 0, widthPx, heightPx, { fill: ground }), content],
  ).markup;
}
