import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { skylineAltitudeDeg, skylineRangeDeg } from "../../../core/targets/skyline.ts";

const HILLS = [
  { azimuthDeg: 90, altitudeDeg: 10 },
  { azimuthDeg: 180, altitudeDeg: 30 },
  { azimuthDeg: 270, altitudeDeg: 10 },
];

describe("skylineAltitudeDeg", () => {
  it("is level without points", () => {
    expect(skylineAltitudeDeg([], 123)).toBe(0);
  });

  it("runs straight between two points", () => {
    expect(skylineAltitudeDeg(HILLS, 135)).toBeCloseTo(20, 12);
  });

  it("runs across north from the last point to the first", () => {
    const rising = [
      { azimuthDeg: 10, altitudeDeg: 20 },
      { azimuthDeg: 350, altitudeDeg: 0 },
    ];
    expect(skylineAltitudeDeg(rising, 0)).toBeCloseTo(10, 12);
    expect(skylineAltitudeDeg(rising, 355)).toBeCloseTo(5, 12);
    expect(skylineAltitudeDeg(rising, 5)).toBeCloseTo(15, 12);
  });

  it("is the same everywhere with one point", () => {
    expect(skylineAltitudeDeg([{ azimuthDeg: 40, altitudeDeg: 7 }], 300)).toBeCloseTo(7, 12);
  });

  it("takes the higher side where two points share an azimuth", () => {
    const wall = [
      { azimuthDeg: 0, altitudeDeg: 0 },
      { azimuthDeg: 90, altitudeDeg: 0 },
      { azimuthDeg: 90, altitudeDeg: 40 },
      { azimuthDeg: 180, altitudeDeg: 40 },
    ];
    expect(skylineAltitudeDeg(wall, 90)).toBe(0);
    expect(skylineAltitudeDeg(wall, 90.0001)).toBeCloseTo(40, 3);
  });

  it("stays within the profile's own range and repeats every turn", () => {
    const profile = fc
      .array(
        fc.record({
          azimuthDeg: fc.double({ min: 0, max: 359.9, noNaN: true }),
          altitudeDeg: fc.double({ min: -5, max: 60, noNaN: true }),
        }),
        {
          minLength: 1,
          maxLength: 12,
        },
      )
      .map((points) => points.sort((a, b) => a.azimuthDeg - b.azimuthDeg));
    fc.assert(
      fc.property(profile, fc.double({ min: -720, max: 720, noNaN: true }), (skyline, azimuth) => {
        const { lowestDeg, highestDeg } = skylineRangeDeg(skyline);
        const height = skylineAltitudeDeg(skyline, azimuth);
        expect(height).toBeGreaterThanOrEqual(lowestDeg - 1e-9);
        expect(height).toBeLessThanOrEqual(highestDeg + 1e-9);
      }),
    );
  });
});
