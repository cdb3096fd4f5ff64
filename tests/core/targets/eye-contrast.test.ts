import { describe, expect, it } from "vitest";
import { nakedEyeLimit } from "../../../core/night/sky-brightness.ts";
import { contrastThreshold, visibilityLevel } from "../../../core/targets/eye-contrast.ts";

/** Far below what the eye resolves: a point. */
const POINT_ARCMIN2 = 1e-4;

/** Magnitude of a point at threshold: its light is the contrast times the sky's over its area. */
function pointLimit(skyMag: number, fieldFactor: number): number {
  const arcsec2 = POINT_ARCMIN2 * 3600;
  return skyMag - 2.5 * Math.log10(fieldFactor * contrastThreshold(skyMag, POINT_ARCMIN2) * arcsec2);
}

describe("contrastThreshold", () => {
  // B. E. Schaefer 1990, PASP 102, 212, as commonly inverted. An independent fit to other data:
  // the two differ by their observers' skill, a factor of 1.5, and by 0.1 mag over dark skies.
  it.each([22, 21.5, 21])("agrees with Schaefer's naked-eye limit under %s mag/arcsec²", (sky) => {
    expect(Math.abs(pointLimit(sky, 1.5) - nakedEyeLimit(sky))).toBeLessThan(0.1);
  });

  it("obeys Ricco's law for small patches: half the area, twice the contrast", () => {
    const ratio = contrastThreshold(21, 0.005) / contrastThreshold(21, 0.01);
    expect(ratio).toBeCloseTo(2, 3);
  });

  it("asks more contrast of a darker background", () => {
    expect(contrastThreshold(24, 100)).toBeGreaterThan(contrastThreshold(21, 100));
  });
});

describe("visibilityLevel", () => {
  it("shows a galaxy of 22 mag/arcsec² at a dark site and not in a city", () => {
    const view = { power: 60, exitPupilMm: 4 };
    expect(visibilityLevel(22, 21.5, 30, view, 1.5)).toBeGreaterThan(3);
    expect(visibilityLevel(22, 17.5, 30, view, 1.5)).toBeLessThan(
      visibilityLevel(22, 21.5, 30, view, 1.5) / 5,
    );
  });

  it("gains from magnifying a small faint patch", () => {
    const low = visibilityLevel(22, 20, 1, { power: 40, exitPupilMm: 6 }, 1.5);
    const high = visibilityLevel(22, 20, 1, { power: 120, exitPupilMm: 2 }, 1.5);
    expect(high).toBeGreaterThan(low);
  });
});
