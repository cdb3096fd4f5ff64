/**
 * An answer's sections in one text of limited length, shortened by one rule.
 *
 * What is too long loses lines from the end of its longest sections, each ending
 * with how many are missing; then whole sections from the end, named as missing.
 *
 * @packageDocumentation
 */
import type { Section } from "../../commands/answer.ts";
import { escaped, shortened } from "./plain-text.ts";
import { type TableLines, tableLines } from "./table-lines.ts";

/** Lines a section may keep, tried in turn until everything fits. */
const CAPS: readonly number[] = [Number.POSITIVE_INFINITY, 30, 24, 18, 14, 10, 8, 6, 5, 4, 3, 2, 1];

/** A line longer than this is shortened once whole lines alone do not do. */
const LINE_LENGTH = 300;

type Block = {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly table: TableLines | null;
};

/**
 * The sections as Discord shows them.
 *
 * @param budget - characters; the text is never longer
 */
export function sectionText(sections: readonly Section[], budget: number): string {
  const blocks = sections.map(blockOf);
  for (const cap of CAPS) {
    const text = joined(blocks.map((block) => blockText(block, cap, Number.POSITIVE_INFINITY)));
    if (text.length <= budget) return text;
  }
  for (let kept = blocks.length; kept > 0; kept--) {
    const missing = blocks.length - kept;
    const texts = blocks.slice(0, kept).map((block) => blockText(block, 1, LINE_LENGTH));
    const rest = missing === 0 ? [] : [`… and ${missing} more ${missing === 1 ? "part" : "parts"}`];
    const text = joined([...texts, ...rest]);
    if (text.length <= budget) return text;
  }
  return shortened("… too long to show here", Math.max(0, budget));
}

function joined(texts: readonly string[]): string {
  return texts.filter((text) => text !== "").join("\n\n");
}

function blockOf(section: Section): Block {
  return {
    heading: section.heading.trim() === "" ? "" : `**${escaped(section.heading)}**`,
    lines: section.lines.map(escaped),
    table: section.table === undefined || section.table.rows.length === 0 ? null : tableLines(section.table),
  };
}

function blockText(block: Block, cap: number, lineLength: number): string {
  const lines = block.lines.slice(0, cap).map((line) => shortened(line, lineLength));
  const rows = (block.table?.rows ?? []).slice(0, Math.max(1, cap - lines.length));
  const missing = block.lines.length - lines.length + (block.table?.rows.length ?? 0) - rows.length;
  const parts = [
    ...(block.heading === "" ? [] : [shortened(block.heading, lineLength)]),
    ...lines,
    ...(block.table === null ? [] : [tableText(block.table, rows, lineLength)]),
    ...(missing > 0 ? [`… and ${missing} more`] : []),
  ];
  return parts.join("\n");
}

function tableText(table: TableLines, rows: readonly string[], lineLength: number): string {
  if (!table.fenced) return rows.map((row) => shortened(row, lineLength)).join("\n");
  return ["```", ...(table.head === null ? [] : [table.head]), ...rows, "```"].join("\n");
}
