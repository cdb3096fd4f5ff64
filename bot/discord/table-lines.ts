/**
 * Tables as a phone can show them: aligned in a code block while narrow, else a line a row.
 *
 * @packageDocumentation
 */
import type { Table } from "../../commands/answer.ts";
import { TABLE_COLUMNS } from "../../config/discord-limits.ts";
import { escaped, forCodeBlock } from "./plain-text.ts";

export type TableLines = {
  /** Inside a code block, or plain lines. */
  readonly fenced: boolean;
  /** The heading line; `null` where each row names its columns itself. */
  readonly head: string | null;
  readonly rows: readonly string[];
};

const GAP = "  ";

/** A table's lines, no wider than a phone where they stand in a code block. */
export function tableLines(table: Table): TableLines {
  const cells = [table.columns, ...table.rows].map((row) => row.map(forCodeBlock));
  const widths = table.columns.map((_, column) => Math.max(...cells.map((row) => width(row[column] ?? ""))));
  const total = widths.reduce((sum, one) => sum + one, 0) + GAP.length * (widths.length - 1);
  if (total > TABLE_COLUMNS)
    return { fenced: false, head: null, rows: table.rows.map((row) => spokenRow(table, row)) };
  const right = widths.map((_, column) => isNumeric(table, column));
  const [head = "", ...rows] = cells.map((row) => aligned(row, widths, right));
  return { fenced: true, head, rows };
}

/** Characters a reader counts, not code units. */
function width(text: string): number {
  return [...text].length;
}

/** A number, perhaps with its unit, or nothing. */
const NUMBER = /^(?:[−+-]?\d+(?:[.,]\d+)?\s?[%°′″\p{L}/]*|–?)$/u;

function isNumeric(table: Table, column: number): boolean {
  return table.rows.every((row) => NUMBER.test(row[column] ?? ""));
}

function aligned(row: readonly string[], widths: readonly number[], right: readonly boolean[]): string {
  const cells = widths.map((wide, column) => {
    const cell = row[column] ?? "";
    const space = " ".repeat(Math.max(0, wide - width(cell)));
    return right[column] ? space + cell : cell + space;
  });
  return cells.join(GAP).trimEnd();
}

function spokenRow({ columns }: Table, row: readonly string[]): string {
  const [first = "", ...rest] = row;
  const told = rest.flatMap((cell, index) => {
    const column = columns[index + 1] ?? "";
    return cell.trim() === "" ? [] : [column === "" ? escaped(cell) : `${escaped(column)} ${escaped(cell)}`];
  });
  return told.length === 0 ? `**${escaped(first)}**` : `**${escaped(first)}** · ${told.join(" · ")}`;
}
