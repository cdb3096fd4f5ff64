import { describe, expect, it } from "vitest";
import { chartSvg } from "../../../bot/charts/draw.ts";
import { stretches } from "../../../bot/charts/sky-path.ts";
import { depthsOf, treads } from "../../../bot/charts/twilight-stair.ts";
import { textOf } from "./pixels.ts";
import { SAMPLE_NIGHT } from "./sample-night.ts";

const same = (value: number) => value;
const at = (t: number) => new Date(t);

describe("stretches", () => {
  const point = (t: number, altitudeDeg: number, state: "usable" | "poor" | "hidden" = "usable") => ({
    at: at(t),
    altitudeDeg,
    state,
  });

  it("cuts a line where it meets the horizon", () => {
    const [only] = stretches([point(0, -10), point(10, 10), point(20, -10)], 0, 20, same, same);
    expect(only?.points).toEqual([
      { x: 5, y: 0 },
      { x: 10, y: 10 },
      { x: 15, y: 0 },
    ]);
  });

  it("cuts a line at the chart's edges", () => {
    const [only] = stretches([point(0, 10), point(20, 30)], 5, 15, same, same);
    expect(only?.points).toEqual([
      { x: 5, y: 15 },
      { x: 15, y: 25 },
    ]);
  });

  it("changes its stroke where the state changes", () => {
    const found = stretches(
      [point(0, 10, "hidden"), point(5, 20), point(10, 30), point(15, 30)],
      0,
      15,
      same,
      same,
    );
    expect(found.map(({ state, points }) => [state, points.length])).toEqual([
      ["hidden", 2],
      ["usable", 3],
    ]);
  });

  it("breaks at an altitude that is unknown, and has nothing of one point", () => {
    expect(stretches([point(0, 1), point(5, Number.NaN), point(10, 1)], 0, 10, same, same)).toEqual([]);
    expect(stretches([point(3, 40)], 0, 10, same, same)).toEqual([]);
  });
});

describe("treads", () => {
  const step = (t: number, label: string) => ({ at: at(t), label });

  it("deepens to the middle of the night and comes up again", () => {
    const labels = ["civil", "nautical", "astronomical", "dark", "astronomical", "nautical", "civil", "day"];
    expect(depthsOf(labels.map((label, i) => step(i, label)))).toEqual([1, 2, 3, 4, 3, 2, 1, 0]);
  });

  it("covers the ruler from end to end without a gap", () => {
    const found = treads([step(10, "civil"), step(20, "day")], 0, 100, same);
    expect(found.map(({ from, to }) => [from, to])).toEqual([
      [0, 10],
      [10, 20],
      [20, 100],
    ]);
  });

  it("names without a time what began before the chart", () => {
    const found = treads([{ at: at(-50), label: "dark all day", depth: 4 }], 0, 100, same);
    expect(found).toEqual([{ from: 0, to: 100, depth: 4, at: null, label: "dark all day" }]);
  });
});

describe("the night chart", () => {
  const svg = chartSvg(SAMPLE_NIGHT);

  it("says sunset, darkness and sunrise by the site's clock", () => {
    for (const words of ["sunset 18:22", "dark 20:18", "sunrise 07:24"]) expect(textOf(svg)).toContain(words);
  });

  it("draws usable heavier than poor, and hidden in dots", () => {
    const widthOf = (state: string) =>
      Number(new RegExp(`data-state="${state}" stroke-width="([\\d.]+)"`, "u").exec(svg)?.[1]);
    expect(widthOf("usable")).toBeGreaterThan(2 * widthOf("poor"));
    expect(svg).toMatch(/data-state="hidden"[^>]*stroke-dasharray/u);
    expect(svg).not.toMatch(/data-state="usable"[^>]*stroke-dasharray/u);
  });

  it("gives the window its length in words", () => {
    expect(textOf(svg)).toContain("3 h 30 min");
  });

  it("draws the Moon once", () => {
    expect(svg.match(/data-moon="icon"/gu)).toHaveLength(1);
  });

  it("draws an hour without a forecast as unknown, never as clear", () => {
    const unknown = SAMPLE_NIGHT.cloud.map(({ at: hour }) => ({ at: hour, oktas: null }));
    const drawn = chartSvg({ ...SAMPLE_NIGHT, cloud: unknown });
    expect(drawn).not.toContain('data-oktas="0"');
    expect(textOf(drawn)).toContain("cloud unknown");
  });

  it("says of an object that never rises that it does not", () => {
    const paths = [
      {
        name: "NGC 253",
        points: SAMPLE_NIGHT.paths[0]?.points.map((p) => ({ ...p, altitudeDeg: -5 })) ?? [],
      },
    ];
    expect(textOf(chartSvg({ ...SAMPLE_NIGHT, paths }))).toContain("NGC 253 stays below the horizon.");
  });

  it("shows three objects at most", () => {
    const names = ["one", "two", "three", "four"];
    const points = SAMPLE_NIGHT.paths[1]?.points ?? [];
    const text = textOf(chartSvg({ ...SAMPLE_NIGHT, paths: names.map((name) => ({ name, points })) }));
    expect(names.map((name) => text.includes(name))).toEqual([true, true, true, false]);
  });
});
