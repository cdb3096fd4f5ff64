/**
 * `log list`, `want`, `export` and `undo`: a member's own rows.
 *
 * @packageDocumentation
 */
import { ROWS_LISTED, ROWS_LISTED_UNASKED, WANTED_HOURS } from "../config/log-limits.ts";
import { writeLogCsv } from "../core/log/log-csv.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { frameFigures, libraryFigures } from "./log-figures.ts";
import { filedObject, filedPassband, rigIfAny } from "./log-rows.ts";
import { numberOption, textOption, wholeNumberOption } from "./read/numbers.ts";
import {
  defineNumber,
  defineSubcommand,
  defineWhole,
  FILTER,
  RIG,
  TARGET,
  TARGET_IF_ANY,
} from "./read/options.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";
import { frameLine, libraryLine, rowsWords } from "./words/log-words.ts";

export const LOG_LIST = defineSubcommand("list", "The latest subs in your log", [
  TARGET_IF_ANY,
  defineWhole("limit", `How many rows, ${ROWS_LISTED.min} to ${ROWS_LISTED.max}`),
]);

export const LOG_WANT = defineSubcommand("want", "Hours you want of a target through a filter", [
  TARGET,
  defineNumber("hours", "Hours by the clock; 0 wants none", { required: true }),
  FILTER,
  RIG,
]);

export const LOG_EXPORT = defineSubcommand("export", "Your whole log as a table of comma-separated values");

export const LOG_UNDO = defineSubcommand("undo", "Take back what was added last");

export async function listLog(request: Request, context: Context): Promise<Answer> {
  const named = textOption(request, "target");
  const object = named === null ? null : filedObject(named, "target", request, context);
  const limit = wholeNumberOption(request, "limit", { ...ROWS_LISTED, unit: "rows" }) ?? ROWS_LISTED_UNASKED;
  const { log } = context.books;
  const rows = await log.latest(request.club, request.member.id, limit, object);
  const count = await log.count(request.club, request.member.id);
  return {
    title: object === null ? "Your latest subs" : `Your latest subs of ${object}`,
    summary: rows.length === 0 ? "Nothing is logged." : `${rowsWords(count)} in all; the latest first.`,
    sections: [{ heading: "", lines: rows.map(frameLine) }].filter(({ lines }) => lines.length > 0),
    charts: [],
    cautions: [],
    next: [
      { label: "How far it is", command: "log", options: { subcommand: "progress" } },
      { label: "The whole as a table", command: "log", options: { subcommand: "export" } },
    ],
    figures: { frames: rows.map(frameFigures), rows: count },
    credits: [],
  };
}

export async function wantHours(request: Request, context: Context): Promise<Answer> {
  const object = filedObject(textOption(request, "target") ?? "", "target", request, context);
  const hours = numberOption(request, "hours", { min: 0, max: WANTED_HOURS.max, unit: "hours" });
  if (hours === null) throw new AskError("no-hours", "hours", "“hours” is missing: how many you want.");
  const passband = filedPassband(request, await rigIfAny(request, context)) ?? "none";
  const wish = { object, passband, hours: hours === 0 ? null : hours };
  await context.books.log.want(request.club, request.member.id, wish);
  return {
    title: `Wanted: ${object}`,
    summary:
      hours === 0
        ? `Nothing of ${object} is wanted through ${passband} now.`
        : `${durationWords(hours)} of ${object} through ${passband}.`,
    sections: [],
    charts: [],
    cautions: [],
    next: [{ label: "How far it is", command: "log", options: { subcommand: "progress", target: object } }],
    figures: { object, passband, wantedHours: wish.hours },
    credits: [],
  };
}

export async function exportLog(request: Request, context: Context): Promise<Answer> {
  const kept = await context.books.log.all(request.club, request.member.id);
  const rows = kept.frames.length + kept.library.length;
  return {
    title: "Your log as a table",
    summary:
      rows === 0
        ? "Nothing is logged: the table has its heading alone."
        : `${rowsWords(rows)}; “log import” reads it again.`,
    sections: [],
    charts: [],
    cautions: [],
    next: [],
    figures: { rows },
    credits: [],
    attachments: [
      {
        name: "log.csv",
        mediaType: "text/csv",
        bytes: new TextEncoder().encode(writeLogCsv(kept)),
      },
    ],
  };
}

const SHOWN = 8;

export async function undoLog(request: Request, context: Context): Promise<Answer> {
  const gone = await context.books.log.undo(request.club, request.member.id);
  if (gone === null) {
    throw new AskError("nothing-to-undo", null, "Your log is empty: there is nothing to take back.");
  }
  const lines = [...gone.frames.map(frameLine), ...gone.library.map(libraryLine)];
  return {
    title: `Taken back: ${rowsWords(lines.length)}`,
    summary:
      lines.length === 1
        ? `${lines[0]}.`
        : `${rowsWords(lines.length)} that came in together are out of your log.`,
    sections: [
      {
        heading: "",
        lines: [
          ...(lines.length > 1 ? lines.slice(0, SHOWN) : []),
          ...(lines.length > SHOWN ? [`and ${lines.length - SHOWN} more`] : []),
        ],
      },
    ].filter((section) => section.lines.length > 0),
    charts: [],
    cautions: [],
    next: [{ label: "The latest subs", command: "log", options: { subcommand: "list" } }],
    figures: {
      removed: gone.frames.slice(0, SHOWN).map(frameFigures),
      library: gone.library.slice(0, SHOWN).map(libraryFigures),
      removedCount: lines.length,
    },
    credits: [],
  };
}
