import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clockHours, linear, roundStep, roundValues, spread } from "../../../bot/charts/scale.ts";

describe("linear", () => {
  it("maps ends to ends and an empty domain to the low end", () => {
    const scale = linear(10, 20, 100, 0);
    expect([scale(10), scale(20), scale(15)]).toEqual([100, 0, 50]);
    expect(linear(3, 3, 7, 9)(3)).toBe(7);
  });
});

describe("roundStep", () => {
  it.each([
    [10, 5, 2],
    [10, 4, 5],
    [0.7, 4, 0.2],
    [1, 1, 1],
    [900, 4, 500],
  ])("divides %d into at most %i steps of %d", (span, most, step) => {
    expect(roundStep(span, most)).toBeCloseTo(step, 12);
  });

  it("does not fail on nothing", () => {
    expect([roundStep(0, 4), roundStep(Number.NaN, 4)]).toEqual([1, 1]);
  });
});

describe("roundValues", () => {
  it("lists round values within the range", () => {
    expect(roundValues(0, 1, 5)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1]);
  });
});

describe("clockHours", () => {
  it("reads the site's own clock across the end of summer time", () => {
    const span = { start: new Date("2026-10-24T22:30Z"), end: new Date("2026-10-25T04:30Z") };
    const hours = clockHours(span, "Europe/London", 10).map((at) => at.toISOString().slice(11, 16));
    // 23:30 to 04:30 by the clock; one o'clock comes twice.
    expect(hours).toEqual(["23:00", "00:00", "01:00", "02:00", "03:00", "04:00"]);
  });

  it("stands on whole hours where the zone is half an hour off", () => {
    const span = { start: new Date("2026-06-01T12:00Z"), end: new Date("2026-06-01T16:00Z") };
    const minutes = clockHours(span, "Asia/Kolkata", 10).map((at) => at.getUTCMinutes());
    expect(new Set(minutes)).toEqual(new Set([30]));
  });
});

describe("spread", () => {
  const labels = fc.array(
    fc.record({
      centre: fc.double({ min: -50, max: 450, noNaN: true }),
      extent: fc.double({ min: 1, max: 60, noNaN: true }),
    }),
    { maxLength: 6 },
  );

  it("lets no label lie on another, and keeps them inside where they fit", () => {
    fc.assert(
      fc.property(labels, (wanted) => {
        const centres = spread(wanted, 0, 400);
        const spans = wanted
          .map(({ extent }, i) => [(centres[i] ?? 0) - extent / 2, (centres[i] ?? 0) + extent / 2] as const)
          .sort((a, b) => a[0] - b[0]);
        spans.forEach(([start, end], i) => {
          expect(start).toBeGreaterThanOrEqual((spans[i - 1]?.[1] ?? 0) - 1e-6);
          expect(end).toBeLessThanOrEqual(400 + 1e-6);
        });
      }),
    );
  });

  it("leaves alone what does not overlap", () => {
    expect(
      spread(
        [
          { centre: 300, extent: 20 },
          { centre: 100, extent: 20 },
        ],
        0,
        400,
      ),
    ).toEqual([300, 100]);
  });
});
