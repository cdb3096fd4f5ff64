/**
 * An answer as text for a terminal: cautions first, credits last.
 *
 * @packageDocumentation
 */
import type { Answer, FollowUp, Section } from "../../commands/answer.ts";
import { quoted } from "./command-line.ts";
import type { SavedChart } from "./saved-files.ts";
import { displayWidth, tableLines, wrap } from "./wrap.ts";

export type TextStyle = {
  /** Columns of the terminal. */
  readonly columns: number;
  /** What stands before a suggested command, such as `npm run --silent ask -- `. */
  readonly before: string;
};

/** Lines longer than this tire the eye; shorter ones than the other break tables. */
const WIDEST = 100;
const NARROWEST = 40;

/** The width that text is folded to on a terminal of so many columns; 96 when unknown. */
export function textWidth(columns: number | undefined): number {
  return Math.max(NARROWEST, Math.min(WIDEST, columns ?? 96));
}

/** The whole answer, ending in a line break. */
export function answerText(answer: Answer, saved: readonly SavedChart[], style: TextStyle): string {
  const width = textWidth(style.columns);
  const blocks: string[][] = [
    ...answer.cautions.map(({ text }) => wrap(`! ${text}`, width, 2)),
    titleLines(answer.title, width),
    wrap(answer.summary, width),
    ...answer.sections.map((section) => sectionLines(section, width)),
    saved.flatMap(({ path, alt }) => (path === null ? [] : wrap(`Saved ${path}: ${alt}`, width, 2))),
    nextLines(answer.next, style.before),
    answer.credits.flatMap((credit) => wrap(credit, width, 2)),
  ];
  const filled = blocks.filter((block) => block.some((line) => line !== ""));
  return `${filled.map((block) => block.join("\n")).join("\n\n")}\n`;
}

/** A follow-up question as one types it. */
export function followUpWords({ command, options }: FollowUp): string {
  const { subcommand, ...rest } = options;
  const words = Object.entries(rest).map(([name, value]) => {
    if (value === true) return `--${name}`;
    return `--${name} ${quoted(String(value))}`;
  });
  return [command, ...(subcommand === undefined ? [] : [String(subcommand)]), ...words].join(" ");
}

function titleLines(title: string, width: number): string[] {
  const lines = wrap(title, width);
  return [...lines, "─".repeat(Math.max(...lines.map(displayWidth)))];
}

function sectionLines(section: Section, width: number): string[] {
  const indent = section.heading === "" ? "" : "  ";
  const inner = width - indent.length;
  const lines = section.lines.flatMap((line) => wrap(line, inner, 2));
  const table = section.table === undefined ? [] : tableLines(section.table, inner);
  const between = lines.length > 0 && table.length > 0 ? [""] : [];
  const body = [...lines, ...between, ...table].map((line) => (line === "" ? "" : indent + line));
  return section.heading === "" ? body : [...wrap(section.heading, width), ...body];
}

function nextLines(next: readonly FollowUp[], before: string): string[] {
  if (next.length === 0) return [];
  return ["Ask next", ...next.map((one) => `  ${one.label}: ${before}${followUpWords(one)}`)];
}
