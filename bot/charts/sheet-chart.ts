/**
 * A page to print or to keep on the phone for those who run an evening: dark ink on light
 * paper, at least as tall as a sheet of A4, its times in a column of their own.
 *
 * @packageDocumentation
 */
import type { SheetChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { leading, lettering, wrapped } from "./lettering.ts";
import { cautionBlock, MARGIN_PX, PAGE_WIDTH_PX, ROOM_PX, sheetOfPaper } from "./page.ts";
import { group, join, line, type Svg } from "./svg.ts";

const TITLE_PX = 21;
const CAPTION_PX = 14;
const HEADING_PX = 16;
const LINE_PX = 14;
const TIME_COLUMN_PX = 48;
/** ISO 216: the sides of a sheet are as 1 to √2. */
const LEAST_HEIGHT_PX = Math.ceil(PAGE_WIDTH_PX * Math.SQRT2);

/** The whole sheet as SVG text. */
export function sheetSvg(chart: SheetChart): string {
  const ink = PALETTE.umber;
  const drawn: Svg[] = [];
  let y = MARGIN_PX;
  for (const caution of chart.cautions) {
    const block = cautionBlock(caution, ROOM_PX, { ground: PALETTE.umber, ink: PALETTE.bone });
    drawn.push(group({ transform: `translate(${MARGIN_PX} ${y})` }, [block.content]));
    y += block.heightPx + 8;
  }
  const write = (text: string, sizePx: number, weight: "bold" | "regular", indent = 0) => {
    const lines = wrapped(text, ROOM_PX - indent, sizePx, weight);
    drawn.push(lettering({ x: MARGIN_PX + indent, y: y + sizePx }, lines, { sizePx, weight, ink }));
    y += lines.length * leading(sizePx);
  };
  write(chart.title, TITLE_PX, "bold");
  y += 2;
  write(chart.caption, CAPTION_PX, "regular");
  for (const { heading, lines } of chart.blocks) {
    y += 14;
    drawn.push(
      line({ x: MARGIN_PX, y }, { x: MARGIN_PX + ROOM_PX, y }, { stroke: PALETTE.copper, "stroke-width": 2 }),
    );
    y += 4;
    write(heading, HEADING_PX, "bold");
    for (const text of lines) {
      y += 3;
      const timed = /^(\d{1,2}:\d{2})[ :–-]+(.+)$/su.exec(text);
      if (timed === null) {
        write(text, LINE_PX, "regular");
        continue;
      }
      drawn.push(
        lettering({ x: MARGIN_PX, y: y + LINE_PX }, [timed[1] ?? ""], {
          sizePx: LINE_PX,
          weight: "bold",
          ink,
        }),
      );
      write(timed[2] ?? "", LINE_PX, "regular", TIME_COLUMN_PX);
    }
  }
  return sheetOfPaper(Math.max(LEAST_HEIGHT_PX, Math.ceil(y + MARGIN_PX)), PALETTE.bone, join(drawn));
}
