/**
 * An answer as others may see it: where its site lies is left out.
 *
 * The coordinates are known from the answer's own figures; wherever one of those
 * numbers stands in its words, in degrees or in degrees and minutes, it goes.
 *
 * @packageDocumentation
 */
import type { Answer, Figure, Section } from "../../commands/answer.ts";
import type { Chart } from "../../commands/chart.ts";

/** Stands where a place's numbers stood. */
const LEFT_OUT = "(place kept private)";

/** A pair of degrees north or south and east or west, whatever the numbers. */
const PAIR = /[-+−]?\d{1,2}(?:\.\d+)?\s*°\s*[NS]?\s*,\s*[-+−]?\d{1,3}(?:\.\d+)?\s*°\s*[EW]?/g;

/** The answer without the coordinates of any site in it. */
export function withoutCoordinates(answer: Answer): Answer {
  const patterns = [PAIR, ...coordinatesIn(answer.figures).map(patternOf)];
  const clean = (text: string) => cleaned(text, patterns);
  return {
    ...answer,
    title: clean(answer.title),
    summary: clean(answer.summary),
    sections: answer.sections.map((section) => cleanSection(section, clean)),
    charts: answer.charts.map((chart) => cleanChart(chart, clean)),
    next: [],
    figures: {},
    attachments: [],
  };
}

function cleaned(text: string, patterns: readonly RegExp[]): string {
  let left = text;
  for (const pattern of patterns) left = left.replace(pattern, LEFT_OUT);
  // Two numbers of one place leave one remark.
  return left.replaceAll(
    new RegExp(`${escapeRegExp(LEFT_OUT)}(?:[\\s,;°NSEW]*${escapeRegExp(LEFT_OUT)})+`, "g"),
    LEFT_OUT,
  );
}

function cleanSection(section: Section, clean: (text: string) => string): Section {
  const { table } = section;
  return {
    heading: clean(section.heading),
    lines: section.lines.map(clean),
    ...(table === undefined
      ? {}
      : { table: { columns: table.columns, rows: table.rows.map((row) => row.map(clean)) } }),
  };
}

function cleanChart(chart: Chart, clean: (text: string) => string): Chart {
  return { ...chart, title: clean(chart.title), alt: clean(chart.alt), caption: clean(chart.caption) };
}

/** Every latitude and longitude among the figures, however deep. */
function coordinatesIn(figure: Figure): number[] {
  if (figure === null || typeof figure !== "object") return [];
  if (Array.isArray(figure)) return figure.flatMap(coordinatesIn);
  return Object.entries(figure).flatMap(([name, value]) =>
    /^(latitude|longitude)Deg$/.test(name) && typeof value === "number" ? [value] : coordinatesIn(value),
  );
}

/** The number as degrees with decimals, one to six of them, or as degrees and minutes. */
function patternOf(degrees: number): RegExp {
  const size = Math.abs(degrees);
  const decimals = [1, 2, 3, 4, 5, 6].map((digits) => escapeRegExp(size.toFixed(digits)));
  const minutes = Math.round(size * 60);
  const sexagesimal = `${Math.floor(minutes / 60)}°\\s*0?${minutes % 60}[′']`;
  const written = [...new Set([...decimals, escapeRegExp(String(size)).concat("(?=\\s*°)"), sexagesimal])];
  return new RegExp(`[-+−]?(?<![\\d.])(?:${written.join("|")})(?!\\d)\\s*°?\\s*[NSEW]?\\b`, "g");
}

function escapeRegExp(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
