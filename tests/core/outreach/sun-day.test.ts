/** A day of the Sun: up, clear of the skyline, steady; sound at every latitude. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareSite } from "../../../commands/read/site.ts";
import { SUN_DAY } from "../../../config/outreach.ts";
import { localDay, nextSunnyDate, sunDay } from "../../../core/outreach/sun-day.ts";
import { sunDisc } from "../../../core/outreach/sun-disc.ts";
import { sunAltitudeDeg } from "../../../core/sky/bodies.ts";
import { referenceNotes, referenceRows } from "../../reference/reference-rows.ts";

const siteAt = (latitudeDeg: number, longitudeDeg: number, timeZone: string) =>
  bareSite({ name: "here", latitudeDeg, longitudeDeg, elevationMetres: 0, timeZone });
const FELL = siteAt(54.5, -2.6, "Europe/London");

describe("sunDay", () => {
  it("has Swiss Ephemeris's sunset of the evening and sunrise of the morning after, to 2 s", () => {
    const sites = new Map(
      referenceNotes("swiss-ephemeris/nights.txt", "site").map(([name = "", ...place]) => [name, place]),
    );
    let compared = 0;
    for (const [name = "", date = "", noon = "", , ...cells] of referenceRows("swiss-ephemeris/nights.txt")) {
      if (!["fells", "lord-howe", "equator"].includes(name) || !date.startsWith("2026")) continue;
      const [latitude, longitude, , zone = ""] = sites.get(name) ?? [];
      const site = siteAt(Number(latitude), Number(longitude), zone);
      const sunset = cells[0]?.split("/")[0];
      const sunrise = cells[7]?.split("/")[0];
      const secondsAfterNoon = (at: Date | null) => ((at?.getTime() ?? 0) - Date.parse(noon)) / 1000;
      expect(Math.abs(secondsAfterNoon(sunDay(site, date, SUN_DAY).sunset) - Number(sunset))).toBeLessThan(2);
      const next = new Date(Date.parse(`${date}T00:00Z`) + 864e5).toISOString().slice(0, 10);
      expect(Math.abs(secondsAfterNoon(sunDay(site, next, SUN_DAY).sunrise) - Number(sunrise))).toBeLessThan(
        2,
      );
      compared++;
    }
    expect(compared).toBeGreaterThan(15);
  });

  it("lasts 23 and 25 hours where the clocks change", () => {
    const hours = (date: string) => {
      const { start, end } = localDay(date, "Europe/London");
      return (end.getTime() - start.getTime()) / 36e5;
    };
    expect([hours("2026-03-29"), hours("2026-10-25"), hours("2026-06-01")]).toEqual([23, 25, 24]);
  });

  it("is up all day in a polar summer and not at all in a polar winter, and says when it comes back", () => {
    const north = siteAt(70, 23.3, "Europe/Oslo");
    const [whole] = sunDay(north, "2026-06-21", SUN_DAY).up;
    expect(((whole?.end.getTime() ?? 0) - (whole?.start.getTime() ?? 0)) / 36e5).toBe(24);
    expect(sunDay(north, "2026-12-21", SUN_DAY).up).toEqual([]);
    const back = nextSunnyDate(north, "2026-12-21", 200);
    // Along the 70th parallel the polar night ends in the third week of January (common knowledge there).
    expect(back).toMatch(/^2027-01-(1[4-9]|2[0-2])$/);
    expect(nextSunnyDate(north, "2026-12-01", 10)).toBeNull();
  });

  it("keeps every span within the day and over the skyline, steady inside clear inside up", () => {
    const day = fc.record({
      latitude: fc.double({ min: -89, max: 89, noNaN: true }),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }),
      zone: fc.constantFrom("UTC", "Europe/London", "Asia/Kathmandu", "Pacific/Auckland"),
      ahead: fc.integer({ min: 0, max: 2000 }),
      skyline: fc.integer({ min: 0, max: 40 }),
    });
    fc.assert(
      fc.property(day, ({ latitude, longitude, zone, ahead, skyline }) => {
        const site = {
          ...siteAt(latitude, longitude, zone),
          skyline: [{ azimuthDeg: 180, altitudeDeg: skyline }],
        };
        const date = new Date(Date.UTC(2024, 0, 1) + ahead * 864e5).toISOString().slice(0, 10);
        const found = sunDay(site, date, SUN_DAY);
        const holds = (outer: (typeof found.clear)[number], inner: (typeof found.clear)[number]) =>
          inner.start >= outer.start && inner.end <= outer.end;
        for (const span of found.up) expect(holds(found.whole, span)).toBe(true);
        for (const span of found.clear) {
          expect(found.up.some((up) => holds(up, span))).toBe(true);
          const middle = new Date((+span.start + +span.end) / 2);
          expect(sunAltitudeDeg(site, middle)).toBeGreaterThanOrEqual(Math.max(5, skyline) - 0.01);
        }
        if (found.steady !== null) {
          const { steady } = found;
          expect(found.clear.some((clear) => holds(clear, steady))).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe("sunDisc", () => {
  it("is 32.5′ across at the start of January and 31.5′ at the start of July", () => {
    // The Astronomical Almanac's semidiameters, 16′ 16″ and 15′ 44″ (from memory).
    expect(Math.abs(sunDisc(FELL, new Date("2026-01-03T12:00Z")).diameterArcmin - 32.53)).toBeLessThan(0.03);
    expect(Math.abs(sunDisc(FELL, new Date("2026-07-06T12:00Z")).diameterArcmin - 31.46)).toBeLessThan(0.03);
  });

  it("puts the zenith north of the Sun on the meridian, east of it in the west", () => {
    const { transit } = sunDay(FELL, "2026-05-01", SUN_DAY);
    const at = transit?.at ?? new Date(0);
    expect(Math.abs(sunDisc(FELL, at).parallacticDeg)).toBeLessThan(0.1);
    expect(sunDisc(FELL, new Date(at.getTime() + 4 * 36e5)).parallacticDeg).toBeGreaterThan(20);
    expect(sunDisc(FELL, new Date(at.getTime() - 4 * 36e5)).parallacticDeg).toBeLessThan(-20);
  });
});
