/**
 * Text laid out for a terminal: widths, folded lines, aligned tables.
 *
 * @packageDocumentation
 */
import type { Table } from "../../commands/answer.ts";

const GRAPHEMES = new Intl.Segmenter("en", { granularity: "grapheme" });

/** What a terminal gives two columns: East Asian wide letters and pictures. */
const WIDE =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;

/** Columns between those of a table. */
const GAP = "  ";

/** No column of a table is folded below this. */
const NARROWEST = 8;

/** Columns a text takes on a terminal. */
export function displayWidth(text: string): number {
  let width = 0;
  for (const { segment } of GRAPHEMES.segment(text)) width += WIDE.test(segment) ? 2 : 1;
  return width;
}

/**
 * A paragraph folded at spaces into lines of at most `width` columns.
 *
 * @param hang - spaces before every line but the first, within the width
 * @returns at least one line; a word longer than a line is parted
 */
export function wrap(text: string, width: number, hang = 0): string[] {
  const lines: string[] = [];
  let line = "";
  let used = 0;
  const indent = " ".repeat(hang);
  const flush = () => {
    lines.push(line.trimEnd());
    line = indent;
    used = hang;
  };
  for (const word of text.split(/\s+/).filter((part) => part !== "")) {
    for (const piece of pieces(word, width - hang)) {
      const pieceWidth = displayWidth(piece);
      if (used > (lines.length > 0 ? hang : 0) && used + 1 + pieceWidth > width) flush();
      const fresh = line.trim() === "";
      line += fresh ? piece : ` ${piece}`;
      used += pieceWidth + (fresh ? 0 : 1);
    }
  }
  if (line.trim() !== "" || lines.length === 0) lines.push(line.trimEnd());
  return lines;
}

/** A word in parts that fit. */
function pieces(word: string, width: number): string[] {
  if (displayWidth(word) <= width) return [word];
  const parts: string[] = [];
  let part = "";
  let used = 0;
  for (const { segment } of GRAPHEMES.segment(word)) {
    const wide = displayWidth(segment);
    if (used + wide > width) {
      parts.push(part);
      part = "";
      used = 0;
    }
    part += segment;
    used += wide;
  }
  return [...parts, part];
}

/**
 * A table with aligned columns; the widest ones are folded until it fits.
 *
 * A column of figures stands to the right, words to the left.
 */
export function tableLines(table: Table, width: number): string[] {
  const rows = table.columns.length > 0 ? [table.columns, ...table.rows] : table.rows;
  const columns = Math.max(0, ...rows.map((row) => row.length));
  if (columns === 0) return [];
  const wanted = Array.from({ length: columns }, (_, column) =>
    Math.max(...rows.map((row) => displayWidth(row[column] ?? ""))),
  );
  const widths = fitted(wanted, width - GAP.length * (columns - 1));
  const toTheRight = widths.map((_, column) => isFigures(table.rows.map((row) => row[column] ?? "")));
  const lines = rows.flatMap((row) => {
    const cells = widths.map((cellWidth, column) => wrap(row[column] ?? "", cellWidth));
    const height = Math.max(...cells.map((cell) => cell.length));
    return Array.from({ length: height }, (_, line) =>
      cells
        .map((cell, column) => padded(cell[line] ?? "", widths[column] ?? 0, toTheRight[column] ?? false))
        .join(GAP)
        .trimEnd(),
    );
  });
  return lines;
}

/** Column widths that together fit, taken from the widest first. */
function fitted(wanted: readonly number[], room: number): number[] {
  const widths = [...wanted];
  let over = widths.reduce((sum, width) => sum + width, 0) - room;
  while (over > 0) {
    const widest = widths.indexOf(Math.max(...widths));
    if ((widths[widest] ?? 0) <= NARROWEST) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
    over--;
  }
  return widths;
}

function isFigures(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== "" && cell !== "–");
  return filled.length > 0 && filled.every((cell) => /^[−+-]?[\d.,\s]+ ?[%°″′]?$/.test(cell));
}

function padded(text: string, width: number, toTheRight: boolean): string {
  const space = " ".repeat(Math.max(0, width - displayWidth(text)));
  return toTheRight ? space + text : text + space;
}
