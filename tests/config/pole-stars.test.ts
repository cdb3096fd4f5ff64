import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { POLARIS, SOUTHERN_TRAPEZIUM } from "../../config/pole-stars.ts";
import { separationDeg } from "../../core/sky/place.ts";

type Collection = {
  features: { id: number; properties: { mag: number }; geometry: { coordinates: [number, number] } }[];
};

/** Hipparcos numbers. */
const NUMBERS: Readonly<Record<string, number>> = {
  Polaris: 11767,
  "sigma Octantis": 104382,
  "tau Octantis": 115836,
  "chi Octantis": 92824,
  "upsilon Octantis": 111196,
};

const catalogue = (createRequire(import.meta.url)("d3-celestial/data/stars.8.json") as Collection).features;

describe("the pole stars", () => {
  it.each([POLARIS, ...SOUTHERN_TRAPEZIUM])("$name stands where another catalogue has it", (star) => {
    // The d3-celestial package, to 0.0001°; its places are of Hipparcos.
    const found = catalogue.find(({ id }) => id === NUMBERS[star.name]);
    if (!found) throw new Error(`${star.name} is not in the catalogue`);
    const [raDeg, decDeg] = found.geometry.coordinates;
    expect(separationDeg(star, { raDeg, decDeg }) * 3600).toBeLessThan(2);
    expect(Math.abs(star.magnitude - found.properties.mag)).toBeLessThan(0.1);
  });

  it("stand on the side of the sky they are filed under", () => {
    for (const { pole, decDeg } of [POLARIS, ...SOUTHERN_TRAPEZIUM]) {
      expect(Math.sign(decDeg)).toBe(pole === "north" ? 1 : -1);
      expect(Math.abs(decDeg)).toBeGreaterThan(85);
    }
  });
});
