/**
 * Evenings as posts on one base line: as tall as the dark time before the audience
 * leaves, the Moon on top, planets' initials below, the best three numbered.
 *
 * @packageDocumentation
 */
import type { OutreachStripChart } from "../../commands/chart.ts";
import { durationWords, shortDateWords } from "../../commands/words/clock.ts";
import { listWords } from "../../commands/words/sky.ts";
import { PALETTE } from "../../config/palette.ts";
import { leading, lettering, SMALL_PX, shortened, wrapped } from "./lettering.ts";
import { moonIcon } from "./moon-icon.ts";
import { type Drawing, HATCH, MARGIN_PX, PAGE_WIDTH_PX, ROOM_PX } from "./page.ts";
import { held, linear, type Scale } from "./scale.ts";
import { join, line, NOTHING, path, rect, type Svg, through } from "./svg.ts";

type Evening = OutreachStripChart["evenings"][number];

const POSTS_PX = 74;
const SCALE_ROOM_PX = 30;
const MOON_RADIUS_PX = 8;
const WEEKEND_GAP_PX = 10;
const PITCH_PX = { least: 24, most: 42 } as const;
const LINE_PX = leading(SMALL_PX);

/** An evening with its place along the base line. */
export type Post = Evening & { readonly x: number };

/** Evenings set in rows, with a wider gap where a weekend begins and ends. */
export function postRows(evenings: readonly Evening[], widthPx: number): Post[][] {
  const gaps = evenings.filter((evening, i) => i > 0 && evening.weekend !== evenings[i - 1]?.weekend).length;
  const even = (widthPx - gaps * WEEKEND_GAP_PX) / Math.max(1, evenings.length);
  const pitch = held(even, PITCH_PX.least, PITCH_PX.most);
  const rows: Post[][] = [];
  let row: Post[] = [];
  let x = 0;
  for (const evening of evenings) {
    const before = row.at(-1);
    if (before !== undefined && before.weekend !== evening.weekend) x += WEEKEND_GAP_PX;
    if (x + pitch > widthPx + 0.01) {
      rows.push(row);
      row = [];
      x = 0;
    }
    row.push({ ...evening, x: x + pitch / 2 });
    x += pitch;
  }
  if (row.length > 0) rows.push(row);
  return rows;
}

export function drawOutreachStrip(chart: OutreachStripChart): Drawing {
  const rows = postRows(chart.evenings, ROOM_PX - SCALE_ROOM_PX);
  const most = Math.max(1, ...chart.evenings.map(({ darkHours }) => darkHours));
  const drawn: Svg[] = [];
  let y = 0;
  for (const row of rows) {
    const strip = stripRow(row, y, most, rows.length > 1);
    drawn.push(strip.content);
    y += strip.heightPx + 10;
  }
  const notes = notesUnder(chart.evenings, y + 4);
  return { heightPx: y + 4 + notes.heightPx, content: join([...drawn, notes.content]) };
}

function stripRow(row: readonly Post[], top: number, most: number, headed: boolean): Drawing {
  const reached = row.filter(({ verdict }) => verdict !== null);
  const heading = headed ? LINE_PX + 4 : 0;
  const level = linear(0, most, 0, -POSTS_PX);
  const heads = row.map((post) => headOf(post, level));
  const rise = Math.min(
    0,
    ...heads,
    ...(reached.length === 0 ? [] : [bracketTop(reached, level) - LINE_PX - 4]),
  );
  const base = top + heading - rise;
  const yOf = linear(0, most, base, base - POSTS_PX);
  const right = PAGE_WIDTH_PX - MARGIN_PX - SCALE_ROOM_PX + 4;
  const planets = Math.max(0, ...row.map((evening) => evening.planets.length));
  const hours = most < 1.5 ? [0.5, 1] : Array.from({ length: Math.floor(most) }, (_, i) => i + 1);
  const marks = hours.filter((_, i) => i % Math.ceil(hours.length / 4) === 0);
  const [first, last] = [row[0], row.at(-1)];
  const span = first === undefined || last === undefined ? "" : spanWords(first.night, last.night);
  return {
    heightPx: base + LINE_PX + 4 + planets * LINE_PX - top,
    content: join([
      headed ? lettering({ x: MARGIN_PX, y: top + SMALL_PX }, [span], { ink: PALETTE.boneQuiet }) : NOTHING,
      ...marks.map((hour) =>
        join([
          line(
            { x: MARGIN_PX, y: yOf(hour) },
            { x: right, y: yOf(hour) },
            { stroke: PALETTE.boneFaint, "stroke-width": 0.6 },
          ),
          lettering({ x: right + 4, y: yOf(hour) + 4.5 }, [`${hour} h`], { ink: PALETTE.boneQuiet }),
        ]),
      ),
      line({ x: MARGIN_PX, y: base }, { x: right, y: base }, { stroke: PALETTE.bone, "stroke-width": 1.4 }),
      reached.length === 0 ? NOTHING : forecastBracket(reached, yOf),
      ...row.map((post) => drawPost(post, yOf(Math.max(0, post.darkHours)), base)),
    ]),
  };
}

function drawPost(post: Post, top: number, base: number): Svg {
  const x = MARGIN_PX + post.x;
  const best = post.rank !== null;
  const width = 9;
  const moonY = top - MOON_RADIUS_PX - 3;
  return join([
    rect(x - width / 2, top, width, base - top, { fill: best ? PALETTE.copper : HATCH }),
    rect(x - width / 2, top, width, base - top, {
      fill: "none",
      stroke: best ? PALETTE.copper : PALETTE.bone,
      "stroke-width": base > top ? 1.1 : 0,
    }),
    moonIcon({ x, y: moonY }, MOON_RADIUS_PX, post),
    post.rank === null
      ? NOTHING
      : lettering({ x, y: moonY - MOON_RADIUS_PX - 4 }, [String(post.rank)], {
          sizePx: 16,
          weight: "bold",
          ink: PALETTE.copper,
          anchor: "middle",
        }),
    lettering({ x, y: base + SMALL_PX + 3 }, [shortened(post.label, 24)], {
      anchor: "middle",
      weight: best || post.weekend ? "bold" : "regular",
    }),
    lettering({ x, y: base + SMALL_PX + 3 + LINE_PX }, post.planets.map(initial), {
      anchor: "middle",
      ink: PALETTE.boneQuiet,
    }),
  ]);
}

/** `J`; the two that share a letter by two: `Me`, `Ma`. */
export function initial(planet: string): string {
  return planet.slice(0, planet.startsWith("M") ? 2 : 1);
}

/** Height of a post with what stands on it. */
function headOf(post: Post, yOf: Scale): number {
  const number = post.rank === null ? 0 : 18;
  return yOf(Math.max(0, post.darkHours)) - 2 * MOON_RADIUS_PX - 5 - number;
}

function bracketTop(reached: readonly Post[], yOf: Scale): number {
  return Math.min(...reached.map((post) => headOf(post, yOf))) - 9;
}

/** Over the days that a forecast reaches, and nothing else of the weather. */
function forecastBracket(reached: readonly Post[], yOf: Scale): Svg {
  const from = MARGIN_PX + Math.min(...reached.map(({ x }) => x)) - 9;
  const to = MARGIN_PX + Math.max(...reached.map(({ x }) => x)) + 9;
  const y = bracketTop(reached, yOf);
  const corners = [
    { x: from, y: y + 6 },
    { x: from, y },
    { x: to, y },
    { x: to, y: y + 6 },
  ];
  return join([
    path(through(corners), { stroke: PALETTE.boneQuiet, "stroke-width": 1.4 }),
    lettering({ x: from, y: y - 5 }, ["forecast"], { ink: PALETTE.boneQuiet, halo: PALETTE.umber }),
  ]);
}

function spanWords(first: string, last: string): string {
  return first === last ? shortDateWords(first) : `${shortDateWords(first)} to ${shortDateWords(last)}`;
}

/** The best evenings with their reasons, the verdicts as a sentence, the initials spelled out. */
function notesUnder(evenings: readonly Evening[], top: number): Drawing {
  const best = evenings.filter(({ rank }) => rank !== null).sort((a, b) => (a.rank ?? 0) - (b.rank ?? 0));
  const drawn: Svg[] = [];
  let y = top;
  for (const evening of best) {
    const dark = `${durationWords(Math.max(0, evening.darkHours))} dark`;
    const text = `${shortDateWords(evening.night)}: ${evening.reason ?? dark}`;
    const lines = wrapped(text, ROOM_PX - 20, 14);
    drawn.push(
      lettering({ x: MARGIN_PX, y: y + 14 }, [String(evening.rank)], {
        sizePx: 16,
        weight: "bold",
        ink: PALETTE.copper,
      }),
      lettering({ x: MARGIN_PX + 20, y: y + 14 }, lines, { sizePx: 14 }),
    );
    y += lines.length * leading(14) + 5;
  }
  for (const sentence of [forecastSentence(evenings), planetSentence(evenings)]) {
    const lines = wrapped(sentence, ROOM_PX);
    if (lines.length === 0) continue;
    drawn.push(lettering({ x: MARGIN_PX, y: y + 14 }, lines, { ink: PALETTE.boneQuiet }));
    y += lines.length * LINE_PX + 5;
  }
  return { heightPx: y - top, content: join(drawn) };
}

/** `Forecast: go on 3 and 4, no-go on 5.`, or empty. */
export function forecastSentence(evenings: readonly Evening[]): string {
  const days = new Map<string, string[]>();
  for (const { verdict, label } of evenings) {
    if (verdict !== null) days.set(verdict, [...(days.get(verdict) ?? []), label]);
  }
  if (days.size === 0) return "";
  const parts = [...days].map(([verdict, labels]) => `${verdict} on ${listWords(labels)}`);
  return `Forecast: ${parts.join("; ")}.`;
}

function planetSentence(evenings: readonly Evening[]): string {
  const planets = [...new Set(evenings.flatMap((evening) => evening.planets))];
  if (planets.length === 0) return "";
  return `Planets in reach: ${listWords(planets.map((planet) => `${initial(planet)} for ${planet}`))}.`;
}
