/**
 * Comma-separated values as text: quoting, delimiters, headings.
 *
 * Source: RFC 4180; semicolons too, as spreadsheets write where the comma is decimal.
 *
 * @packageDocumentation
 */

export type CsvRecord = {
  /** Counted from 1, the heading included. */
  readonly line: number;
  /** By column, in lower case; without spaces around. */
  readonly cells: ReadonlyMap<string, string>;
};

/** What a spreadsheet would run as a formula when it stands first in a cell. */
const FORMULA_START = /^[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-?\d/;

/** One record with its line end; `null` is an empty cell. */
export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map(csvCell).join(",")}\r\n`;
}

function csvCell(value: string | number | null): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  // An apostrophe keeps a spreadsheet from running it; reading takes it off again.
  const tame =
    (FORMULA_START.test(value) && !PLAIN_NUMBER.test(value)) || value.startsWith("'") ? `'${value}` : value;
  return /[",\r\n;]/.test(tame) || tame !== tame.trim() ? `"${tame.replaceAll('"', '""')}"` : tame;
}

/** Headings and records of a whole file; empty lines are skipped. */
export function readCsvRecords(text: string): {
  readonly columns: readonly string[];
  readonly records: readonly CsvRecord[];
} {
  const plain = text.replace(/^﻿/, "");
  const heading = plain.slice(0, plain.search(/[\r\n]|$/));
  const delimiter = heading.includes(";") && !heading.includes(",") ? ";" : ",";
  const [first, ...rest] = splitRecords(plain, delimiter);
  const columns = (first?.cells ?? []).map((name) => name.trim().toLowerCase());
  const records = rest
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ""))
    .map(({ line, cells }) => ({
      line,
      cells: new Map(columns.map((name, index) => [name, (cells[index] ?? "").trim().replace(/^'/, "")])),
    }));
  return { columns, records };
}

type RawRecord = { readonly line: number; readonly cells: readonly string[] };

/** Character by character: a quote that begins a cell holds until the next lone one. */
function splitRecords(text: string, delimiter: string): readonly RawRecord[] {
  const records: RawRecord[] = [];
  let cells: string[] = [];
  let cell = "";
  let quoted = false;
  let line = 1;
  let firstLine = 1;
  const endRecord = () => {
    records.push({ line: firstLine, cells: [...cells, cell] });
    cells = [];
    cell = "";
    firstLine = line;
  };
  for (let index = 0; index < text.length; index++) {
    const character = text[index] ?? "";
    const lineEnd = character === "\n" || (character === "\r" && text[index + 1] !== "\n");
    if (lineEnd) line += 1;
    if (quoted) {
      if (character !== '"') cell += character;
      else if (text[index + 1] === '"') cell += text[index++];
      else quoted = false;
    } else if (character === '"' && cell.trim() === "") {
      cell = "";
      quoted = true;
    } else if (character === delimiter) {
      cells.push(cell);
      cell = "";
    } else if (lineEnd) {
      endRecord();
    } else if (character !== "\r") {
      cell += character;
    }
  }
  if (cell !== "" || cells.length > 0) endRecord();
  return records;
}
