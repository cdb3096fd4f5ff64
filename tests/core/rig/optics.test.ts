import { describe, expect, it } from "vitest";
import { apertureAreaM2, fieldDeg, pixelsAcross, scaleArcsecPerPixel } from "../../../core/rig/optics.ts";

describe("fieldDeg", () => {
  // Plain trigonometry, 2·atan(d/2f).
  it.each([
    [23.5, 250, 5.3818, 4],
    [15.7, 250, 3.597, 4],
    [36, 50, 39.598, 3],
    [24, 50, 26.991, 3],
  ])("of %d mm at %d mm is %d°", (sideMm, focalLengthMm, expected, digits) => {
    expect(fieldDeg(sideMm, focalLengthMm)).toBeCloseTo(expected, digits);
  });
});

describe("scaleArcsecPerPixel", () => {
  // 206.265·p/f.
  it("of 3.76 µm at 250 mm is 3.102″", () => {
    expect(scaleArcsecPerPixel(3.76, 250)).toBeCloseTo(3.102, 3);
  });
});

describe("apertureAreaM2", () => {
  it("of 400 mm f/5.6 is 0.0040072 m², and three quarters of it behind half an obstruction", () => {
    const clear = apertureAreaM2({ focalLengthMm: 400, focalRatio: 5.6, obstruction: 0 });
    expect(clear).toBeCloseTo((Math.PI / 4) * (0.4 / 5.6) ** 2, 12);
    const obstructed = apertureAreaM2({ focalLengthMm: 400, focalRatio: 5.6, obstruction: 0.5 });
    expect(obstructed / clear).toBeCloseTo(0.75, 12);
  });
});

describe("pixelsAcross", () => {
  it("of 23.5 mm in 3.76 µm is 6250", () => {
    expect(pixelsAcross(23.5, 3.76)).toBe(6250);
  });
});
