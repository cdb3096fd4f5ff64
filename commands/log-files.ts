/**
 * Files to rows of the log: the log's own table, FITS headers, EXIF text.
 *
 * What a file does not say of its frames is taken from the member's words. A file
 * with one bad row is refused whole.
 *
 * @packageDocumentation
 */
import { FILE_BYTES_AT_MOST } from "../config/file-limits.ts";
import { ROWS_PER_FILE } from "../config/log-limits.ts";
import { PASSBANDS } from "../config/passbands.ts";
import { type ExifFault, readExifText } from "../core/log/exif-text.ts";
import { type FileFrame, type FileFrameFault, frameOfFits, isPlainWords } from "../core/log/fits-frame.ts";
import { type FitsFault, looksLikeFits, readFitsHeader } from "../core/log/fits-header.ts";
import type { FrameSet, LibrarySet } from "../core/log/frame-set.ts";
import { type LogTable, readLogCsv } from "../core/log/log-csv.ts";
import { nightOfInstant } from "../core/log/night-of.ts";
import { passbandOf } from "../core/log/passband.ts";
import type { Catalogue } from "../core/targets/catalogue.ts";
import { AskError } from "./ask-error.ts";
import { filterNames, type LogSetting, refuseFaulty, shown } from "./log-rows.ts";
import type { SentFile } from "./request.ts";
import { listWords } from "./words/sky.ts";
import { shortName } from "./words/target-words.ts";

/** What the member says, for files that do not say it themselves. */
export type ImportDefaults = {
  readonly setting: LogSetting;
  readonly catalogue: Catalogue;
  readonly object: string | null;
  readonly passband: string | null;
  readonly sort: FileFrame["sort"] | null;
};

/** Rows of one file, and what is worth saying of it. */
export type FileRows = LogTable & { readonly notes: readonly string[] };

/** A file or a pasted text, as messages name it. */
type Source = { readonly option: string; readonly name: string };

/**
 * The rows of a file.
 *
 * @throws AskError, one sentence, when the file is too large, of another kind, cut short, or holds
 * anything that cannot be true
 */
export function rowsOfFile(option: string, { name, bytes }: SentFile, defaults: ImportDefaults): FileRows {
  const source = { option, name: fileWords(name) };
  if (bytes.length > FILE_BYTES_AT_MOST) {
    const megabytes = (size: number) => (size / 1_048_576).toFixed(0);
    throw refusal(
      source,
      `too large: ${megabytes(bytes.length)} MB, at most ${megabytes(FILE_BYTES_AT_MOST)} MB.`,
    );
  }
  if (looksLikeFits(bytes)) return rowsOfFrames(source, [fitsFrame(source, bytes)], defaults);
  return rowsOfText(source, textOf(source, bytes), defaults);
}

/** The rows of pasted text. */
export function rowsOfPaste(option: string, text: string, defaults: ImportDefaults): FileRows {
  return rowsOfText({ option, name: "the text" }, text, defaults);
}

function rowsOfText(source: Source, text: string, defaults: ImportDefaults): FileRows {
  const [heading = ""] = text.trimStart().split(/[\r\n]/, 1);
  if (/[,;]/.test(heading)) return rowsOfTable(source, text, defaults);
  const reading = readExifText(text, defaults.setting.site.timeZone);
  if (reading.kind === "refused") throw refusal(source, exifFaultWords(reading.fault));
  return rowsOfFrames(source, reading.frames, defaults);
}

/** UTF-8 without control characters, or it is no text. */
function textOf(source: Source, bytes: Uint8Array): string {
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
    if (!/[\u0000-\u0008\u000e-\u001f]/.test(text)) return text;
  } catch {}
  throw refusal(
    source,
    "neither text nor a FITS file. A table that “log export” wrote, FITS files and EXIF text can be read.",
  );
}

function rowsOfTable(source: Source, text: string, defaults: ImportDefaults): FileRows {
  const reading = readLogCsv(text);
  switch (reading.kind) {
    case "no-table":
      throw refusal(source, `a table without the columns ${listWords(reading.missingColumns)}.`);
    case "bad-row":
      throw refusal(
        source,
        `line ${reading.line}, column ${reading.column}: “${shown(reading.text)}” cannot be read.`,
      );
    case "read": {
      const { frames, library } = reading.table;
      refuseLongFile(source, frames.length + library.length);
      const names = new Map<string, string>();
      const row = (index: number) => `${source.name}, row ${index + 1}`;
      return {
        frames: frames.map((set, index) => tableFrame(source, row(index), set, defaults, names)),
        library: library.map((set, index) => tableLibrary(source, row(frames.length + index), set, defaults)),
        notes:
          reading.unknownColumns.length === 0
            ? []
            : [`Columns left aside: ${listWords(reading.unknownColumns.map(shown))}.`],
      };
    }
  }
}

/** A row of the table: its object looked up once, its words plain, its figures possible. */
function tableFrame(
  source: Source,
  where: string,
  set: FrameSet,
  defaults: ImportDefaults,
  names: Map<string, string>,
): FrameSet {
  const object = names.get(set.object) ?? filedIn(source, where, set.object, defaults);
  names.set(set.object, object);
  const row = { ...set, object, passband: plainPassband(source, where, set.passband) };
  refusePlain(source, where, row.rig);
  refuseFaulty(row, defaults.setting.latestNight, () => source.option, `${where}: `);
  return row;
}

function tableLibrary(source: Source, where: string, set: LibrarySet, defaults: ImportDefaults): LibrarySet {
  const passband = set.passband === null ? null : plainPassband(source, where, set.passband);
  const row = { ...set, passband };
  refusePlain(source, where, row.rig);
  refuseFaulty(row, defaults.setting.latestNight, () => source.option, `${where}: `);
  return row;
}

/** The common name of a filter where there is one, else the words of the file. */
function plainPassband(source: Source, where: string, text: string): string {
  refusePlain(source, where, text);
  return passbandOf(text, [], PASSBANDS) ?? text;
}

function refusePlain(source: Source, where: string, text: string | null): void {
  if (text === null || isPlainWords(text)) return;
  throw refusal(source, `“${shown(text)}” (${where}) is no name: letters, figures and plain marks alone.`);
}

/** The name an object of a file is filed under. */
function filedIn(source: Source, where: string, text: string, { catalogue }: ImportDefaults): string {
  if (isPlainWords(text)) {
    const found = catalogue.find(text);
    if (found.kind === "found") return shortName(found.target);
    const nearest = found.nearest.slice(0, 3);
    const hint = nearest.length === 0 ? "" : ` The nearest names are ${listWords(nearest)}.`;
    throw refusal(
      source,
      `nothing is called “${shown(text)}” (${where}).${hint} Name a “target” to file it under.`,
    );
  }
  throw refusal(source, `“${shown(text)}” (${where}) is no name: letters, figures and plain marks alone.`);
}

function fitsFrame(source: Source, bytes: Uint8Array): FileFrame {
  const header = readFitsHeader(bytes);
  if (header.kind === "refused") throw refusal(source, fitsFaultWords(header.fault, header.card));
  const reading = frameOfFits(header.cards);
  if (reading.kind === "refused") throw refusal(source, frameFaultWords(reading.fault));
  return reading.frame;
}

/** One row a frame: its start tells it from every other. */
function rowsOfFrames(source: Source, found: readonly FileFrame[], defaults: ImportDefaults): FileRows {
  refuseLongFile(source, found.length);
  const frames: FrameSet[] = [];
  const library: LibrarySet[] = [];
  for (const [index, frame] of found.entries()) {
    const where = found.length === 1 ? source.name : `${source.name}, picture ${index + 1}`;
    const sort = defaults.sort ?? frame.sort;
    const row = sort === "light" ? lightOf(source, where, frame, defaults) : null;
    if (row !== null) frames.push(row);
    else if (sort !== "light") library.push(libraryOf(source, where, frame, sort, defaults));
  }
  for (const set of [...frames, ...library]) {
    refuseFaulty(set, defaults.setting.latestNight, () => source.option, `${source.name}: `);
  }
  return { frames, library, notes: [] };
}

function lightOf(source: Source, where: string, frame: FileFrame, defaults: ImportDefaults): FrameSet {
  const named = frame.object;
  if (defaults.object === null && named === null) {
    throw refusal(source, `it does not say what it shows (${where}): name a “target”.`);
  }
  return {
    ...sharedOf(frame, defaults),
    object: defaults.object ?? filedIn(source, where, named ?? "", defaults),
    passband: filterOf(source, where, frame, defaults) ?? "none",
    rejected: 0,
    subSeconds: frame.subSeconds,
  };
}

function libraryOf(
  source: Source,
  where: string,
  frame: FileFrame,
  kind: LibrarySet["kind"],
  defaults: ImportDefaults,
): LibrarySet {
  const shared = sharedOf(frame, defaults);
  return {
    ...shared,
    kind,
    passband: kind === "flat" ? (filterOf(source, where, frame, defaults) ?? "none") : null,
    subSeconds: kind === "bias" ? null : frame.subSeconds,
    rotationDeg: kind === "flat" ? shared.rotationDeg : null,
  };
}

function sharedOf(frame: FileFrame, { setting }: ImportDefaults) {
  return {
    night: nightOfInstant(frame.startedAt, setting.site.timeZone),
    frames: 1,
    gain: frame.gain,
    iso: frame.iso,
    sensorCelsius: frame.sensorCelsius,
    rotationDeg: frame.rotationDeg,
    rig: setting.rig?.name ?? null,
    startedAt: frame.startedAt,
  };
}

function filterOf(source: Source, where: string, frame: FileFrame, defaults: ImportDefaults): string | null {
  if (defaults.passband !== null || frame.filter === null) return defaults.passband;
  refusePlain(source, where, frame.filter);
  return passbandOf(frame.filter, filterNames(defaults.setting.rig), PASSBANDS) ?? frame.filter;
}

/** A file's name as it is said back: short, on one line. */
function fileWords(name: string): string {
  return [...name.replace(/[\p{C}@<>`]/gu, "·")].slice(0, 60).join("");
}

function refuseLongFile(source: Source, rows: number): void {
  if (rows > ROWS_PER_FILE) throw refusal(source, `${rows} rows, at most ${ROWS_PER_FILE}: part it.`);
}

function refusal({ option, name }: Source, what: string): AskError {
  return new AskError("unread-file", option, `“${option}”: ${name}: ${what}`);
}

function fitsFaultWords(fault: FitsFault, card: string | null): string {
  switch (fault) {
    case "no-fits":
      return "no FITS file.";
    case "truncated":
      return "the FITS header is cut short.";
    case "too-long":
      return "the FITS header does not end within 36 blocks.";
    case "bad-characters":
      return "the FITS header holds characters that are not allowed there.";
    case "bad-value":
      return `the FITS header's ${card ?? "card"} holds a value that cannot be read.`;
  }
}

function frameFaultWords(fault: FileFrameFault): string {
  return fault.kind === "missing"
    ? `the FITS header has no ${fault.key}.`
    : `the FITS header's ${fault.key} is “${shown(fault.text)}”, which cannot be kept.`;
}

function exifFaultWords(fault: ExifFault): string {
  switch (fault.kind) {
    case "no-pictures":
      return "no exposure time is in it: the log's table, FITS files and EXIF text can be read.";
    case "missing":
      return `picture ${fault.picture} has no ${fault.key}.`;
    case "unreadable":
      return `picture ${fault.picture}: the ${fault.key} “${shown(fault.text)}” cannot be read.`;
  }
}
