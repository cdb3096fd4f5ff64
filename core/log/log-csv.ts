/**
 * The log as a table of comma-separated values, written and read.
 *
 * The columns are `night, object, passband, frames, sub_seconds, gain, iso,
 * sensor_celsius, rotation_deg`, and after them `rejected, rig, started, kind`; the
 * last four may be missing, and so may any other but the first two, `frames` and
 * `sub_seconds`. Quoting follows RFC 4180. Unknown figures are empty.
 *
 * @packageDocumentation
 */
import { type CsvRecord, csvLine, readCsvRecords } from "./csv-text.ts";
import type { CalibrationKind, FrameSet, LibrarySet } from "./frame-set.ts";

const LOG_COLUMNS = [
  ...[
    "night",
    "object",
    "passband",
    "frames",
    "sub_seconds",
    "gain",
    "iso",
    "sensor_celsius",
    "rotation_deg",
  ],
  ...["rejected", "rig", "started", "kind"],
] as const;

const NEEDED_COLUMNS = ["night", "frames"] as const;

export type LogTable = { readonly frames: readonly FrameSet[]; readonly library: readonly LibrarySet[] };

export type LogCsvReading =
  | {
      readonly kind: "read";
      readonly table: LogTable;
      /** Columns that the log does not know, left aside. */
      readonly unknownColumns: readonly string[];
    }
  /** No such table at all. */
  | { readonly kind: "no-table"; readonly missingColumns: readonly string[] }
  /** One row cannot be read; lines are counted from 1, the heading included. */
  | { readonly kind: "bad-row"; readonly line: number; readonly column: string; readonly text: string };

/** The whole log, one row a line, in the order given: subs first, then the library. */
export function writeLogCsv(table: LogTable): string {
  const rows = [
    ...table.frames.map((set) => [
      ...[set.night, set.object, set.passband, set.frames, set.subSeconds, set.gain, set.iso],
      ...[set.sensorCelsius, set.rotationDeg, set.rejected, set.rig, isoOf(set.startedAt), "light"],
    ]),
    ...table.library.map((set) => [
      ...[set.night, null, set.passband, set.frames, set.subSeconds, set.gain, set.iso],
      ...[set.sensorCelsius, set.rotationDeg, null, set.rig, isoOf(set.startedAt), set.kind],
    ]),
  ];
  return [LOG_COLUMNS, ...rows].map((cells) => csvLine(cells)).join("");
}

/**
 * Reads such a table, whoever wrote it: also with semicolons and decimal commas.
 *
 * @param text - the whole file
 * @returns the rows, or the first fault; figures are not yet checked against any limits
 */
export function readLogCsv(text: string): LogCsvReading {
  const { columns, records } = readCsvRecords(text);
  const missingColumns = NEEDED_COLUMNS.filter((name) => !columns.includes(name));
  if (missingColumns.length > 0) return { kind: "no-table", missingColumns };
  const frames: FrameSet[] = [];
  const library: LibrarySet[] = [];
  for (const record of records) {
    const row = readRow(record);
    if ("column" in row) return { kind: "bad-row", line: record.line, ...row };
    if (row.sort === "light") frames.push(row.set);
    else library.push(row.set);
  }
  const known: readonly string[] = LOG_COLUMNS;
  const unknownColumns = columns.filter((name) => name !== "" && !known.includes(name));
  return { kind: "read", table: { frames, library }, unknownColumns };
}

type BadCell = { readonly column: string; readonly text: string };
type Row =
  | { readonly sort: "light"; readonly set: FrameSet }
  | { readonly sort: "library"; readonly set: LibrarySet };

function readRow({ cells }: CsvRecord): Row | BadCell {
  const textOf = (column: string) => cells.get(column) ?? "";
  const bad = (column: string): BadCell => ({ column, text: textOf(column) });
  const figures = new Map<string, number | null>();
  for (const column of FIGURE_COLUMNS) {
    const figure = figureOf(textOf(column));
    if (figure === "unreadable") return bad(column);
    figures.set(column, figure);
  }
  const night = textOf("night");
  const started = textOf("started");
  const startedAt = started === "" ? null : instantOf(started);
  const frames = figures.get("frames") ?? null;
  const subSeconds = figures.get("sub_seconds") ?? null;
  if (!isDate(night)) return bad("night");
  if (frames === null) return bad("frames");
  if (startedAt === "unreadable") return bad("started");
  const shared = {
    night,
    frames,
    gain: figures.get("gain") ?? null,
    iso: figures.get("iso") ?? null,
    sensorCelsius: figures.get("sensor_celsius") ?? null,
    rotationDeg: figures.get("rotation_deg") ?? null,
    rig: textOf("rig") || null,
    startedAt,
  };
  const kind = textOf("kind").toLowerCase() || "light";
  if (kind === "light") {
    const object = textOf("object");
    if (object === "") return bad("object");
    if (subSeconds === null) return bad("sub_seconds");
    const passband = textOf("passband") || "none";
    const rejected = figures.get("rejected") ?? 0;
    return { sort: "light", set: { ...shared, object, passband, subSeconds, rejected } };
  }
  if (!isCalibrationKind(kind)) return bad("kind");
  if (kind !== "bias" && subSeconds === null) return bad("sub_seconds");
  return { sort: "library", set: { ...shared, kind, passband: textOf("passband") || null, subSeconds } };
}

const FIGURE_COLUMNS = [
  ...["frames", "sub_seconds", "gain", "iso", "sensor_celsius", "rotation_deg", "rejected"],
] as const;

/** `YYYY-MM-DD`, of a day that exists. */
function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const instant = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(instant.getTime()) && instant.toISOString().startsWith(text);
}

function isCalibrationKind(text: string): text is CalibrationKind {
  return text === "dark" || text === "flat" || text === "bias";
}

function figureOf(text: string): number | null | "unreadable" {
  if (text === "") return null;
  const tidy = text.replace(/^[−–]/, "-").replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(tidy) ? Number(tidy) : "unreadable";
}

function instantOf(text: string): Date | "unreadable" {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?Z$/.test(text)) return "unreadable";
  const instant = new Date(text);
  return Number.isNaN(instant.getTime()) ? "unreadable" : instant;
}

function isoOf(instant: Date | null): string | null {
  return instant === null ? null : instant.toISOString();
}
