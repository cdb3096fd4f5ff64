import { describe, expect, it } from "vitest";
import { contrastThreshold, fieldFactor, visibilityLevel } from "../../../core/targets/eye-contrast.ts";

describe("fieldFactor", () => {
  // Crumey 2014 reports field factors of 1.4 to 2.4 for ordinary observers under dark skies (from memory);
  // Schaefer's limit and Blackwell's laboratory are independent of each other.
  it.each([22, 21.5, 21])("is 1.4 to 1.6 under %s mag/arcsec²", (sky) => {
    expect(fieldFactor(sky)).toBeGreaterThan(1.4);
    expect(fieldFactor(sky)).toBeLessThan(1.6);
  });
});

describe("contrastThreshold", () => {
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
    expect(visibilityLevel(22, 21.5, 30, view)).toBeGreaterThan(3);
    expect(visibilityLevel(22, 17.5, 30, view)).toBeLessThan(visibilityLevel(22, 21.5, 30, view) / 5);
  });

  it("gains from magnifying a small faint patch", () => {
    const low = visibilityLevel(22, 20, 1, { power: 40, exitPupilMm: 6 });
    const high = visibilityLevel(22, 20, 1, { power: 120, exitPupilMm: 2 });
    expect(high).toBeGreaterThan(low);
  });
});
