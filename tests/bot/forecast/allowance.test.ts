/**
 * The allowance: no window of time ever holds more than its weight.
 *
 * @packageDocumentation
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Allowance } from "../../../bot/forecast/allowance.ts";

describe("Allowance", () => {
  it("lets requests through until a window is full, then until the earliest has passed", () => {
    const allowance = new Allowance([{ spanMs: 1000, weight: 10 }]);
    expect(allowance.waitMs(6, 0)).toBe(0);
    allowance.spend(6, 0);
    expect(allowance.waitMs(4, 100)).toBe(0);
    expect(allowance.waitMs(5, 100)).toBe(900);
    expect(allowance.waitMs(5, 1000)).toBe(0);
  });

  it("lets a request heavier than the window through once it is empty", () => {
    const allowance = new Allowance([{ spanMs: 1000, weight: 10 }]);
    expect(allowance.waitMs(25, 0)).toBe(0);
    allowance.spend(25, 0);
    expect(allowance.waitMs(1, 1)).toBe(999);
  });

  it("never lets any window hold more than its weight", () => {
    const windows = [
      { spanMs: 60, weight: 20 },
      { spanMs: 600, weight: 100 },
    ];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 40 })), {
          maxLength: 60,
        }),
        (requests) => {
          const allowance = new Allowance(windows);
          const spent: { atMs: number; weight: number }[] = [];
          let nowMs = 0;
          for (const [weight, pauseMs] of requests) {
            nowMs += pauseMs;
            nowMs += allowance.waitMs(weight, nowMs);
            allowance.spend(weight, nowMs);
            spent.push({ atMs: nowMs, weight });
            for (const window of windows) {
              const inside = spent.filter(({ atMs }) => nowMs - atMs < window.spanMs);
              expect(inside.reduce((sum, entry) => sum + entry.weight, 0)).toBeLessThanOrEqual(window.weight);
            }
          }
        },
      ),
    );
  });
});
