import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartSvg, drawChart } from "../../../bot/charts/draw.ts";
import { drawable } from "../../../bot/charts/font.ts";
import type { Chart, NightChart } from "../../../commands/chart.ts";
import { PALETTE } from "../../../config/palette.ts";
import { pixelsOf, textOf } from "./pixels.ts";
import * as samples from "./sample-charts.ts";
import { SAMPLE_NIGHT } from "./sample-night.ts";

const CHARTS: readonly Chart[] = [
  SAMPLE_NIGHT,
  samples.SEASON,
  samples.SUB_LENGTH,
  samples.CURVE,
  samples.POLE,
  samples.PROGRESS,
  samples.OUTREACH_STRIP,
  samples.MOON,
  samples.SUN,
  samples.SHEET,
  ...samples.FRAMING,
  ...samples.JUPITER,
];
const named = CHARTS.map((chart, i) => [`${chart.kind} (${i})`, chart] as const);

/** The same chart with every text in it passed through a function. */
function withTexts(value: unknown, change: (text: string) => string, key = ""): unknown {
  const kept = ["kind", "timeZone", "state", "numeral", "night", "mediaType"].includes(key);
  if (typeof value === "string") return kept ? value : change(value);
  if (value instanceof Date || value instanceof Uint8Array || typeof value !== "object" || value === null)
    return value;
  if (Array.isArray(value)) return value.map((each) => withTexts(each, change, key));
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [name, withTexts(each, change, name)]),
  );
}

/** How many pixels within `px` of the left and right edges are not the ground's. */
function spill(svg: string, px: number): number {
  const pixels = pixelsOf(svg);
  const ground = pixels.at(0, 0).join();
  let count = 0;
  for (let y = 0; y < pixels.height; y++) {
    for (let i = 0; i < px; i++) {
      if (pixels.at(i, y).join() !== ground) count++;
      if (pixels.at(pixels.width - 1 - i, y).join() !== ground) count++;
    }
  }
  return count;
}

describe("chartSvg", () => {
  it.each(named)("letters nothing of the %s chart smaller than 13 px on a page 400 wide", (_, chart) => {
    const svg = chartSvg(chart);
    const sizes = [...svg.matchAll(/font-size="([\d.]+)"/gu)].map(([, size]) => Number(size));
    expect(svg).toContain('width="400"');
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(13);
  });

  it.each(named)("stands the cautions of the %s chart whole and first", (_, chart) => {
    const cautions = [samples.LONG_CAUTION, "A second caution: σ ≤ 3′, “quoted” & <marked>."];
    const text = textOf(chartSvg({ ...chart, cautions })).trim();
    expect(text.startsWith(`${drawable(samples.LONG_CAUTION)}${drawable(cautions[1] ?? "")}`)).toBe(true);
  });

  it.each(named)("escapes every text of the %s chart", (_, chart) => {
    const hostile = withTexts(chart, (text) => `</text><script>x</script>&${text}"'`) as Chart;
    const svg = chartSvg(hostile);
    expect(svg).not.toMatch(/<script|<\/text><s/u);
    // A sheet that runs over its page is set in two columns.
    expect(pixelsOf(svg).width).toBe(chart.kind === "sheet" ? 800 : 400);
  });

  it.each(named)("keeps the %s chart on its page with long names, titles and cautions", (_, chart) => {
    const wordy = (text: string) =>
      `${text} that a member gave and gave Donaudampfschifffahrtsgesellschaftskapitänsmützen at length`;
    const long = withTexts({ ...chart, cautions: [samples.LONG_CAUTION] }, wordy) as Chart;
    expect(spill(chartSvg(chart), 6)).toBe(0);
    expect(spill(chartSvg(long), 6)).toBe(0);
    // A word wider than the page is broken, so the spaces do not count.
    const letters = (text: string) => text.replaceAll(" ", "");
    expect(letters(textOf(chartSvg(long)))).toContain(letters(drawable(wordy(samples.LONG_CAUTION))));
  });

  it.each(named)("draws a title of the %s chart without an end in full", (_, chart) => {
    const title = "word ".repeat(120).trim();
    expect(textOf(chartSvg({ ...chart, title }))).toContain(title);
  });

  it.each<[string, Chart]>([
    [
      "a night of nothing",
      {
        ...SAMPLE_NIGHT,
        twilights: [],
        paths: [],
        window: null,
        cloud: [],
        moon: { points: [], illuminatedFraction: 0, waxing: true },
      },
    ],
    [
      "a polar night",
      { ...SAMPLE_NIGHT, twilights: [{ at: new Date(0), label: "dark all day", depth: 4 }], window: null },
    ],
    [
      "a night of no length",
      { ...SAMPLE_NIGHT, span: { start: SAMPLE_NIGHT.span.start, end: SAMPLE_NIGHT.span.start } },
    ],
    [
      "a window outside the night",
      { ...SAMPLE_NIGHT, window: { start: new Date(0), end: new Date(1), label: "nothing" } },
    ],
    ["one hour of cloud", { ...SAMPLE_NIGHT, cloud: SAMPLE_NIGHT.cloud.slice(3, 4) }],
    [
      "a season of nothing",
      {
        ...samples.SEASON,
        best: null,
        months: samples.SEASON.months.map((m) => ({ ...m, hoursPerNight: 0 })),
      },
    ],
    ["a season without months", { ...samples.SEASON, months: [] }],
    ["no choice of sub", { ...samples.SUB_LENGTH, choices: [] }],
    [
      "subs that lose nothing",
      { ...samples.SUB_LENGTH, choices: [{ subSeconds: 30, hoursLost: 0, chosen: true }] },
    ],
    ["no curve", { ...samples.CURVE, lines: [], marks: [] }],
    [
      "a curve of one point",
      { ...samples.CURVE, lines: [{ name: "one", points: [{ x: 3, y: 0 }] }], marks: [] },
    ],
    [
      "a curve that is flat",
      {
        ...samples.CURVE,
        lines: [
          {
            name: "flat",
            points: [
              { x: 1, y: 5 },
              { x: 2, y: 5 },
            ],
          },
        ],
      },
    ],
    [
      "a curve with holes",
      {
        ...samples.CURVE,
        lines: [
          {
            name: "holes",
            points: [
              { x: 1, y: Number.NaN },
              { x: Number.POSITIVE_INFINITY, y: 2 },
            ],
          },
        ],
        marks: [],
      },
    ],
    ["no dials", { ...samples.POLE, dials: [] }],
    ["one dial", { ...samples.POLE, dials: samples.POLE.dials.slice(0, 1) }],
    [
      "five dials",
      {
        ...samples.POLE,
        dials: [...samples.POLE.dials, ...samples.POLE.dials, ...samples.POLE.dials].slice(0, 5),
      },
    ],
    ["progress without steps", { ...samples.PROGRESS, lines: [{ name: "none", wantedHours: 5, steps: [] }] }],
    [
      "one night of progress",
      {
        ...samples.PROGRESS,
        lines: [{ name: "one", wantedHours: null, steps: [{ night: "2026-10-10", hours: 0.1 }] }],
      },
    ],
    ["no evenings", { ...samples.OUTREACH_STRIP, evenings: [] }],
    [
      "evenings that stay light",
      {
        ...samples.OUTREACH_STRIP,
        evenings: samples.OUTREACH_STRIP.evenings.map((e) => ({ ...e, darkHours: 0 })),
      },
    ],
    ["a Moon without views", { ...samples.MOON, views: [] }],
    ["a new Moon without features", { ...samples.MOON, illuminatedFraction: 0, features: [] }],
    ["a full Moon", { ...samples.MOON, illuminatedFraction: 1 }],
    ["a Sun without views", { ...samples.SUN, views: [] }],
    [
      "Jupiter alone",
      { ...(samples.JUPITER[0] as Extract<Chart, { kind: "jupiter" }>), moons: [], shadows: [] },
    ],
    [
      "a frame of nothing",
      {
        ...(samples.FRAMING[0] as Extract<Chart, { kind: "framing" }>),
        panels: [],
        stars: [],
        target: null,
        neighbours: [],
        fieldWidthDeg: 0,
        fieldHeightDeg: 0,
      },
    ],
    ["an empty sheet", { ...samples.SHEET, blocks: [], cautions: [], caption: "", title: "" }],
  ])("draws %s", (_, chart) => {
    const svg = chartSvg(chart);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/u);
    expect(pixelsOf(svg).width).toBe(400);
    expect(spill(svg, 6)).toBe(0);
  });

  it("draws any night", () => {
    const hour = fc
      .integer({ min: -3, max: 17 })
      .map((h) => new Date(SAMPLE_NIGHT.span.start.getTime() + h * 3_600_000));
    const altitude = fc.double({ min: -90, max: 90, noNaN: false });
    const night = fc.record({
      paths: fc.array(
        fc.record({
          name: fc.string({ unit: "grapheme", maxLength: 60 }),
          points: fc.array(
            fc.record({
              at: hour,
              altitudeDeg: altitude,
              state: fc.constantFrom("usable", "poor", "hidden"),
            }),
            { maxLength: 12 },
          ),
        }),
        { maxLength: 5 },
      ),
      twilights: fc
        .array(
          fc.record({ at: hour, label: fc.string({ maxLength: 40 }), depth: fc.constantFrom(0, 1, 2, 3, 4) }),
          { maxLength: 9 },
        )
        .map((steps) => steps.sort((a, b) => a.at.getTime() - b.at.getTime())),
      cloud: fc.array(fc.record({ at: hour, oktas: fc.option(fc.double({ min: 0, max: 8, noNaN: true })) }), {
        maxLength: 20,
      }),
    }) as fc.Arbitrary<Partial<NightChart>>;
    fc.assert(
      fc.property(night, (part) => {
        const svg = chartSvg({ ...SAMPLE_NIGHT, ...part });
        expect(svg).not.toMatch(/NaN|Infinity|undefined/u);
        expect(spill(svg, 6)).toBe(0);
      }),
      { numRuns: 40 },
    );
  });
});

describe("drawChart", () => {
  it("gives a PNG 800 px wide", async () => {
    const png = Buffer.from(await drawChart(samples.POLE));
    expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
    expect(png.readUInt32BE(16)).toBe(800);
  });
});

describe("the inks", () => {
  /** Contrast of two colours. Source: W3C, Web Content Accessibility Guidelines 2.1, relative luminance. */
  function contrast(one: string, other: string): number {
    const light = (colour: string) =>
      [1, 3, 5]
        .map((i) => Number.parseInt(colour.slice(i, i + 2), 16) / 255)
        .map((c) => (c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
        .reduce((sum, c, i) => sum + c * ([0.2126, 0.7152, 0.0722][i] ?? 0), 0);
    const [a, b] = [light(one), light(other)];
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  // The same guidelines ask 4.5 of text.
  it.each([
    ["bone on umber", PALETTE.bone, PALETTE.umber],
    ["quiet bone on umber", PALETTE.boneQuiet, PALETTE.umber],
    ["copper on umber", PALETTE.copper, PALETTE.umber],
    ["lilac on umber", PALETTE.lilac, PALETTE.umber],
    ["bone on the day's ground", PALETTE.bone, PALETTE.umberDay],
    ["umber on bone", PALETTE.umber, PALETTE.bone],
  ])("are strong enough for words: %s", (_, ink, ground) => {
    expect(contrast(ink, ground)).toBeGreaterThan(4.5);
  });
});
