/** Solar eclipses: on the Earth against published ones, at sites against Swiss Ephemeris. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coveredShare, solarEclipseAt, solarEclipsesIn } from "../../../core/outreach/solar-eclipse.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const MINUTE_MS = 60_000;
const FELL = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 250 };

describe("solarEclipsesIn", () => {
  it.each([
    // NASA's catalogue of solar eclipses (from memory).
    ["2026-08-12T17:46Z", "total"],
    ["2027-08-02T10:07Z", "total"],
    ["2026-02-17T12:12Z", "annular"],
    ["2025-03-29T10:47Z", "partial"],
    ["2025-09-21T19:42Z", "partial"],
    ["2024-04-08T18:17Z", "total"],
  ])("has the eclipse of %s, %s, to a minute and a half", (instant, kind) => {
    const greatest = Date.parse(instant);
    const [found] = solarEclipsesIn(new Date(greatest - 864e5), new Date(greatest + 864e5));
    expect(found?.kind).toBe(kind);
    expect(Math.abs((found?.greatest.getTime() ?? 0) - greatest)).toBeLessThan(1.5 * MINUTE_MS);
  });

  it("has four eclipses in 2029, all partial, and none twice", () => {
    // NASA's catalogue (from memory): 14 January, 12 June, 11 July, 5 December.
    const found = solarEclipsesIn(new Date("2029-01-01T00:00Z"), new Date("2030-01-01T00:00Z"));
    expect(found.map(({ greatest }) => greatest.toISOString().slice(0, 10))).toEqual([
      "2029-01-14",
      "2029-06-12",
      "2029-07-11",
      "2029-12-05",
    ]);
    expect(found.every(({ kind }) => kind === "partial")).toBe(true);
  });
});

describe("solarEclipseAt", () => {
  const rows = referenceRows("swiss-ephemeris/solar-eclipses.txt");
  // Two good ephemerides 2″ apart disagree by minutes on when a mere graze begins.
  const deep = rows.filter((row) => Number(row[10]) > 0.05);
  const answer = (row: readonly string[]) => {
    const [, latitude, longitude, metres, , , , greatest] = row;
    const site = {
      latitudeDeg: Number(latitude),
      longitudeDeg: Number(longitude),
      elevationMetres: Number(metres),
    };
    const middle = Date.parse(greatest ?? "");
    const [eclipse] = solarEclipsesIn(new Date(middle - 5 * 36e5), new Date(middle + 5 * 36e5));
    if (eclipse === undefined) throw new Error(`no eclipse near ${greatest}`);
    return solarEclipseAt(site, eclipse.greatest);
  };

  it("gives Swiss Ephemeris's contacts to 15 s, its kind, magnitude and obscuration at 21 places over 18 years", () => {
    expect(deep.length).toBeGreaterThan(120);
    for (const row of deep) {
      const found = answer(row);
      if (found === null) throw new Error(`the Moon misses the Sun: ${row.join(" ")}`);
      const [kind, first, second, greatest, third, fourth] = row.slice(4);
      expect(found.kind).toBe(kind);
      const moments = [
        [found.begins, first],
        [found.centralBegins, second],
        [found.greatest, greatest],
        [found.centralEnds, third],
        [found.ends, fourth],
      ] as const;
      for (const [moment, expected] of moments) {
        if (expected === "-" || expected === undefined) expect(moment).toBeNull();
        else expect(Math.abs((moment?.at.getTime() ?? 0) - Date.parse(expected))).toBeLessThan(15_000);
      }
      expect(Math.abs(found.magnitude - Number(row[10]))).toBeLessThan(0.003);
      // Of a total one that table gives the discs' areas, over 1.
      expect(Math.abs(found.obscuration - Math.min(1, Number(row[11])))).toBeLessThan(0.003);
      expect(Math.abs(found.greatest.sunAltitudeDeg - Number(row[12]))).toBeLessThan(0.05);
    }
  });

  it("puts Burgos in Castile in the path of 12 August 2026, for 1 min 44 s", () => {
    // The same table's second and third contacts there are 103.7 s apart.
    const found = solarEclipseAt(
      { latitudeDeg: 42.34, longitudeDeg: -3.7, elevationMetres: 860 },
      new Date("2026-08-12T17:46:00Z"),
    );
    expect(found?.kind).toBe("total");
    const seconds =
      ((found?.centralEnds?.at.getTime() ?? 0) - (found?.centralBegins?.at.getTime() ?? 0)) / 1000;
    expect(Math.abs(seconds - 103.7)).toBeLessThan(5);
  });

  it("covers about nine tenths of the Sun over the fells on 12 August 2026, whose greatest comes about 18:08 UT", () => {
    // Published maps give northern England 90–93 % (from memory).
    const found = solarEclipseAt(FELL, new Date("2026-08-12T17:46:00Z"));
    expect(found?.kind).toBe("partial");
    expect(found?.obscuration).toBeGreaterThan(0.88);
    expect(found?.obscuration).toBeLessThan(0.95);
  });

  it("is null where the Moon misses the Sun", () => {
    expect(solarEclipseAt({ ...FELL, latitudeDeg: -54 }, new Date("2026-08-12T17:46:00Z"))).toBeNull();
  });

  it("comes in order and hides no more than it must, wherever one stands", () => {
    const [eclipse] = solarEclipsesIn(new Date("2027-08-01T00:00Z"), new Date("2027-08-03T00:00Z"));
    if (eclipse === undefined) throw new Error("the eclipse is missing");
    const place = fc.record({
      latitudeDeg: fc.double({ min: -20, max: 65, noNaN: true }),
      longitudeDeg: fc.double({ min: -30, max: 90, noNaN: true }),
      elevationMetres: fc.constant(0),
    });
    fc.assert(
      fc.property(place, (site) => {
        const found = solarEclipseAt(site, eclipse.greatest);
        if (found === null) return;
        expect(found.begins.at < found.greatest.at && found.greatest.at < found.ends.at).toBe(true);
        expect(found.obscuration).toBeGreaterThanOrEqual(0);
        expect(found.obscuration).toBeLessThanOrEqual(1);
        if (found.kind === "total") expect(found.obscuration).toBe(1);
        if (found.kind === "partial") expect(found.magnitude).toBeLessThan(1);
      }),
      { numRuns: 40 },
    );
  });
});

describe("coveredShare", () => {
  it("is none beside, all under, the area's ratio inside, and 0.391 for equal discs a radius apart", () => {
    expect(coveredShare(1, 1, 2)).toBe(0);
    expect(coveredShare(1, 1.1, 0.05)).toBe(1);
    expect(coveredShare(1, 0.9, 0.05)).toBeCloseTo(0.81, 9);
    // The lens of two unit circles a radius apart: (2π/3 − √3/2)/π.
    expect(coveredShare(1, 1, 1)).toBeCloseTo((2 * Math.PI) / 3 / Math.PI - Math.sqrt(3) / 2 / Math.PI, 9);
  });
});
