/** The table of showers: sound, and with the maxima of the published list. */
import { describe, expect, it } from "vitest";
import { METEOR_SHOWERS } from "../../config/meteor-showers.ts";

describe("METEOR_SHOWERS", () => {
  it("names each once, with a radiant, a speed and an index that can be", () => {
    expect(new Set(METEOR_SHOWERS.map(({ code }) => code)).size).toBe(METEOR_SHOWERS.length);
    for (const shower of METEOR_SHOWERS) {
      expect(shower.code).toMatch(/^[A-Z]{3}$/);
      expect(shower.activeFrom).toMatch(/^(0[1-9]|1[0-2])-[0-3]\d$/);
      expect(shower.activeTo).toMatch(/^(0[1-9]|1[0-2])-[0-3]\d$/);
      expect(shower.peakLongitudeDeg).toBeGreaterThanOrEqual(0);
      expect(shower.peakLongitudeDeg).toBeLessThan(360);
      expect(shower.raDeg).toBeLessThan(360);
      expect(Math.abs(shower.decDeg)).toBeLessThanOrEqual(90);
      // The Earth meets nothing slower than 11 km/s nor, bound to the Sun, faster than 72.
      expect(shower.speedKmPerSecond).toBeGreaterThan(11);
      expect(shower.speedKmPerSecond).toBeLessThan(73);
      expect(shower.populationIndex).toBeGreaterThanOrEqual(1.8);
      expect(shower.populationIndex).toBeLessThanOrEqual(3.5);
      if (shower.zhr !== null) expect(shower.zhr).toBeGreaterThanOrEqual(5);
    }
  });

  it.each([
    // International Meteor Organization working list (from memory).
    ["QUA", 283.15],
    ["LYR", 32.32],
    ["ETA", 45.5],
    ["SDA", 127],
    ["PER", 140.0],
    ["ORI", 208],
    ["LEO", 235.27],
    ["GEM", 262.2],
    ["URS", 270.7],
  ])("has %s at a solar longitude of %s°", (code, longitude) => {
    expect(METEOR_SHOWERS.find((shower) => shower.code === code)?.peakLongitudeDeg).toBe(longitude);
  });
});
