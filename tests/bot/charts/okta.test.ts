import { describe, expect, it } from "vitest";
import { oktaCircle } from "../../../bot/charts/okta.ts";
import { onBlack, pixelsOf } from "./pixels.ts";

const SIDE = 200;
const CENTRE = { x: 100, y: 100 };
const RADIUS = 80;

/** Share of light in each quarter of the circle: upper right, lower right, lower left, upper left. */
function quarters(oktas: number | null): number[] {
  const pixels = pixelsOf(onBlack(SIDE, oktaCircle(CENTRE, RADIUS, oktas, "#000000")));
  const sums = [0, 0, 0, 0];
  const counts = [0, 0, 0, 0];
  for (let y = 0; y < SIDE; y++) {
    for (let x = 0; x < SIDE; x++) {
      if (Math.hypot(x + 0.5 - 100, y + 0.5 - 100) > RADIUS - 3) continue;
      const quarter = x >= 100 ? (y < 100 ? 0 : 1) : y >= 100 ? 2 : 3;
      sums[quarter] = (sums[quarter] ?? 0) + pixels.at(x, y)[1] / 229;
      counts[quarter] = (counts[quarter] ?? 0) + 1;
    }
  }
  return sums.map((sum, i) => sum / (counts[i] ?? 1));
}

/** Light at a point a third of the way from the middle. */
function at(oktas: number | null, dx: number, dy: number): boolean {
  const pixels = pixelsOf(onBlack(SIDE, oktaCircle(CENTRE, RADIUS, oktas, "#000000")));
  const nearby = [0, 1].flatMap((i) => [0, 1].map((k) => pixels.at(100 + dx - i, 100 + dy - k)[1]));
  return Math.max(...nearby) > 120;
}

describe("oktaCircle", () => {
  // WMO-No. 485, plotting model, total cloud cover N: filled quarters clockwise from the top. From memory.
  it.each([
    [0, [0, 0, 0, 0]],
    [1, [0, 0, 0, 0]],
    [2, [1, 0, 0, 0]],
    [3, [1, 0, 0, 0]],
    [4, [1, 1, 0, 0]],
    [5, [1, 1, 0, 0]],
    [6, [1, 1, 1, 0]],
    [7, [1, 1, 1, 1]],
    [8, [1, 1, 1, 1]],
  ])("fills the quarters of %i oktas", (oktas, filled) => {
    const gap = oktas === 7 ? 0.3 : 0.06;
    quarters(oktas).forEach((share, i) => {
      expect(Math.abs(share - (filled[i] ?? 0))).toBeLessThan(gap);
    });
  });

  it("draws the odd eighths' strokes: upright, lower, left, and a gap at seven", () => {
    expect([at(1, 0, -30), at(1, 0, 30)]).toEqual([true, true]);
    expect([at(0, 0, -30), at(0, 0, 30)]).toEqual([false, false]);
    expect([at(3, 0, 30), at(2, 0, 30)]).toEqual([true, false]);
    expect([at(5, -30, 0), at(4, -30, 0)]).toEqual([true, false]);
    expect([at(7, 0, -30), at(8, 0, -30)]).toEqual([false, true]);
  });

  it("does not draw the unknown as clear", () => {
    expect([at(null, 20, -20), at(0, 20, -20)]).toEqual([true, false]);
    expect(oktaCircle(CENTRE, RADIUS, null, "#000000").markup).toContain("stroke-dasharray");
  });

  it("holds figures beyond the scale to it", () => {
    const drawn = (oktas: number) => oktaCircle(CENTRE, RADIUS, oktas, "#000000").markup;
    expect([drawn(-3), drawn(12), drawn(2.6)]).toEqual([drawn(0), drawn(8), drawn(3)]);
  });
});
