import { describe, expect, it } from "vitest";
import { aerosolExtinction, extinctionPerAirmass, transmission } from "../../../core/targets/extinction.ts";

describe("extinctionPerAirmass", () => {
  // Worked by hand at 550 nm, where both power laws are 1: 0.106 + 0.12 + 0.03.
  it("is 0.256 at 550 nm at sea level with 0.12 of aerosol", () => {
    expect(extinctionPerAirmass(550, 0, 0.12)).toBeCloseTo(0.256, 12);
  });

  // By hand: 0.106·0.4932 + 0.12·0.7948 + 0.03 and 0.106·1.4559 + 0.12·1.1298 + 0.03.
  it.each([
    [656.3, 0.178],
    [500.7, 0.32],
  ])("at %d nm is %d", (wavelengthNm, expected) => {
    expect(extinctionPerAirmass(wavelengthNm, 0, 0.12)).toBeCloseTo(expected, 3);
  });

  it("loses a factor e of its air term with 8 km of height", () => {
    expect(extinctionPerAirmass(550, 8000, 0)).toBeCloseTo(0.106 / Math.E + 0.03, 12);
  });

  it("leaves ozone out beyond its band", () => {
    expect(extinctionPerAirmass(499, 0, 0)).toBeCloseTo(0.106 * (550 / 499) ** 4, 12);
  });
});

describe("aerosolExtinction", () => {
  it("turns an optical depth of 0.1 into 0.1086 mag", () => {
    expect(aerosolExtinction(0.1)).toBeCloseTo(0.1086, 12);
  });
});

describe("transmission", () => {
  it("is 10 % for 2.5 magnitudes", () => {
    expect(transmission(1.25, 2)).toBeCloseTo(0.1, 12);
  });
});
