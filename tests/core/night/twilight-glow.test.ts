import { describe, expect, it } from "vitest";
import { magArcsec2 } from "../../../core/night/sky-brightness.ts";
import { twilightNanolamberts } from "../../../core/night/twilight-glow.ts";

describe("twilightNanolamberts", () => {
  // F. Patat et al. 2006, A&A 455, 385 (from memory), V at the zenith: 11.84 + 1.518 φ − 0.057 φ², worked by hand.
  it.each([
    [-5, 11.84],
    [-10, 18.005],
    [-15, 21.32],
    [-17.999999, 21.941],
  ])("with the Sun at %d° is %d mag/arcsec²", (sunAltitudeDeg, expected) => {
    expect(magArcsec2(twilightNanolamberts(sunAltitudeDeg))).toBeCloseTo(expected, 3);
  });

  it("adds nothing once the Sun is at −18°", () => {
    expect(twilightNanolamberts(-18)).toBe(0);
    expect(twilightNanolamberts(-40)).toBe(0);
  });

  it("only grows as the Sun rises, and stays finite by day", () => {
    const rising = [-17, -14, -11, -8, -5, -2, 0].map(twilightNanolamberts);
    expect(rising).toEqual([...rising].sort((one, other) => one - other));
    expect(twilightNanolamberts(50)).toBe(twilightNanolamberts(0));
  });
});
