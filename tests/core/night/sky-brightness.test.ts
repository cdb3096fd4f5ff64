import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PHOTOMETRY } from "../../../config/photometry.ts";
import {
  magArcsec2,
  nakedEyeLimit,
  nanolamberts,
  zenithMagArcsec2,
  zenithMagOfNakedEyeLimit,
} from "../../../core/night/sky-brightness.ts";

describe("nanolamberts", () => {
  // K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033: 21.587 mag/arcsec² is 79.0 nL.
  it("makes 79.0 nL of 21.587 mag/arcsec²", () => {
    expect(nanolamberts(21.587)).toBeCloseTo(79.0, 1);
  });

  it("is undone by magArcsec2", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 24, noNaN: true }), (magnitude) => {
        expect(magArcsec2(nanolamberts(magnitude))).toBeCloseTo(magnitude, 9);
      }),
    );
  });

  it("has no magnitude for no light", () => {
    expect(() => magArcsec2(0)).toThrow(RangeError);
  });
});

describe("nakedEyeLimit", () => {
  // B. E. Schaefer 1990, PASP 102, 212, as commonly inverted.
  it.each([
    [22, 6.62],
    [21, 6.12],
    [20, 5.49],
    [19, 4.77],
    [18, 3.97],
  ])("under %d mag/arcsec² is magnitude %d", (zenithMag, expected) => {
    expect(nakedEyeLimit(zenithMag)).toBeCloseTo(expected, 2);
    expect(zenithMagOfNakedEyeLimit(nakedEyeLimit(zenithMag))).toBeCloseTo(zenithMag, 9);
  });

  it("knows no sky for a limit of 8", () => {
    expect(() => zenithMagOfNakedEyeLimit(8)).toThrow(RangeError);
  });
});

describe("zenithMagArcsec2", () => {
  const bortle = PHOTOMETRY.bortleMagArcsec2;

  it("takes a reading as it is", () => {
    expect(zenithMagArcsec2({ kind: "reading", magArcsec2: 20.73 }, bortle)).toBe(20.73);
  });

  // Common practice, the ranges of magnitude usually put on the classes.
  it.each([
    [1, 21.99, 22.5],
    [2, 21.89, 21.99],
    [3, 21.69, 21.89],
    [4, 20.49, 21.69],
    [5, 19.5, 20.49],
    [6, 18.94, 19.5],
    [7, 18.38, 18.94],
    [8, 16, 18.38],
    [9, 16, 18.38],
  ])("puts class %d between %d and %d", (bortleClass, from, to) => {
    const magnitude = zenithMagArcsec2({ kind: "bortle", class: bortleClass }, bortle);
    expect(magnitude).toBeGreaterThanOrEqual(from);
    expect(magnitude).toBeLessThanOrEqual(to);
  });

  it("knows no class 10", () => {
    expect(() => zenithMagArcsec2({ kind: "bortle", class: 10 }, bortle)).toThrow(RangeError);
  });
});
