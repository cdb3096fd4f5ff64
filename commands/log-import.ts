/**
 * `log import`: subs from files: the log's own table, FITS headers, pasted EXIF text.
 *
 * All of it is kept, or nothing.
 *
 * @packageDocumentation
 */
import { FILES_AT_ONCE } from "../config/log-limits.ts";
import type { FrameSet } from "../core/log/frame-set.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import type { Added } from "./log-books.ts";
import { frameFigures, libraryFigures } from "./log-figures.ts";
import { type ImportDefaults, rowsOfFile, rowsOfPaste } from "./log-files.ts";
import { filedObject, filedPassband, type LogSetting, logSetting, refuseTooMany } from "./log-rows.ts";
import { logWorth } from "./log-worth.ts";
import { textOption } from "./read/numbers.ts";
import {
  defineChoice,
  defineFile,
  defineSubcommand,
  defineText,
  FILTER,
  RIG,
  SITE,
  TARGET_IF_ANY,
} from "./read/options.ts";
import type { Request } from "./request.ts";
import { frameLine, libraryLine, rowsWords } from "./words/log-words.ts";

const FILE_OPTIONS = Array.from({ length: FILES_AT_ONCE }, (_, index) =>
  index === 0 ? "file" : `file-${index + 1}`,
);

const SORTS = ["light", "dark", "flat", "bias"] as const;

/** Characters that fit a chat's option. */
const TEXT_LENGTH = 6000;

export const LOG_IMPORT = defineSubcommand(
  "import",
  "Subs from files: the log's table, FITS headers, EXIF text",
  [
    defineFile("file", "A table that “log export” wrote, a FITS file, or EXIF text"),
    defineText("text", "EXIF text, pasted", { maxLength: TEXT_LENGTH }),
    TARGET_IF_ANY,
    FILTER,
    defineChoice("kind", "What the frames are, where the file does not say", SORTS),
    RIG,
    SITE,
    ...FILE_OPTIONS.slice(1).map((name) => defineFile(name, "One more file")),
  ],
);

export async function importIntoLog(request: Request, context: Context): Promise<Answer> {
  const setting = await logSetting(request, context);
  const defaults = defaultsOf(request, context, setting);
  const files = FILE_OPTIONS.flatMap((option) => {
    const value = request.options[option];
    return typeof value === "object" ? [{ option, file: value }] : [];
  });
  const text = textOption(request, "text");
  if (files.length === 0 && text === null) {
    throw new AskError("no-file", "file", "“file” is missing: a table, a FITS file or EXIF text.");
  }
  const read = [
    ...files.map(({ option, file }) => rowsOfFile(option, file, defaults)),
    ...(text === null ? [] : [rowsOfPaste("text", text, defaults)]),
  ];
  const frames = read.flatMap((file) => file.frames);
  const library = read.flatMap((file) => file.library);
  refuseFuture(frames, request);
  await refuseTooMany(request, context, frames.length + library.length);
  const rigs = await context.books.rigs.list(request.club, request.member.id);
  const worth = logWorth(
    setting.site,
    [...rigs.map(({ rig }) => rig), ...(setting.rig === null ? [] : [setting.rig])],
    context.catalogue,
  );
  const added = await context.books.log.add(request.club, request.member.id, {
    frames: frames.map((set) => ({ set, countingHours: worth(set) })),
    library,
  });
  return describeImport(added, [...new Set(read.flatMap((file) => file.notes))]);
}

function defaultsOf(request: Request, context: Context, setting: LogSetting): ImportDefaults {
  const named = textOption(request, "target");
  const kind = textOption(request, "kind");
  return {
    setting,
    catalogue: context.catalogue,
    object: named === null ? null : filedObject(named, "target", request, context),
    passband: filedPassband(request, setting.rig),
    sort: SORTS.find((sort) => sort === kind) ?? null,
  };
}

function refuseFuture(frames: readonly FrameSet[], request: Request): void {
  const early = frames.find(({ startedAt }) => startedAt !== null && startedAt > request.at);
  if (early === undefined) return;
  throw new AskError(
    "future-start",
    "file",
    `“file”: a sub of ${early.object} begins at ${early.startedAt?.toISOString()}, which has not come yet.`,
  );
}

const SHOWN = 8;

function describeImport(added: Added, notes: readonly string[]): Answer {
  const count = added.frames.length + added.library.length;
  const lines = [...added.frames.map(frameLine), ...added.library.map(libraryLine)];
  const twice =
    added.duplicates === 0
      ? ""
      : ` ${rowsWords(added.duplicates)} ${added.duplicates === 1 ? "was in your log already and is" : "were in your log already and are"} left out.`;
  return {
    title: count === 0 ? "Nothing new" : `Logged: ${rowsWords(count)}`,
    summary:
      count === 0 && added.duplicates === 0
        ? "The files hold no frames."
        : `${rowsWords(count)} added.${twice}`,
    sections: [
      {
        heading: "",
        lines: [
          ...lines.slice(0, SHOWN),
          ...(lines.length > SHOWN ? [`and ${lines.length - SHOWN} more`] : []),
          ...notes,
        ],
      },
    ],
    charts: [],
    cautions: [],
    next: [
      { label: "How far it is", command: "log", options: { subcommand: "progress" } },
      ...(count === 0 ? [] : [{ label: "Take it back", command: "log", options: { subcommand: "undo" } }]),
    ],
    figures: {
      added: added.frames.slice(0, ROWS_IN_FIGURES).map(frameFigures),
      library: added.library.slice(0, ROWS_IN_FIGURES).map(libraryFigures),
      addedCount: count,
      duplicates: added.duplicates,
    },
    credits: [],
  };
}

/** So many rows are enough to see what happened. */
const ROWS_IN_FIGURES = 100;
