import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Ellipse, Frame } from "../../../core/rig/frame-area.ts";
import {
  fixedCameraGap,
  leastGrid,
  leastPanelAngle,
  mosaicPanels,
  type Panel,
} from "../../../core/rig/mosaic.ts";
import { fromPlane, toPlane } from "../../../core/rig/tangent-plane.ts";
import { halfTurnDeg } from "../../../core/sky/angles.ts";
import { separationDeg } from "../../../core/sky/place.ts";

const DEG = Math.PI / 180;

/** Where mosaics go wrong: the equator across 0h, high north, beside the pole, the far south. */
const TARGETS = [
  { raDeg: 0.3, decDeg: 0 },
  { raDeg: 38.2, decDeg: 61 },
  { raDeg: 359.8, decDeg: 85 },
  { raDeg: 120, decDeg: 89.9 },
  { raDeg: 84.7, decDeg: -69 },
];

/** Whether a panel's own camera, pointed and turned as told, sees a place. */
function sees(panel: Panel, frame: Frame, place: { raDeg: number; decDeg: number }): boolean {
  const seen = toPlane(panel, place);
  if (seen === null) return false;
  const angle = panel.positionAngleDeg * DEG;
  const up = seen.xiDeg * Math.sin(angle) + seen.etaDeg * Math.cos(angle);
  const across = seen.xiDeg * Math.cos(angle) - seen.etaDeg * Math.sin(angle);
  // A hair's breadth of rounding at the very edge.
  return Math.abs(up) <= frame.heightDeg / 2 + 1e-9 && Math.abs(across) <= frame.widthDeg / 2 + 1e-9;
}

/** Places all over an ellipse, its rim included. */
function placesOf(target: { raDeg: number; decDeg: number }, ellipse: Ellipse) {
  const places = [];
  for (let ring = 0; ring <= 10; ring++) {
    for (let step = 0; step < 36; step++) {
      const along = ((ring / 10) * ellipse.majorDeg * Math.cos(step * 10 * DEG)) / 2;
      const aside = ((ring / 10) * ellipse.minorDeg * Math.sin(step * 10 * DEG)) / 2;
      const angle = ellipse.positionAngleDeg * DEG;
      places.push(
        fromPlane(target, {
          xiDeg: along * Math.sin(angle) + aside * Math.cos(angle),
          etaDeg: along * Math.cos(angle) - aside * Math.sin(angle),
        }),
      );
    }
  }
  return places;
}

describe("mosaicPanels", () => {
  const frame = { widthDeg: 1.5, heightDeg: 1, positionAngleDeg: 20 };

  it("is one panel at the target itself for a grid of one", () => {
    const [panel, ...others] = mosaicPanels({ raDeg: 10, decDeg: 20 }, frame, { columns: 1, rows: 1 }, 0.15);
    expect(others).toEqual([]);
    expect(panel?.raDeg).toBeCloseTo(10, 9);
    expect(panel?.decDeg).toBeCloseTo(20, 9);
    expect(panel?.positionAngleDeg).toBeCloseTo(20, 9);
  });

  it("runs columns towards east and rows towards north at angle 0", () => {
    const level = { ...frame, positionAngleDeg: 0 };
    const panels = mosaicPanels({ raDeg: 10, decDeg: 0 }, level, { columns: 2, rows: 2 }, 0.1);
    const at = (column: number, row: number) =>
      panels.find((panel) => panel.column === column && panel.row === row);
    expect(at(2, 1)?.raDeg).toBeGreaterThan(at(1, 1)?.raDeg ?? 999);
    expect(at(1, 2)?.decDeg).toBeGreaterThan(at(1, 1)?.decDeg ?? 999);
    // By hand: 0.9 · 1.5° between columns on the plane.
    expect((at(2, 1)?.plane.xiDeg ?? 0) - (at(1, 1)?.plane.xiDeg ?? 0)).toBeCloseTo(1.35, 9);
  });

  it("shoots each panel once, every step to a neighbour", () => {
    const panels = mosaicPanels({ raDeg: 10, decDeg: 0 }, frame, { columns: 3, rows: 4 }, 0.1);
    expect(panels.map((panel) => panel.order)).toEqual(Array.from({ length: 12 }, (_, index) => index + 1));
    for (const [index, panel] of panels.entries()) {
      const before = panels[index - 1];
      if (before === undefined) continue;
      expect(Math.abs(panel.row - before.row) + Math.abs(panel.column - before.column)).toBe(1);
    }
  });

  it.each(TARGETS)(
    "covers an object whole at $raDeg, $decDeg, seen through each panel's own camera",
    (target) => {
      fc.assert(
        fc.property(
          fc.double({ min: 0.2, max: 7, noNaN: true }),
          fc.double({ min: 0.1, max: 1, noNaN: true }),
          fc.double({ min: 0, max: 180, noNaN: true }),
          fc.double({ min: 0, max: 180, noNaN: true }),
          // Edge to edge, two planes that touch the sphere apart leave a hair between them.
          fc.double({ min: 0.02, max: 0.5, noNaN: true }),
          (majorDeg, ratio, objectAngle, cameraAngle, overlap) => {
            const ellipse = { majorDeg, minorDeg: majorDeg * ratio, positionAngleDeg: objectAngle };
            const turned = { ...frame, positionAngleDeg: cameraAngle };
            const panels = mosaicPanels(target, turned, leastGrid(ellipse, turned, overlap), overlap);
            const missed = placesOf(target, ellipse).filter(
              (place) => !panels.some((panel) => sees(panel, turned, place)),
            );
            expect(missed).toHaveLength(0);
          },
        ),
        { numRuns: 25 },
      );
    },
  );

  it.each(TARGETS)("keeps panels parallel and as far apart as told at $raDeg, $decDeg", (target) => {
    const panels = mosaicPanels(target, frame, { columns: 3, rows: 1 }, 0.2);
    const [first, middle, last] = panels;
    if (first === undefined || middle === undefined || last === undefined) throw new Error("panels");
    // On the plane 0.8 · 1.5°; on the sphere its arc tangent, from the contact.
    const expected = Math.atan(0.8 * 1.5 * DEG) / DEG;
    expect(separationDeg(first, middle)).toBeCloseTo(expected, 9);
    expect(separationDeg(middle, last)).toBeCloseTo(expected, 9);
    // A step up in the first panel's own frame stays a step up on the common plane.
    const angle = first.positionAngleDeg * DEG;
    const above = fromPlane(first, { xiDeg: 0.01 * Math.sin(angle), etaDeg: 0.01 * Math.cos(angle) });
    const on = toPlane(target, above);
    if (on === null) throw new Error("off the plane");
    const seen = Math.atan2(on.xiDeg - first.plane.xiDeg, on.etaDeg - first.plane.etaDeg) / DEG;
    expect(halfTurnDeg(seen - frame.positionAngleDeg)).toBeCloseTo(0, 3);
  });
});

describe("leastGrid", () => {
  const frame = { widthDeg: 2, heightDeg: 1, positionAngleDeg: 0 };

  it("is one panel for what fits, and one column more for what just does not", () => {
    const wide = (majorDeg: number) => ({ majorDeg, minorDeg: 0.5, positionAngleDeg: 90 });
    expect(leastGrid(wide(1.93), frame, 0.2)).toEqual({ columns: 1, rows: 1 });
    expect(leastGrid(wide(1.95), frame, 0.2)).toEqual({ columns: 2, rows: 1 });
  });

  it("needs 3 columns for 4.7° of 2° frames with a fifth of overlap", () => {
    // By hand: 2 + 1.6 + 1.6 = 5.2 ≥ 4.7 + 0.06; 2 + 1.6 = 3.6 < 4.76.
    const ellipse = { majorDeg: 4.7, minorDeg: 0.5, positionAngleDeg: 90 };
    expect(leastGrid(ellipse, frame, 0.2)).toEqual({ columns: 3, rows: 1 });
  });
});

describe("leastPanelAngle", () => {
  it("finds an angle that needs no more panels than the preferred one", () => {
    const ellipse = { majorDeg: 3, minorDeg: 1, positionAngleDeg: 35 };
    const frame = { widthDeg: 1.5, heightDeg: 1 };
    const count = (positionAngleDeg: number) => {
      const grid = leastGrid(ellipse, { ...frame, positionAngleDeg }, 0.15);
      return grid.columns * grid.rows;
    };
    const found = leastPanelAngle(ellipse, frame, 0.15, 125);
    for (let angle = 0; angle < 180; angle++) expect(count(found)).toBeLessThanOrEqual(count(angle));
  });
});

describe("fixedCameraGap", () => {
  // Common practice, by hand: 3° aside at declination 61° turns by 3° · tan 61° = 5.4°.
  it("turns by 5.4° at 3° aside at declination 61°, and opens a gap there", () => {
    const frame = { widthDeg: 3.2, heightDeg: 5, positionAngleDeg: 0 };
    const overlap = 1 - 3 / 3.2;
    const panels = mosaicPanels({ raDeg: 38, decDeg: 61 }, frame, { columns: 3, rows: 1 }, overlap);
    const gap = fixedCameraGap(panels, frame, overlap);
    expect(gap.turnDeg).toBeCloseTo(5.4, 1);
    expect(gap.opens).toBe(true);
  });

  it("stays shut on the equator", () => {
    const frame = { widthDeg: 1.5, heightDeg: 1, positionAngleDeg: 0 };
    const panels = mosaicPanels({ raDeg: 38, decDeg: 0 }, frame, { columns: 3, rows: 2 }, 0.15);
    expect(fixedCameraGap(panels, frame, 0.15).opens).toBe(false);
  });
});
