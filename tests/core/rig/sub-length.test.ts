import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EXPOSURE_RULES } from "../../../config/exposure-rules.ts";
import {
  cycleSeconds,
  recommendedSub,
  shortestSubSeconds,
  subsThatFit,
  trackingCapSeconds,
} from "../../../core/rig/sub-length.ts";
import { fiveHundredRuleSeconds, michaudSeconds } from "../../../core/rig/trail-limits.ts";
import { fakeRig } from "./fake-rig.ts";

describe("shortestSubSeconds", () => {
  // Common practice, from the CCD equation: 5 % asks for 9.76·R²/B, "ten times the read noise squared".
  it("is 9.76 R²/B for 5 %", () => {
    expect(shortestSubSeconds(1, 1, 0.05)).toBeCloseTo(9.76, 2);
  });

  // Vector A, by hand: 9/((0.06079 + 0.9524)·0.1025) and 9/(0.06079·0.1025).
  it("is 86.7 s for the worked example, and 1444 s by its sky alone", () => {
    expect(shortestSubSeconds(3, 0.06079 + 0.9524, 0.05)).toBeCloseTo(86.7, 1);
    expect(shortestSubSeconds(3, 0.06079, 0.05)).toBeCloseTo(1444, 0);
  });

  it("is infinite without any background", () => {
    expect(shortestSubSeconds(3, 0, 0.05)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("recommendedSub", () => {
  it("takes the least step that is long enough", () => {
    expect(recommendedSub(86.7, {}, EXPOSURE_RULES)).toEqual({ subSeconds: 90, cap: null });
    expect(recommendedSub(90, {}, EXPOSURE_RULES)).toEqual({ subSeconds: 90, cap: null });
    expect(recommendedSub(0.2, {}, EXPOSURE_RULES)).toEqual({ subSeconds: 1, cap: null });
  });

  it("stays under the least of the caps and names it", () => {
    const caps = { tracking: 300, saturation: 100 };
    expect(recommendedSub(1444, caps, EXPOSURE_RULES)).toEqual({ subSeconds: 90, cap: "saturation" });
    expect(recommendedSub(1444, { tracking: 300 }, EXPOSURE_RULES)).toEqual({
      subSeconds: 300,
      cap: "tracking",
    });
  });

  it("falls back on the cap itself below every step", () => {
    expect(recommendedSub(10, { saturation: 0.4 }, EXPOSURE_RULES)).toEqual({
      subSeconds: 0.4,
      cap: "saturation",
    });
  });

  it("never passes a cap, and falls short of what is asked only under one", () => {
    const seconds = fc.double({ min: 0.01, max: 5000, noNaN: true });
    fc.assert(
      fc.property(seconds, seconds, seconds, (shortest, tracking, saturation) => {
        const choice = recommendedSub(shortest, { tracking, saturation }, EXPOSURE_RULES);
        expect(choice.subSeconds).toBeLessThanOrEqual(Math.min(tracking, saturation));
        if (choice.cap === null) expect(choice.subSeconds).toBeGreaterThanOrEqual(Math.min(shortest, 900));
      }),
    );
  });
});

describe("trackingCapSeconds", () => {
  // Common practice: 300 s guided; unguided 12,000/f seconds up to 120 s.
  it("is 300 s guided, 30 s unguided at 400 mm, 120 s unguided at 50 mm", () => {
    expect(trackingCapSeconds(fakeRig(), EXPOSURE_RULES, 0)).toBe(300);
    expect(trackingCapSeconds(fakeRig({ guided: false }), EXPOSURE_RULES, 0)).toBe(30);
    expect(trackingCapSeconds(fakeRig({ guided: false, focalLengthMm: 50 }), EXPOSURE_RULES, 0)).toBe(120);
  });

  it("is Michaud's rule on a tripod", () => {
    const rig = fakeRig({ mount: "fixed", focalLengthMm: 50, focalRatio: 2 });
    expect(trackingCapSeconds(rig, EXPOSURE_RULES, 0)).toBeCloseTo((35 * 2 + 30 * 3.76) / 50, 9);
  });
});

describe("trail limits", () => {
  it("the 500 rule gives 10 s to 50 mm on full frame, 5 s to half its diagonal", () => {
    const diagonal = Math.hypot(36, 24);
    expect(fiveHundredRuleSeconds({ focalLengthMm: 50, sensorDiagonalMm: diagonal })).toBeCloseTo(10, 9);
    expect(fiveHundredRuleSeconds({ focalLengthMm: 50, sensorDiagonalMm: diagonal / 2 })).toBeCloseTo(5, 9);
  });

  // F. Michaud's rule by hand: (35·2.8 + 30·4.3)/24 = 9.458 s at the equator; twice that at 60°.
  it("Michaud's rule gives 9.458 s to 24 mm f/2.8 with 4.3 µm", () => {
    const camera = { focalLengthMm: 24, focalRatio: 2.8, pixelUm: 4.3 };
    expect(michaudSeconds(camera, 0)).toBeCloseTo(9.458, 3);
    expect(michaudSeconds(camera, 60)).toBeCloseTo(2 * 9.4583333, 5);
    expect(Number.isFinite(michaudSeconds(camera, 90))).toBe(true);
  });
});

describe("subsThatFit", () => {
  // By hand: 300 s + 2 s + 15/3 s is 307 s; 3 h hold 35, 34 with a flip of 5 min.
  it("puts 35 subs of 300 s into 3 h, 34 with a flip", () => {
    expect(cycleSeconds(300, EXPOSURE_RULES)).toBe(307);
    expect(subsThatFit(10_800, 300, 0, EXPOSURE_RULES)).toBe(35);
    expect(subsThatFit(10_800, 300, 1, EXPOSURE_RULES)).toBe(34);
  });

  it("is never negative", () => {
    expect(subsThatFit(100, 300, 1, EXPOSURE_RULES)).toBe(0);
  });
});
