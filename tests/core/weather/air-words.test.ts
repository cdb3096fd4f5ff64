/**
 * The words for cloud, steadiness and transparency, at their limits.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import { STEADINESS, TRANSPARENCY } from "../../../config/air-words.ts";
import { oktas } from "../../../core/weather/cloud.ts";
import { steadinessOf } from "../../../core/weather/steadiness.ts";
import { transparencyOf } from "../../../core/weather/transparency.ts";

describe("oktas", () => {
  // WMO-No. 8: 0 is a sky without a trace of cloud, 8 one without a gap.
  it.each([
    [0, 0],
    [1, 1],
    [12.5, 1],
    [25, 2],
    [50, 4],
    [99, 7],
    [100, 8],
  ])("of %d %% is %d", (percent, expected) => {
    expect(oktas(percent)).toBe(expected);
  });
});

describe("steadinessOf", () => {
  it("is steady under 20 m/s, unsteady over 40, fair at both and between", () => {
    expect([19.9, 20, 40, 40.1].map((wind) => steadinessOf(wind, STEADINESS))).toEqual([
      "steady",
      "fair",
      "fair",
      "unsteady",
    ]);
  });
});

describe("transparencyOf", () => {
  it("goes from clear to hazy", () => {
    expect([0.05, 0.12, 0.2, 0.3, 0.6].map((depth) => transparencyOf(depth, TRANSPARENCY))).toEqual([
      "clear",
      "clear",
      "middling",
      "middling",
      "hazy",
    ]);
  });
});
