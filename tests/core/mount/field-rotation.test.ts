import { parallacticAngle } from "astronomia/parallactic";
import { describe, expect, it } from "vitest";
import { fieldTurnRate, longestUnturnedSeconds } from "../../../core/mount/field-rotation.ts";

const RADIANS = Math.PI / 180;

/** Altitude and azimuth (from north) by the textbook triangle. */
function horizontal(latitudeDeg: number, decDeg: number, hourAngleDeg: number) {
  const [phi, dec, hour] = [latitudeDeg * RADIANS, decDeg * RADIANS, hourAngleDeg * RADIANS];
  const up = Math.sin(phi) * Math.sin(dec) + Math.cos(phi) * Math.cos(dec) * Math.cos(hour);
  const east = -Math.cos(dec) * Math.sin(hour);
  const north = Math.cos(phi) * Math.sin(dec) - Math.sin(phi) * Math.cos(dec) * Math.cos(hour);
  return { altitudeDeg: Math.asin(up) / RADIANS, azimuthDeg: Math.atan2(east, north) / RADIANS };
}

describe("fieldTurnRate", () => {
  it.each([
    [54.5, 20, -30],
    [54.5, 20, 0],
    [54.5, 38, 50],
    [-33.9, -60, 15],
    [10, -5, 70],
  ])(
    "is the rate of the parallactic angle at %s° north, declination %s°, hour angle %s°",
    (lat, dec, hour) => {
      // astronomia's parallacticAngle (Meeus 14.1), two seconds apart.
      const turn = (360 / 86_164.0905) * RADIANS;
      const angle = (h: number) => parallacticAngle(lat * RADIANS, dec * RADIANS, h);
      const expected = ((angle(hour * RADIANS + turn) - angle(hour * RADIANS - turn)) / 2 / RADIANS) * 3600;
      const { altitudeDeg, azimuthDeg } = horizontal(lat, dec, hour);
      expect(fieldTurnRate(lat, altitudeDeg, azimuthDeg)).toBeCloseTo(expected, 4);
    },
  );

  it("is nothing due east and west, and on the Earth's poles as fast as the sky", () => {
    expect(fieldTurnRate(45, 30, 90)).toBeCloseTo(0, 10);
    expect(fieldTurnRate(0, 0, 0)).toBeCloseTo(-15.041, 3);
  });
});

describe("longestUnturnedSeconds", () => {
  it("lets 15″ a second turn a corner 3000 pixels out by a pixel in 4.6 s", () => {
    // 15″ is 7.2722e-5 radian: 0.21817 pixel a second at 3000 pixels.
    expect(longestUnturnedSeconds(15, 3000, 1)).toBeCloseTo(1 / 0.21817, 3);
    expect(longestUnturnedSeconds(-15, 3000, 1)).toBeCloseTo(1 / 0.21817, 3);
  });
});
