import { describe, expect, it } from "vitest";
import { glowGradient, skyGlowNanolamberts } from "../../../core/night/sky-glow.ts";

const asked = {
  zenithNanolamberts: 100,
  altitudeDeg: 30,
  azimuthDeg: 180,
  extinctionV: 0.172,
  brightDirections: [],
  spreadDeg: 30,
};

describe("glowGradient", () => {
  // K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033, equation 2, worked: 60° from the zenith, k = 0.172.
  it("is 1.641 at 60° from the zenith", () => {
    expect(glowGradient(60, 0.172)).toBeCloseTo(1.641, 3);
  });

  it("is 1 overhead", () => {
    expect(glowGradient(0, 0.172)).toBe(1);
  });
});

describe("skyGlowNanolamberts", () => {
  it("is the gradient's alone without bright directions", () => {
    expect(skyGlowNanolamberts(asked)).toBeCloseTo(164.1, 1);
  });

  it("is as many magnitudes brighter as stated, in that direction at 30° altitude", () => {
    const towards = skyGlowNanolamberts({
      ...asked,
      brightDirections: [{ azimuthDeg: 180, brighterMag: 1.5 }],
    });
    expect(2.5 * Math.log10(towards / skyGlowNanolamberts(asked))).toBeCloseTo(1.5, 9);
  });

  it("leaves the zenith alone, and nearly the opposite side", () => {
    const dome = { ...asked, brightDirections: [{ azimuthDeg: 350, brighterMag: 1.5 }] };
    expect(skyGlowNanolamberts({ ...dome, altitudeDeg: 90 })).toBeCloseTo(100, 9);
    const opposite = skyGlowNanolamberts({ ...dome, azimuthDeg: 170 });
    expect(opposite / skyGlowNanolamberts(asked)).toBeLessThan(1.001);
  });

  it("reaches across north", () => {
    const dome = { ...asked, brightDirections: [{ azimuthDeg: 350, brighterMag: 1 }] };
    expect(skyGlowNanolamberts({ ...dome, azimuthDeg: 10 })).toBeCloseTo(
      skyGlowNanolamberts({ ...dome, azimuthDeg: 330 }),
      9,
    );
  });
});
