/**
 * A page to print or to keep on the phone for those who run an evening: dark ink on light
 * paper, its times in a column of their own.
 *
 * What fits a sheet of A4 as wide as every chart stands in one column. What does not is set
 * on a sheet twice as wide, in two.
 *
 * @packageDocumentation
 */
import type { SheetChart } from "../../commands/chart.ts";
import { PALETTE } from "../../config/palette.ts";
import { leading, lettering, wrapped } from "./lettering.ts";
import { cautionBlock, MARGIN_PX, PAGE_WIDTH_PX, sheetOfPaper } from "./page.ts";
import { group, join, line, type Svg } from "./svg.ts";

const TITLE_PX = 21;
const CAPTION_PX = 14;
const HEADING_PX = 16;
const LINE_PX = 14;
const TIME_COLUMN_PX = 48;
const GAP_PX = 22;
const INK = PALETTE.umber;

/** A picture of the sheet, and how wide it is. */
export type Sheet = { readonly svg: string; readonly widthPx: number };

/** The whole sheet as SVG text. */
export function drawSheet(chart: SheetChart): Sheet {
  const narrow = layOut(chart, PAGE_WIDTH_PX, 1);
  if (narrow.heightPx <= leastHeight(PAGE_WIDTH_PX)) return paper(narrow, PAGE_WIDTH_PX);
  return paper(layOut(chart, 2 * PAGE_WIDTH_PX, 2), 2 * PAGE_WIDTH_PX);
}

/** ISO 216: the sides of a sheet are as 1 to √2. */
function leastHeight(widthPx: number): number {
  return Math.ceil(widthPx * Math.SQRT2);
}

type LaidOut = { readonly content: Svg; readonly heightPx: number };

function paper({ content, heightPx }: LaidOut, widthPx: number): Sheet {
  const height = Math.max(leastHeight(widthPx), heightPx);
  return { svg: sheetOfPaper(height, PALETTE.bone, content, widthPx), widthPx };
}

/** Cautions, title and caption across the sheet, then the blocks down its columns. */
function layOut(chart: SheetChart, widthPx: number, columns: number): LaidOut {
  const room = widthPx - 2 * MARGIN_PX;
  const head = new Column(MARGIN_PX, room, MARGIN_PX);
  for (const caution of chart.cautions) head.caution(caution);
  head.write(chart.title, TITLE_PX, "bold");
  head.skip(2);
  head.write(chart.caption, CAPTION_PX, "regular");
  const columnRoom = (room - (columns - 1) * GAP_PX) / columns;
  const blocks = chart.blocks.map((block) => {
    const measured = new Column(0, columnRoom, 0);
    writeBlock(measured, block);
    return { block, heightPx: measured.y };
  });
  const share = blocks.reduce((sum, { heightPx }) => sum + heightPx, 0) / columns;
  const drawn: Column[] = [];
  let column = new Column(MARGIN_PX, columnRoom, head.y);
  let filled = 0;
  for (const { block, heightPx } of blocks) {
    // A block that would run over its column's share by more than half begins the next.
    if (filled > 0 && filled + heightPx / 2 > share && drawn.length < columns - 1) {
      drawn.push(column);
      column = new Column(MARGIN_PX + drawn.length * (columnRoom + GAP_PX), columnRoom, head.y);
      filled = 0;
    }
    writeBlock(column, block);
    filled += heightPx;
  }
  const all = [head, ...drawn, column];
  return {
    content: join(all.flatMap(({ drawings }) => drawings)),
    heightPx: Math.ceil(Math.max(...all.map(({ y }) => y)) + MARGIN_PX),
  };
}

function writeBlock(column: Column, { heading, lines }: SheetChart["blocks"][number]): void {
  column.skip(14);
  column.rule();
  column.skip(4);
  column.write(heading, HEADING_PX, "bold");
  for (const text of lines) {
    column.skip(3);
    const timed = /^(\d{1,2}:\d{2})[ :–-]+(.+)$/su.exec(text);
    if (timed === null) {
      column.write(text, LINE_PX, "regular");
      continue;
    }
    column.time(timed[1] ?? "");
    column.write(timed[2] ?? "", LINE_PX, "regular", TIME_COLUMN_PX);
  }
}

/** Words running down the sheet. */
class Column {
  readonly drawings: Svg[] = [];
  readonly #x: number;
  readonly #room: number;
  y: number;

  constructor(x: number, room: number, y: number) {
    this.#x = x;
    this.#room = room;
    this.y = y;
  }

  skip(px: number): void {
    this.y += px;
  }

  caution(text: string): void {
    const block = cautionBlock(text, this.#room, { ground: INK, ink: PALETTE.bone });
    this.drawings.push(group({ transform: `translate(${this.#x} ${this.y})` }, [block.content]));
    this.y += block.heightPx + 8;
  }

  rule(): void {
    const ends = [
      { x: this.#x, y: this.y },
      { x: this.#x + this.#room, y: this.y },
    ] as const;
    this.drawings.push(line(ends[0], ends[1], { stroke: PALETTE.copper, "stroke-width": 2 }));
  }

  time(text: string): void {
    const style = { sizePx: LINE_PX, weight: "bold", ink: INK } as const;
    this.drawings.push(lettering({ x: this.#x, y: this.y + LINE_PX }, [text], style));
  }

  write(text: string, sizePx: number, weight: "bold" | "regular", indent = 0): void {
    const lines = wrapped(text, this.#room - indent, sizePx, weight);
    this.drawings.push(
      lettering({ x: this.#x + indent, y: this.y + sizePx }, lines, { sizePx, weight, ink: INK }),
    );
    this.y += lines.length * leading(sizePx);
  }
}
