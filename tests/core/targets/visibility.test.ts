import { describe, expect, it } from "vitest";
import { type Placer, visibleIntervals } from "../../../core/targets/visibility.ts";

const START = Date.UTC(2026, 0, 10, 18);
const HOUR = 3_600_000;
const NIGHT = [{ start: new Date(START), end: new Date(START + 10 * HOUR) }];

/** Climbs 6° an hour from 0° in the east, moving 15° of azimuth an hour. */
const climbing: Placer = (at) => {
  const hours = (at.getTime() - START) / HOUR;
  return { altitudeDeg: 6 * hours, azimuthDeg: 90 + 15 * hours };
};

const LEVEL = { skyline: [], leastAltitudeDeg: 30 };

describe("visibleIntervals", () => {
  it("begins where the target passes the least altitude", () => {
    const [only, ...others] = visibleIntervals(climbing, LEVEL, NIGHT);
    expect(others).toEqual([]);
    expect(Math.abs((only?.start.getTime() ?? 0) - (START + 5 * HOUR))).toBeLessThan(500);
    expect(only?.end).toEqual(NIGHT[0]?.end);
  });

  it("leaves out what a wall hides", () => {
    const wall = [
      { azimuthDeg: 180, altitudeDeg: 0 },
      { azimuthDeg: 180, altitudeDeg: 80 },
      { azimuthDeg: 195, altitudeDeg: 80 },
      { azimuthDeg: 195, altitudeDeg: 0 },
    ];
    const spans = visibleIntervals(climbing, { skyline: wall, leastAltitudeDeg: 30 }, NIGHT);
    const hours = spans.map((span) => [
      (span.start.getTime() - START) / HOUR,
      (span.end.getTime() - START) / HOUR,
    ]);
    expect(hours).toHaveLength(2);
    [
      [5, 6],
      [7, 10],
    ].forEach(([from, to], index) => {
      expect(hours[index]?.[0]).toBeCloseTo(from ?? 0, 3);
      expect(hours[index]?.[1]).toBeCloseTo(to ?? 0, 3);
    });
  });

  it("keeps the whole span for what never sinks and nothing for what never rises", () => {
    expect(visibleIntervals(() => ({ altitudeDeg: 50, azimuthDeg: 0 }), LEVEL, NIGHT)).toEqual(NIGHT);
    expect(visibleIntervals(() => ({ altitudeDeg: -5, azimuthDeg: 0 }), LEVEL, NIGHT)).toEqual([]);
  });

  it("lets a target exactly at its limit pass", () => {
    expect(visibleIntervals(() => ({ altitudeDeg: 30, azimuthDeg: 0 }), LEVEL, NIGHT)).toEqual(NIGHT);
  });

  it("has nothing in an empty night", () => {
    expect(visibleIntervals(climbing, LEVEL, [])).toEqual([]);
  });
});
