import { describe, expect, it } from "vitest";
import { airmass, scatteringPath, scatteringPathAtSine } from "../../../core/targets/airmass.ts";

describe("airmass", () => {
  // F. Kasten & A. T. Young 1989, Applied Optics 28, 4735: values of their formula, to the last digit given.
  it.each([
    [90, 0.9997, 4],
    [60, 1.154, 4],
    [30, 1.9943, 4],
    [20, 2.9031, 4],
    [10, 5.586, 4],
    [5, 10.306, 3],
    [0, 37.92, 2],
  ])("at %d° is %d", (altitudeDeg, expected, digits) => {
    expect(airmass(altitudeDeg)).toBeCloseTo(expected, digits);
  });

  it("keeps the horizon's value below the horizon", () => {
    expect(airmass(-12)).toBe(airmass(0));
  });
});

describe("scatteringPath", () => {
  // K. Krisciunas & B. E. Schaefer 1991, equation 3: 70° from the zenith 2.562, against 2.903 of Kasten & Young.
  it("is 2.562 at 70° from the zenith", () => {
    expect(scatteringPath(70)).toBeCloseTo(2.562, 3);
  });

  it("runs from 1 overhead to 5 on the horizon and stays there", () => {
    expect(scatteringPath(0)).toBe(1);
    expect(scatteringPath(90)).toBeCloseTo(5, 12);
    expect(scatteringPath(120)).toBeCloseTo(5, 12);
  });

  it("is the same by the sine of the altitude", () => {
    expect(scatteringPathAtSine(Math.sin((25 * Math.PI) / 180))).toBeCloseTo(scatteringPath(65), 12);
  });
});
