import { describe, expect, it } from "vitest";
import {
  declinationDriftArcsec,
  fieldTurnArcsec,
  forgivenErrorArcmin,
  turnTrail,
} from "../../../core/mount/polar-error.ts";

describe("declinationDriftArcsec", () => {
  it("drifts 0.2625″ a minute per arcminute, 6.6″ in 300 s at 5′", () => {
    // Hook 1989, J. Brit. Astron. Assoc. 99, 19; figures to their last printed digit.
    expect(declinationDriftArcsec(1, 60)).toBeCloseTo(0.2625, 4);
    expect(declinationDriftArcsec(5, 300)).toBeCloseTo(6.6, 1);
  });

  it("betrays 3.81′ by 1″ in a minute", () => {
    // Common practice: 3.81 (or 3.82) times arcseconds a minute.
    expect(1 / declinationDriftArcsec(1, 60)).toBeCloseTo(3.81, 2);
  });

  it("agrees with the turning sphere itself", () => {
    // An axis e beside the pole: declination about it is asin(cos e sin d + sin e cos d cos h).
    // On the meridian of the largest drift the hour angle about the error runs through 90°.
    const radians = Math.PI / 180;
    for (const [errorArcmin, seconds, decDeg] of [
      [1, 60, 0],
      [5, 300, 20],
      [20, 120, 60],
    ] as const) {
      const error = (errorArcmin / 60) * radians;
      const dec = decDeg * radians;
      const about = (hourAngle: number) =>
        Math.asin(Math.cos(error) * Math.sin(dec) + Math.sin(error) * Math.cos(dec) * Math.cos(hourAngle));
      const half = ((seconds / 86_164.0905) * 2 * Math.PI) / 2;
      const drift = Math.abs(about(Math.PI / 2 + half) - about(Math.PI / 2 - half)) / radians;
      // First order in the error and the time: 1 % at 20′ and 60°.
      expect(declinationDriftArcsec(errorArcmin, seconds) / (drift * 3600)).toBeCloseTo(1, 1);
      expect(Math.abs(declinationDriftArcsec(errorArcmin, seconds) / (drift * 3600) - 1)).toBeLessThan(0.01);
    }
  });
});

describe("fieldTurnArcsec", () => {
  it("grows as the secant of the declination", () => {
    expect(fieldTurnArcsec(5, 300, 0)).toBeCloseTo(declinationDriftArcsec(5, 300), 10);
    expect(fieldTurnArcsec(5, 300, 60)).toBeCloseTo(2 * declinationDriftArcsec(5, 300), 10);
  });

  it("draws a trail in proportion to the distance from the guide star", () => {
    // 60″ of turn is 1/3437.75 of a radian: 3437.75 pixels away it draws one pixel.
    expect(turnTrail(60, 3437.75)).toBeCloseTo(1, 5);
  });
});

describe("forgivenErrorArcmin", () => {
  it.each([
    { trailUm: 10, exposureMinutes: 5, decDeg: 0, focalLengthMm: 800, guideToEdgeDeg: 1 },
    { trailUm: 5, exposureMinutes: 20, decDeg: 38.4, focalLengthMm: 400, guideToEdgeDeg: 2 },
    { trailUm: 25, exposureMinutes: 60, decDeg: 60, focalLengthMm: 135, guideToEdgeDeg: 5 },
  ])("is 45 000 S cos D/(T F A) for $focalLengthMm mm", (limit) => {
    // The constant as Hook 1989 prints it (from memory), rounded: exactly 45 018 for arcminutes.
    const printed =
      (45_000 * limit.trailUm * Math.cos((limit.decDeg * Math.PI) / 180)) /
      (limit.exposureMinutes * limit.focalLengthMm * limit.guideToEdgeDeg);
    expect(Math.abs(forgivenErrorArcmin(limit) / printed - 1)).toBeLessThan(0.001);
  });

  it("forgives just the error whose turn draws that trail", () => {
    const limit = { trailUm: 4, exposureMinutes: 5, decDeg: 30, focalLengthMm: 400, guideToEdgeDeg: 2 };
    const turn = fieldTurnArcsec(forgivenErrorArcmin(limit), 300, 30);
    const distanceUm = 400_000 * 2 * (Math.PI / 180);
    expect(turnTrail(turn, distanceUm)).toBeCloseTo(4, 6);
  });
});
