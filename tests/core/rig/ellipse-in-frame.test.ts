import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fieldFit, sharedEllipseArea } from "../../../core/rig/ellipse-in-frame.ts";

const side = fc.double({ min: 0.05, max: 20, noNaN: true });

/** The same area by laying a fine grid over the frame: independent of any formula. */
function gridArea(majorDeg: number, minorDeg: number, widthDeg: number, heightDeg: number): number {
  const cells = 1000;
  let inside = 0;
  for (let row = 0; row < cells; row++) {
    for (let column = 0; column < cells; column++) {
      const x = ((column + 0.5) / cells - 0.5) * widthDeg;
      const y = ((row + 0.5) / cells - 0.5) * heightDeg;
      if ((2 * x) ** 2 / majorDeg ** 2 + (2 * y) ** 2 / minorDeg ** 2 <= 1) inside++;
    }
  }
  return (inside / cells ** 2) * widthDeg * heightDeg;
}

describe("sharedEllipseArea", () => {
  it.each([
    [3, 1, 2, 1.5],
    [1, 1, 2, 2],
    [5, 4, 2, 1.5],
    [2, 1.8, 2.5, 1],
  ])(
    "agrees with a counted grid for an ellipse %s × %s in a frame %s × %s",
    (major, minor, width, height) => {
      const counted = gridArea(major, minor, width, height);
      expect(sharedEllipseArea(major, minor, width, height) / counted).toBeCloseTo(1, 3);
    },
  );

  it("never passes the ellipse or the frame", () => {
    fc.assert(
      fc.property(side, side, side, side, (major, minor, width, height) => {
        const area = sharedEllipseArea(major, minor, width, height);
        expect(area).toBeGreaterThan(0);
        expect(area).toBeLessThanOrEqual(width * height * (1 + 1e-12));
        expect(area).toBeLessThanOrEqual((Math.PI / 4) * major * minor * (1 + 1e-12));
      }),
    );
  });
});

describe("fieldFit", () => {
  it("holds all of a small object and fills little", () => {
    const fit = fieldFit(0.1, 0.1, 2, 1);
    expect(fit.objectInField).toBeCloseTo(1, 12);
    expect(fit.fillFraction).toBeCloseTo((Math.PI / 4) * 0.005, 12);
  });

  it("is filled by an object far larger than the frame", () => {
    expect(fieldFit(60, 50, 2, 1).fillFraction).toBeCloseTo(1, 9);
  });
});
