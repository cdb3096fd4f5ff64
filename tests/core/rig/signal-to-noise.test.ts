import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EXPOSURE_RULES } from "../../../config/exposure-rules.ts";
import { improvements } from "../../../core/rig/improvements.ts";
import {
  hoursToSignalToNoise,
  largestNoise,
  noiseShares,
  patchSignalToNoise,
  pixelSignalToNoise,
} from "../../../core/rig/signal-to-noise.ts";
import { hoursLost } from "../../../core/rig/sub-cost.ts";
import { fakeRig } from "./fake-rig.ts";

/** 100 Rayleigh of hydrogen-alpha on the worked example's rig. */
const PIXEL_RATES = { signal: 0.006466, glow: 0.06079, moon: 0, dark: 0.9524, readNoiseElectrons: 3 };
const SUBS = { subSeconds: 300, count: 40 };

const rate = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyRates = fc.record({
  signal: rate(1e-4, 10),
  glow: rate(1e-4, 50),
  moon: rate(0, 50),
  dark: rate(0, 5),
  readNoiseElectrons: rate(0.5, 15),
});

describe("pixelSignalToNoise", () => {
  // By hand: 77.59/√(12235.9 + 360).
  it("is 0.691 for 100 Rayleigh", () => {
    expect(pixelSignalToNoise(PIXEL_RATES, SUBS)).toBeCloseTo(0.691, 3);
  });

  // S. B. Howell, Handbook of CCD Astronomy, the worked example of the CCD equation (from memory):
  // 24 013 ADU of star and 620 ADU of sky at 5 e/ADU, 1.8 e of dark current, 5 e of read noise, one
  // pixel, 300 s: 342. His 200 background pixels and the converter's steps move it by less than 0.1.
  it("is 342 in Howell's worked example", () => {
    const rates = {
      signal: (24_013 * 5) / 300,
      glow: (620 * 5) / 300,
      moon: 0,
      dark: 1.8 / 300,
      readNoiseElectrons: 5,
    };
    expect(Math.round(pixelSignalToNoise(rates, { subSeconds: 300, count: 1 }))).toBe(342);
  });

  it("is nothing without subs", () => {
    expect(pixelSignalToNoise(PIXEL_RATES, { subSeconds: 300, count: 0 })).toBe(0);
  });

  it("never rises with a brighter sky", () => {
    fc.assert(
      fc.property(anyRates, rate(0, 100), (rates, more) => {
        const brighter = { ...rates, glow: rates.glow + more };
        expect(pixelSignalToNoise(brighter, SUBS)).toBeLessThanOrEqual(pixelSignalToNoise(rates, SUBS));
      }),
    );
  });

  it("never rises when a total is split into more subs", () => {
    fc.assert(
      fc.property(anyRates, fc.integer({ min: 2, max: 50 }), (rates, parts) => {
        const whole = pixelSignalToNoise(rates, { subSeconds: 3600, count: 1 });
        const split = pixelSignalToNoise(rates, { subSeconds: 3600 / parts, count: parts });
        expect(split).toBeLessThanOrEqual(whole);
      }),
    );
  });
});

describe("patchSignalToNoise", () => {
  // By hand: 100/1.9389² pixels, one in four: √6.65 × 0.691.
  it("is 1.783 for 100 Rayleigh, one red pixel in four", () => {
    const dyes = [{ ...PIXEL_RATES, pixelShare: 0.25 }];
    expect(patchSignalToNoise(dyes, 10, (206.264806 * 3.76) / 400, SUBS)).toBeCloseTo(1.783, 3);
  });

  it("reaches what was wanted after the hours that were said", () => {
    fc.assert(
      fc.property(anyRates, rate(1, 100), (rates, wanted) => {
        const dyes = [
          { ...rates, pixelShare: 0.5 },
          { ...rates, signal: rates.signal / 2, pixelShare: 0.25 },
        ];
        const hours = hoursToSignalToNoise(dyes, 10, 2, 120, wanted);
        const reached = patchSignalToNoise(dyes, 10, 2, { subSeconds: 120, count: (hours * 3600) / 120 });
        expect(reached / wanted).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe("noiseShares", () => {
  it("shares out the whole, dark current leading at 35 °C", () => {
    const shares = noiseShares(PIXEL_RATES, 300);
    expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(largestNoise(shares)).toBe("dark");
  });
});

describe("hoursLost", () => {
  it("counts downloads alone for a camera without read noise", () => {
    // By hand: 60 s of 67 s expose, so 7/67 of 4 h are lost.
    const rates = { ...PIXEL_RATES, readNoiseElectrons: 0 };
    expect(hoursLost(rates, 60, 4, EXPOSURE_RULES)).toBeCloseTo((4 * 7) / 67, 9);
  });

  it("falls as subs grow and stays within the hours at hand", () => {
    fc.assert(
      fc.property(anyRates, (rates) => {
        const losses = EXPOSURE_RULES.subSteps.map((step) => hoursLost(rates, step, 4, EXPOSURE_RULES));
        for (const [index, loss] of losses.entries()) {
          expect(loss).toBeGreaterThanOrEqual(0);
          expect(loss).toBeLessThanOrEqual(4);
          if (index > 0) expect(loss).toBeLessThanOrEqual(losses[index - 1] ?? 0);
        }
      }),
    );
  });
});

describe("improvements", () => {
  const exposure = {
    rates: PIXEL_RATES,
    subSeconds: 90,
    totalHours: 3,
    sensor: fakeRig().sensor,
    sensorCelsius: 35,
    cooledCelsius: -10,
    moonCost: 1,
    line: true,
  };

  it("puts cooling first for a warm sensor, with its factor", () => {
    const [best] = improvements(exposure);
    expect(best?.kind).toBe("cooler");
    // By hand: N 0.006466 + 0.06079 + 0.9524 + 0.1 = 1.119656; cooled 0.3·2^(−35/6) = 0.005262 in its place.
    expect(best?.factor).toBeCloseTo(1.119656 / (1.119656 - 0.9524 + 0.005262), 3);
  });

  it("names only what helps, the best first", () => {
    const found = improvements(exposure);
    expect(found.map(({ kind }) => kind)).not.toContain("no-moon");
    const factors = found.map(({ factor }) => factor);
    expect(factors).toEqual([...factors].sort((one, other) => other - one));
    expect(Math.min(...factors)).toBeGreaterThan(1);
  });

  it("values an hour more as a third of 3 h", () => {
    const hour = improvements(exposure).find(({ kind }) => kind === "hour-more");
    expect(hour?.factor).toBeCloseTo(4 / 3, 12);
  });
});
