import type { Answer, Attachment } from "./answer.ts";
import type { SheetChart } from "./chart.ts";

export type SheetParts = Pick<Answer, "title" | "summary" | "sections" | "cautions"> & {
  readonly caption: string;
};

/** One page for those who run the session. */
export function sheetOf({ title, summary, sections, cautions, caption }: SheetParts): SheetChart {
  return {
    kind: "sheet",
    name: "outreach-sheet",
    title,
    caption,
    alt: `A page for those who run the session. ${summary} The same words are in the text file beside it.`,
    cautions: cautions.map(({ text }) => text),
    blocks: sections.map(({ heading, lines }) => ({ heading: heading === "" ? "Notes" : heading, lines })),
  };
}

/** Everything as text to print, cautions first. */
export function sheetText({ title, caption, sections, cautions }: SheetParts, date: string): Attachment {
  const lines = [
    ...cautions.map(({ text }) => `CAUTION. ${text}`),
    "",
    title,
    caption,
    ...sections.flatMap(({ heading, lines: block }) => ["", (heading || "Notes").toUpperCase(), ...block]),
    "",
  ];
  return {
    name: `outreach-${date}.txt`,
    mediaType: "text/plain; charset=utf-8",
    bytes: new TextEncoder().encode(lines.join("\n")),
  };
}
