import { describe, expect, it } from "vitest";
import { nightLight } from "../../../core/night/night-light.ts";
import { bodyPlace } from "../../../core/sky/bodies.ts";

const FELL = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 200 };
const light = (instant: string) => nightLight(FELL)(Date.parse(instant));

describe("nightLight", () => {
  it("places the Moon where the full ephemeris does, to 0.001°", () => {
    for (const instant of ["2026-01-04T22:00:00Z", "2027-06-12T01:30:00Z", "2031-11-30T18:45:00Z"]) {
      const quick = light(instant);
      const full = bodyPlace("Moon", FELL, new Date(instant));
      expect(Math.abs(quick.moonAltitudeDeg - full.altitudeDeg)).toBeLessThan(0.001);
      expect(Math.abs(quick.moonAzimuthDeg - full.azimuthDeg)).toBeLessThan(0.001);
      // One phase angle is apparent, the other geometric: light time turns it by thousandths of a degree.
      expect(Math.abs(quick.phaseAngleDeg - full.phaseAngleDeg)).toBeLessThan(0.01);
    }
  });

  // Published circumstances, from memory: total on 2026 March 3, greatest 11:34 UT; partial on 2026 August 28,
  // umbral magnitude 0.93, greatest 04:13 UT.
  it("leaves no light at the greatest of the total eclipse of 2026 March 3", () => {
    expect(light("2026-03-03T11:34:00Z").litShare).toBe(0);
  });

  it("leaves a sliver at the greatest of the partial eclipse of 2026 August 28", () => {
    expect(light("2026-08-28T04:13:00Z").litShare).toBeGreaterThan(0.02);
    expect(light("2026-08-28T04:13:00Z").litShare).toBeLessThan(0.12);
  });

  it("takes nothing from an ordinary full Moon", () => {
    expect(light("2026-11-24T14:53:00Z").litShare).toBe(1);
  });
});
