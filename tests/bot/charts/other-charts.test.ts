import { describe, expect, it } from "vitest";
import { chartSvg } from "../../../bot/charts/draw.ts";
import { hiddenWords } from "../../../bot/charts/jupiter-chart.ts";
import { forecastSentence, initial, postRows } from "../../../bot/charts/outreach-strip.ts";
import { onClock } from "../../../bot/charts/pole-chart.ts";
import { nightsOf, runningHours } from "../../../bot/charts/progress-chart.ts";
import { bracketRuns } from "../../../bot/charts/season-chart.ts";
import { subWords } from "../../../bot/charts/sub-length-chart.ts";
import { textOf } from "./pixels.ts";
import { CURVE, JUPITER, OUTREACH_STRIP, PROGRESS, SHEET, SUB_LENGTH } from "./sample-charts.ts";

describe("the pole star's clock", () => {
  it.each([
    [12, 0, -1],
    [3, 1, 0],
    [6, 0, 1],
    [9, -1, 0],
    [0, 0, -1],
  ])("has %d o'clock where clocks have it", (hours, x, y) => {
    const at = onClock({ x: 0, y: 0 }, hours, 1);
    expect(at.x).toBeCloseTo(x);
    expect(at.y).toBeCloseTo(y);
  });
});

describe("the season's bracket", () => {
  it("runs in one piece inside the year and in two over its end", () => {
    expect(bracketRuns({ fromMonth: 3, toMonth: 5, label: "" })).toEqual([[3, 5]]);
    expect(bracketRuns({ fromMonth: 10.5, toMonth: 1, label: "" })).toEqual([
      [0, 1],
      [10.5, 12],
    ]);
  });
});

describe("the curve", () => {
  const skyline = {
    ...CURVE,
    xMarks: ["north", "east", "south"].map((text, i) => ({ at: 90 * i, text })),
    lines: [
      {
        name: "skyline",
        filled: true,
        points: [
          { x: 0, y: 12 },
          { x: 180, y: 8 },
        ],
      },
    ],
    marks: [],
  };

  it("writes words along its foot where it is given some", () => {
    expect(textOf(chartSvg(skyline))).toContain("northeastsouth");
  });

  it("hatches down to the foot only what is filled", () => {
    expect(chartSvg(skyline)).toContain('fill="url(#hatch)"');
    expect(chartSvg(CURVE)).not.toContain('fill="url(#hatch)"');
  });
});

describe("subWords", () => {
  it.each([
    [0.5, "0.5 s"],
    [45, "45 s"],
    [90, "90 s"],
    [120, "2 min"],
    [450, "7 min 30 s"],
    [900, "15 min"],
  ])("calls %d seconds %s", (seconds, words) => {
    expect(subWords(seconds)).toBe(words);
  });
});

describe("the sub-length chart", () => {
  it("draws bars in proportion to the hours lost", () => {
    const svg = chartSvg(SUB_LENGTH);
    const widths = [...svg.matchAll(/<rect [^>]*width="([\d.]+)" height="15" fill="(?!none)/gu)].map(
      ([, w]) => Number(w),
    );
    expect((widths[0] ?? 0) / (widths[1] ?? 1)).toBeCloseTo(2.6 / 1.2, 1);
    expect(widths).toHaveLength(7);
  });
});

describe("the progress stair", () => {
  const [first] = PROGRESS.lines;

  it("adds up night by night and takes two entries of one night together", () => {
    const line = {
      name: "",
      wantedHours: null,
      steps: [
        { night: "2026-10-02", hours: 1 },
        { night: "2026-10-01", hours: 2 },
        { night: "2026-10-02", hours: 0.5 },
      ],
    };
    expect(nightsOf([line])).toEqual(["2026-10-01", "2026-10-02"]);
    expect(runningHours(line, nightsOf([line]))).toEqual([2, 3.5]);
  });

  it("says how much is still to go, and when it is done", () => {
    expect(textOf(chartSvg(PROGRESS))).toContain("3 h 39 min to go");
    const lines = first === undefined ? [] : [{ ...first, wantedHours: 2 }];
    expect(textOf(chartSvg({ ...PROGRESS, lines }))).toContain("done");
  });

  it("says that nothing is logged yet", () => {
    expect(textOf(chartSvg({ ...PROGRESS, lines: [] }))).toContain("No subs logged yet");
  });
});

describe("the outreach strip", () => {
  it("leaves a wider gap where a weekend begins and ends", () => {
    const row = postRows(OUTREACH_STRIP.evenings.slice(0, 6), 340)[0] ?? [];
    const gaps = row.slice(1).map((post, i) => Math.round(post.x - (row[i]?.x ?? 0)));
    // Thursday, then Friday to Sunday, then Monday and Tuesday.
    const [intoWeekend, inside, inside2, outOf, after] = gaps;
    expect(intoWeekend).toBe((inside ?? 0) + 10);
    expect(inside2).toBe(inside);
    expect(outOf).toBe((after ?? 0) + 10);
  });

  it("keeps every post inside the width, in as many rows as it takes", () => {
    const many = Array.from({ length: 90 }, (_, i) => ({
      ...OUTREACH_STRIP.evenings[i % 7],
      label: String(i),
    }));
    const rows = postRows(many as typeof OUTREACH_STRIP.evenings, 340);
    expect(rows.flat()).toHaveLength(90);
    for (const post of rows.flat()) expect(post.x).toBeLessThanOrEqual(340 - 12);
  });

  it("says the verdicts as far as a forecast reaches, and nothing beyond", () => {
    expect(forecastSentence(OUTREACH_STRIP.evenings)).toBe("Forecast: no-go on 8; marginal on 9; go on 10.");
    expect(forecastSentence(OUTREACH_STRIP.evenings.slice(5))).toBe("");
  });

  it("tells Mercury from Mars", () => {
    expect(["Mercury", "Mars", "Jupiter"].map(initial)).toEqual(["Me", "Ma", "J"]);
  });

  it("gives the three best with their reasons", () => {
    expect(textOf(chartSvg(OUTREACH_STRIP))).toContain("Sat 17 Oct: half Moon 25° up at dusk");
  });
});

describe("Jupiter's line", () => {
  const [crossing, clear] = JUPITER;
  if (crossing === undefined || clear === undefined) throw new Error("samples missing");
  const xOf = (svg: string, numeral: string) =>
    Number(new RegExp(`<circle cx="([\\d.]+)"[^>]*data-moon="${numeral}"`, "u").exec(svg)?.[1]);

  it("has west on the right with north up, on the left in a star diagonal", () => {
    const upright = chartSvg({ ...clear, turnDeg: 0 });
    const mirrored = chartSvg({ ...clear, turnDeg: 0, mirrored: true });
    expect(xOf(upright, "I")).toBeGreaterThan(200);
    expect(xOf(mirrored, "I")).toBeLessThan(200);
    expect(xOf(chartSvg({ ...clear, turnDeg: 180 }), "I")).toBeLessThan(200);
  });

  it("says which moons cannot be seen", () => {
    expect(hiddenWords(crossing.moons)).toBe("II is behind Jupiter.");
    expect(hiddenWords(clear.moons)).toBe("");
  });

  it("enlarges the disc only when something happens on it", () => {
    expect(textOf(chartSvg(crossing))).toContain("shadow of I");
    expect(textOf(chartSvg(clear))).not.toContain("shadow");
  });
});

describe("the sheet", () => {
  it("is at least as tall as A4 and grows with its lines", () => {
    const heightOf = (svg: string) => Number(/height="(\d+)"/u.exec(svg)?.[1]);
    expect(heightOf(chartSvg({ ...SHEET, blocks: [] }))).toBe(566);
    const lines = Array.from({ length: 60 }, (_, i) => `Line ${i} of a long evening.`);
    const long = chartSvg({ ...SHEET, blocks: [{ heading: "Order", lines }] });
    expect(heightOf(long)).toBeGreaterThan(1200);
    expect(textOf(long)).toContain("Line 59 of a long evening.");
  });
});
