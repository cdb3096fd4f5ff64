import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type MoonlightQuestion,
  mieScattering,
  moonlightNanolamberts,
  scattering,
} from "../../../core/night/moonlight.ts";
import { magArcsec2 } from "../../../core/night/sky-brightness.ts";

const asked = (overrides: Partial<MoonlightQuestion>): MoonlightQuestion => ({
  moonAltitudeDeg: 30,
  targetAltitudeDeg: 90,
  separationDeg: 60,
  phaseAngleDeg: 0,
  extinctionV: 0.172,
  extinction: 0.172,
  wavelengthNm: 550,
  litShare: 1,
  ...overrides,
});

describe("moonlightNanolamberts", () => {
  // Documentation of the `specsim` package: 19.855 mag/arcsec² of moonlight alone, 389.5 nL.
  it("gives 19.855 mag/arcsec² in the worked example", () => {
    const brightness = moonlightNanolamberts(
      asked({
        moonAltitudeDeg: 20,
        targetAltitudeDeg: 70,
        separationDeg: 50,
        phaseAngleDeg: 45,
        extinctionV: 0.15,
        extinction: 0.15,
      }),
    );
    expect(brightness).toBeCloseTo(389.5, 1);
    expect(magArcsec2(brightness)).toBeCloseTo(19.855, 3);
  });

  // K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033, their equations worked to five digits.
  it.each([
    [0, 1089.86],
    [60, 246.96],
    [90, 99.17],
    [120, 28.68],
  ])("at phase angle %d° is %d nL", (phaseAngleDeg, expected) => {
    expect(moonlightNanolamberts(asked({ phaseAngleDeg }))).toBeCloseTo(expected, 2);
  });

  it("is none with the Moon on or below the horizon", () => {
    expect(moonlightNanolamberts(asked({ moonAltitudeDeg: 0 }))).toBe(0);
    expect(moonlightNanolamberts(asked({ moonAltitudeDeg: -10 }))).toBe(0);
  });

  it("is a tenth when a tenth of the Moon's light is left in an eclipse", () => {
    const full = moonlightNanolamberts(asked({}));
    expect(moonlightNanolamberts(asked({ litShare: 0.1 }))).toBeCloseTo(full / 10, 9);
  });

  it("is finite and never negative, wherever Moon and target are", () => {
    const angle = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        angle(-90, 90),
        angle(0, 90),
        angle(0, 180),
        angle(0, 180),
        (moon, target, apart, phase) => {
          const brightness = moonlightNanolamberts(
            asked({
              moonAltitudeDeg: moon,
              targetAltitudeDeg: target,
              separationDeg: apart,
              phaseAngleDeg: phase,
            }),
          );
          expect(Number.isFinite(brightness)).toBe(true);
          expect(brightness).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});

describe("mieScattering", () => {
  // Krisciunas & Schaefer 1991, equation 19: 6.2e7 ρ⁻² inside 10°.
  it("follows the inner law at 5°", () => {
    expect(mieScattering(5)).toBeCloseTo(6.2e7 / 25, 6);
  });
});

describe("scattering", () => {
  // The project's own extension: worked by hand from the published V terms with λ⁻⁴ and λ⁻¹·³.
  it.each([
    [656.3, 30, "0.607"],
    [656.3, 60, "0.532"],
    [656.3, 90, "0.503"],
    [500.7, 30, "1.333"],
    [500.7, 60, "1.414"],
    [500.7, 90, "1.446"],
  ])("at %d nm and %d° from the Moon is %s of that in V", (wavelengthNm, separationDeg, expected) => {
    const ratio = scattering(separationDeg, wavelengthNm) / scattering(separationDeg, 550);
    expect(ratio.toFixed(3)).toBe(expected);
  });

  it("is the published sum at 550 nm", () => {
    // f(60°) by hand: 10^5.36 · (1.06 + 0.25) + 10^(6.15 − 1.5).
    expect(scattering(60, 550)).toBeCloseTo(10 ** 5.36 * 1.31 + 10 ** 4.65, 6);
  });
});
