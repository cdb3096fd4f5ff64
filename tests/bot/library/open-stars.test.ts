import { describe, expect, it } from "vitest";
import { openStars } from "../../../bot/library/open-stars.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const stars = openStars();

/** The row of the star nearest to a place, looked for within 0.05°. */
function nearest(raDeg: number, decDeg: number): number {
  let best = -1;
  let least = 0.05;
  for (let i = 0; i < stars.count; i++) {
    const across = (stars.raDeg[i] ?? 0) - raDeg;
    const off = Math.hypot(across * Math.cos((decDeg * Math.PI) / 180), (stars.decDeg[i] ?? 0) - decDeg);
    if (off < least) {
      least = off;
      best = i;
    }
  }
  return best;
}

describe("the star table", () => {
  it("holds some 41,000 stars to magnitude 8, the brightest first, all on the sky", () => {
    expect(stars.count).toBeGreaterThan(40_000);
    expect(stars.magnitude[0]).toBeCloseTo(-1.44, 1);
    for (let i = 1; i < stars.count; i++) {
      expect((stars.magnitude[i] ?? 0) >= (stars.magnitude[i - 1] ?? 0)).toBe(true);
      expect((stars.raDeg[i] ?? -1) >= 0 && (stars.raDeg[i] ?? 400) < 360).toBe(true);
      expect(Math.abs(stars.decDeg[i] ?? 99) <= 90).toBe(true);
    }
    expect(stars.magnitude[stars.count - 1]).toBeLessThanOrEqual(8);
  });

  // Colours: a hot, a white and a red star; B−V of the Hipparcos catalogue, from memory.
  it.each([
    ["Rigel", 78.634, -8.202, -0.03],
    ["Vega", 279.235, 38.784, 0],
    ["Betelgeuse", 88.793, 7.407, 1.5],
    ["Antares", 247.352, -26.432, 1.87],
  ])("gives %s its colour", (_name, raDeg, decDeg, colour) => {
    expect(stars.colourIndex[nearest(raDeg, decDeg)]).toBeCloseTo(colour, 1);
  });

  it("shows the stars of the Hipparcos table at their places", () => {
    for (const [name, ra, dec, , , magnitude] of referenceRows("hipparcos/bright-stars.txt")) {
      const i = nearest(Number(ra), Number(dec));
      expect(i, name).toBeGreaterThanOrEqual(0);
      expect(Math.abs((stars.magnitude[i] ?? 9) - Number(magnitude)), name).toBeLessThan(0.3);
    }
  });
});
