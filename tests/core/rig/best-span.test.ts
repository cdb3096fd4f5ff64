import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { totalHours } from "../../../core/interval.ts";
import { bestSpan } from "../../../core/rig/best-span.ts";

const at = (hour: number) => new Date(Date.UTC(2026, 9, 3, 0, 0) + hour * 3_600_000);
const hourOf = (utMs: number) => (utMs - at(0).getTime()) / 3_600_000;

describe("bestSpan", () => {
  it("keeps the windows when there is time for all", () => {
    const windows = [{ start: at(20), end: at(23) }];
    expect(bestSpan(windows, 5, () => 1)).toBe(windows);
  });

  it("centres on the best hour", () => {
    const [span, ...others] = bestSpan(
      [{ start: at(18), end: at(30) }],
      2,
      (utMs) => -Math.abs(hourOf(utMs) - 25),
    );
    expect(others).toEqual([]);
    expect(Math.abs(hourOf(span?.start.getTime() ?? 0) - 24)).toBeLessThan(0.1);
    expect(Math.abs(hourOf(span?.end.getTime() ?? 0) - 26)).toBeLessThan(0.1);
  });

  it("passes from one window into the next", () => {
    const windows = [
      { start: at(20), end: at(21) },
      { start: at(22), end: at(23) },
    ];
    const spans = bestSpan(windows, 1.5, () => 1);
    expect(spans).toHaveLength(2);
    expect(totalHours(spans)).toBeCloseTo(1.5, 6);
  });

  it("is as long as asked and inside the windows", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 9.9, noNaN: true }),
        fc.integer({ min: 0, max: 40 }),
        (hours, seed) => {
          const windows = [
            { start: at(18), end: at(24.3) },
            { start: at(25), end: at(29) },
          ];
          const spans = bestSpan(windows, hours, (utMs) => Math.sin(hourOf(utMs) * 3 + seed));
          expect(totalHours(spans)).toBeCloseTo(hours, 5);
          for (const span of spans) {
            expect(
              windows.some(
                (window) =>
                  span.start.getTime() >= window.start.getTime() - 1 &&
                  span.end.getTime() <= window.end.getTime() + 1,
              ),
            ).toBe(true);
          }
        },
      ),
    );
  });
});
