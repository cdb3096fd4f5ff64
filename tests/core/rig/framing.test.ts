import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sharedEllipseArea } from "../../../core/rig/ellipse-in-frame.ts";
import { type Ellipse, ellipseAreaInFrame, type Frame } from "../../../core/rig/frame-area.ts";
import { bestAngleDeg, ellipseOf, fitOf, fittingAngles } from "../../../core/rig/framing.ts";

const angle = fc.double({ min: 0, max: 360, noNaN: true });
const length = fc.double({ min: 0.05, max: 8, noNaN: true });
const anyEllipse: fc.Arbitrary<Ellipse> = fc
  .tuple(length, fc.double({ min: 0.05, max: 1, noNaN: true }), angle)
  .map(([majorDeg, ratio, positionAngleDeg]) => ({
    majorDeg,
    minorDeg: majorDeg * ratio,
    positionAngleDeg,
  }));
const anyFrame: fc.Arbitrary<Frame> = fc.record({
  widthDeg: length,
  heightDeg: length,
  positionAngleDeg: angle,
});

/** Share of an ellipse inside a frame by counting points of a fine grid: an independent way. */
function sampledShare(ellipse: Ellipse, frame: Frame, steps: number): number {
  let inside = 0;
  let all = 0;
  const turn = ((frame.positionAngleDeg - ellipse.positionAngleDeg) * Math.PI) / 180;
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < steps; j++) {
      const along = (2 * (i + 0.5)) / steps - 1;
      const aside = (2 * (j + 0.5)) / steps - 1;
      if (along * along + aside * aside > 1) continue;
      all++;
      const y = (along * ellipse.majorDeg) / 2;
      const x = (aside * ellipse.minorDeg) / 2;
      const up = y * Math.cos(turn) + x * Math.sin(turn);
      const across = x * Math.cos(turn) - y * Math.sin(turn);
      if (Math.abs(up) <= frame.heightDeg / 2 && Math.abs(across) <= frame.widthDeg / 2) inside++;
    }
  }
  return inside / all;
}

describe("ellipseAreaInFrame", () => {
  it("is the whole ellipse in a large frame, and the whole frame in a large ellipse", () => {
    const ellipse = { majorDeg: 2, minorDeg: 1, positionAngleDeg: 30 };
    const large = { widthDeg: 9, heightDeg: 9, positionAngleDeg: 71 };
    expect(ellipseAreaInFrame(ellipse, large)).toBeCloseTo((Math.PI / 4) * 2, 12);
    const small = { widthDeg: 0.2, heightDeg: 0.1, positionAngleDeg: 71 };
    expect(ellipseAreaInFrame(ellipse, small)).toBeCloseTo(0.02, 12);
  });

  it("agrees with counting points to what the grid can tell", () => {
    // 120 × 120 points: the rim's points weigh some 1 % of the whole.
    fc.assert(
      fc.property(anyEllipse, anyFrame, (ellipse, frame) => {
        const whole = (Math.PI / 4) * ellipse.majorDeg * ellipse.minorDeg;
        const share = ellipseAreaInFrame(ellipse, frame) / whole;
        expect(Math.abs(share - sampledShare(ellipse, frame, 120))).toBeLessThan(0.02);
      }),
      { numRuns: 60 },
    );
  });

  it("does not change when the frame is turned by 180°", () => {
    fc.assert(
      fc.property(anyEllipse, anyFrame, (ellipse, frame) => {
        const turned = { ...frame, positionAngleDeg: frame.positionAngleDeg + 180 };
        expect(ellipseAreaInFrame(ellipse, turned)).toBeCloseTo(ellipseAreaInFrame(ellipse, frame), 9);
      }),
    );
  });

  it("agrees with the closed form for a frame turned along the ellipse", () => {
    fc.assert(
      fc.property(
        anyEllipse,
        length,
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (ellipse, width, ratio) => {
          const frame = {
            widthDeg: width,
            heightDeg: width * ratio,
            positionAngleDeg: ellipse.positionAngleDeg + 90,
          };
          expect(ellipseAreaInFrame(ellipse, frame)).toBeCloseTo(
            sharedEllipseArea(ellipse.majorDeg, ellipse.minorDeg, width, width * ratio),
            9,
          );
        },
      ),
    );
  });
});

describe("fitOf", () => {
  const frame = { widthDeg: 3, heightDeg: 2, positionAngleDeg: 0 };

  it("fits up to 3 % of the short side from the edge, and no further", () => {
    // By hand: 2 − 2 · 0.03 · 2 = 1.88° high.
    const high = (minorDeg: number) => ({ majorDeg: 2.5, minorDeg, positionAngleDeg: 90 });
    expect(fitOf(high(1.8799), frame).fits).toBe(true);
    expect(fitOf(high(1.8801), frame).fits).toBe(false);
    expect(fitOf(high(1.8801), frame).objectInField).toBeCloseTo(1, 9);
  });

  it("of an ellipse of 2° × 1° in 3° × 2° fills 26.2 % of the frame", () => {
    // By hand: π/4 · 2 · 1 / 6.
    const fit = fitOf({ majorDeg: 2, minorDeg: 1, positionAngleDeg: 12 }, frame);
    expect(fit.fillFraction).toBeCloseTo(0.2618, 4);
    expect(fit.objectInField).toBe(1);
  });
});

describe("bestAngleDeg", () => {
  it("lays the long side along the object", () => {
    const ellipse = { majorDeg: 2.8, minorDeg: 1, positionAngleDeg: 35 };
    expect(bestAngleDeg(ellipse, { widthDeg: 3, heightDeg: 2 })).toBe(125);
    expect(bestAngleDeg(ellipse, { widthDeg: 2, heightDeg: 3 })).toBe(35);
  });

  it("leans a long object along the diagonal when it fits no other way", () => {
    const ellipse = { majorDeg: 2.3, minorDeg: 0.1, positionAngleDeg: 0 };
    const square = { widthDeg: 2, heightDeg: 2 };
    expect(bestAngleDeg(ellipse, square) % 90).toBe(45);
  });

  it("keeps north up for a round object and for a point", () => {
    expect(
      bestAngleDeg({ majorDeg: 1, minorDeg: 1, positionAngleDeg: 35 }, { widthDeg: 3, heightDeg: 2 }),
    ).toBe(0);
    expect(bestAngleDeg(null, { widthDeg: 3, heightDeg: 2 })).toBe(0);
  });

  it("fits whenever any angle does", () => {
    fc.assert(
      fc.property(anyEllipse, length, length, (ellipse, widthDeg, heightDeg) => {
        const size = { widthDeg, heightDeg };
        if (fittingAngles(ellipse, size).length === 0 || ellipse.minorDeg / ellipse.majorDeg > 0.9) return;
        const positionAngleDeg = bestAngleDeg(ellipse, size);
        expect(fitOf(ellipse, { ...size, positionAngleDeg }).fits).toBe(true);
      }),
    );
  });
});

describe("fittingAngles", () => {
  it("are all for a small object and none for a large one", () => {
    const frame = { widthDeg: 3, heightDeg: 2 };
    expect(fittingAngles({ majorDeg: 1, minorDeg: 0.5, positionAngleDeg: 0 }, frame)).toEqual([
      { fromDeg: 0, toDeg: 180 },
    ]);
    expect(fittingAngles({ majorDeg: 5, minorDeg: 0.5, positionAngleDeg: 0 }, frame)).toEqual([]);
  });

  it("are one span around the best angle, across north too", () => {
    // 2.7° long, hardly wide, in 3° × 2°: it leaves the height of 2° once it leans too far.
    const frame = { widthDeg: 3, heightDeg: 2 };
    const [span, ...others] = fittingAngles({ majorDeg: 2.7, minorDeg: 0.2, positionAngleDeg: 90 }, frame);
    expect(others).toEqual([]);
    expect(span?.fromDeg).toBeGreaterThan(90);
    // The span is symmetrical about north up, which is 180 here.
    expect((span?.fromDeg ?? 0) + (span?.toDeg ?? 0)).toBe(360);
  });
});

describe("ellipseOf", () => {
  it("knows no ellipse of an object of unknown size", () => {
    expect(ellipseOf({ majorArcmin: null, minorArcmin: null, positionAngleDeg: null })).toBeNull();
  });

  it("takes an object with one axis for round", () => {
    const ellipse = ellipseOf({ majorArcmin: 60, minorArcmin: null, positionAngleDeg: null });
    expect(ellipse?.majorDeg).toBe(ellipse?.minorDeg);
    expect(ellipse?.majorDeg).toBeCloseTo(1, 3);
  });
});
