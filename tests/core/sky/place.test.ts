/** Apparent places beside SOFA and Meeus's worked examples. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeOfVector } from "../../../core/sky/angles.ts";
import { movedPlace, placeOfDate, separationDeg, unitVector } from "../../../core/sky/place.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const ARCSEC = 1 / 3600;

const hours = (h: number, m: number, s: number) => (h + m / 60 + s / 3600) * 15;
const degrees = (d: number, m: number, s: number) => d + m / 60 + s / 3600;

describe("placeOfDate", () => {
  it("agrees with SOFA within 1″", () => {
    // No light bending, no frame bias, five terms of nutation: 0.3″ in all.
    for (const [ra, dec, at, , , , , , , raOfDate, decOfDate] of referenceRows("erfa/fixed-objects.txt")) {
      const ours = placeOfDate(Number(ra), Number(dec), new Date(at ?? ""));
      const off = separationDeg(ours, { raDeg: Number(raOfDate), decDeg: Number(decOfDate) });
      expect(off).toBeLessThan(1 * ARCSEC);
    }
  });

  it("gives θ Persei of 2028 Nov 13.19 within 0.5″ of Meeus, Astronomical Algorithms, example 23.a", () => {
    const motion = { raArcsec: 0.03425 * 15 * Math.cos((49.2285 * Math.PI) / 180), decArcsec: -0.0895 };
    const ours = placeOfDate(
      hours(2, 44, 11.986),
      degrees(49, 13, 42.48),
      new Date("2028-11-13T04:32:27Z"),
      motion,
    );
    // Meeus prints whole hundredths of a second of time and tenths of an arcsecond, and takes
    // the precession and nutation of 1976 and 1980: 0.1″ from today's.
    const printed = { raDeg: hours(2, 46, 14.39), decDeg: degrees(49, 21, 7.5) };
    expect(separationDeg(ours, printed)).toBeLessThan(0.5 * ARCSEC);
  });

  it.each([
    ["2050-01-01T12:00:00Z", hours(3, 48, 16.4), degrees(89, 27, 15.4)],
    ["2100-01-01T12:00:00Z", hours(5, 53, 29.2), degrees(89, 32, 22.2)],
  ])("gives α Ursae Minoris of %s within 30″ of the mean place in Meeus, chapter 21", (at, raDeg, decDeg) => {
    // J2000 place and motion of Meeus's exercise. He gives the mean place: aberration (20″) and
    // nutation (9″) are what differs.
    const motion = { raArcsec: 0.19877 * 15 * Math.cos((89.26411 * Math.PI) / 180), decArcsec: -0.0152 };
    const ours = placeOfDate(hours(2, 31, 48.704), degrees(89, 15, 50.72), new Date(at), motion);
    expect(separationDeg(ours, { raDeg, decDeg })).toBeLessThan(30 * ARCSEC);
  });
});

describe("movedPlace", () => {
  it("moves by the proper motion times the years, in any direction", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.999, noNaN: true }),
        fc.double({ min: -89.9, max: 89.9, noNaN: true }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        (ra, dec, raArcsec, decArcsec) => {
          const moved = movedPlace(ra, dec, new Date("2025-01-01T00:00Z"), { raArcsec, decArcsec });
          const expected = (Math.hypot(raArcsec, decArcsec) * (9131.5 / 365.25)) / 3600;
          expect(separationDeg({ raDeg: ra, decDeg: dec }, moved)).toBeCloseTo(expected, 5);
        },
      ),
    );
  });

  it("leaves a place without proper motion where it is", () => {
    expect(movedPlace(370, 20, new Date("2050-01-01T00:00Z"), null)).toEqual({ raDeg: 10, decDeg: 20 });
  });
});

describe("unitVector", () => {
  it("comes back as the same place", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.999, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        (raDeg, decDeg) => {
          expect(separationDeg(placeOfVector(unitVector(raDeg, decDeg)), { raDeg, decDeg })).toBeLessThan(
            1e-9,
          );
        },
      ),
    );
  });
});

describe("separationDeg", () => {
  it("is Arcturus to Spica 32.7930°, Meeus, example 17.a", () => {
    const arcturus = { raDeg: 213.9154, decDeg: 19.1825 };
    const spica = { raDeg: 201.2983, decDeg: -11.1614 };
    expect(separationDeg(arcturus, spica)).toBeCloseTo(32.793, 4);
  });

  it("measures a thousandth of an arcsecond and a half turn", () => {
    expect(separationDeg({ raDeg: 10, decDeg: 0 }, { raDeg: 10, decDeg: 1e-3 / 3600 })).toBeCloseTo(
      1e-3 / 3600,
      12,
    );
    expect(separationDeg({ raDeg: 10, decDeg: 40 }, { raDeg: 190, decDeg: -40 })).toBeCloseTo(180, 9);
  });
});
