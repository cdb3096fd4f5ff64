/** Refraction beside the published table's values. */
import { describe, expect, it } from "vitest";
import { apparentAltitudeDeg, refractionDeg } from "../../../core/sky/refraction.ts";

describe("refractionDeg", () => {
  // The Sun's upper limb at 10 °C and 1010 hPa; Astronomical Algorithms, formula 16.4.
  it("lifts a true altitude of 0.5541° by 24.6′, Meeus, example 16.a", () => {
    expect(refractionDeg(0.5541) * 60).toBeCloseTo(24.618, 1);
  });

  it("is about 29′ at a true 0°, 5′ at 10° and nothing overhead", () => {
    // Values of Sæmundsson's formula as printed: 28.98′, 5.37′ (from memory).
    expect(refractionDeg(0) * 60).toBeCloseTo(28.98, 1);
    expect(refractionDeg(10) * 60).toBeCloseTo(5.37, 1);
    expect(refractionDeg(90) * 60).toBeCloseTo(0, 3);
  });

  it("never turns the order of two altitudes round", () => {
    let before = Number.NEGATIVE_INFINITY;
    for (let altitude = -90; altitude <= 90; altitude += 0.1) {
      const apparent = apparentAltitudeDeg(altitude);
      expect(apparent).toBeGreaterThan(before);
      before = apparent;
    }
  });
});
