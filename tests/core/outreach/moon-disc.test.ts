/** The Moon's disc from a site: phase, age, and which way its light and its axis lean. */
import { describe, expect, it } from "vitest";
import { moonDisc } from "../../../core/outreach/moon-disc.ts";
import { halfTurnDeg } from "../../../core/sky/angles.ts";
import { referenceRows } from "../../reference/reference-rows.ts";
import { fromDynamical } from "./dynamical-time.ts";

const FELL = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 250 };

describe("moonDisc", () => {
  it("leans its bright limb and celestial north as Swiss Ephemeris's altitudes say, at 50° north, the equator and 35° south", () => {
    const rows = referenceRows("swiss-ephemeris/limb-angles.txt");
    expect(rows.length).toBeGreaterThan(40);
    for (const [, latitude, longitude, metres, instant, altitude, , limb, north] of rows) {
      const site = {
        latitudeDeg: Number(latitude),
        longitudeDeg: Number(longitude),
        elevationMetres: Number(metres),
      };
      const disc = moonDisc(site, new Date(instant ?? ""));
      expect(Math.abs(disc.altitudeDeg - Number(altitude))).toBeLessThan(0.001);
      // 2″ of either body sway the limb by 0.1° a day from new or full.
      const leaning = disc.brightLimbDeg - disc.parallacticDeg;
      expect(Math.abs(halfTurnDeg(leaning - Number(limb)))).toBeLessThan(0.1);
      expect(Math.abs(halfTurnDeg(-disc.parallacticDeg - Number(north)))).toBeLessThan(0.01);
    }
  });

  it("lights 0.6786 of the disc at a phase angle of 69.076° in Meeus's example 48.a, seen from the Earth's centre", () => {
    // From the ground the phase angle differs by under a degree.
    const disc = moonDisc(FELL, fromDynamical("1992-04-12T00:00:00Z", 58.184));
    expect(Math.abs(disc.illuminatedFraction - 0.6786)).toBeLessThan(0.01);
    expect(Math.abs(disc.phaseAngleDeg - 69.076)).toBeLessThan(1);
    expect(disc.waxing).toBe(true);
  });

  it("counts its age from the new Moon of Swiss Ephemeris's table", () => {
    const news = referenceRows("swiss-ephemeris/moon-phases.txt")
      .filter(([name]) => name === "new")
      .map(([, instant]) => Date.parse(instant ?? ""));
    for (const last of news.slice(0, 40)) {
      for (const days of [0.01, 7.3, 21, 29]) {
        const disc = moonDisc(FELL, new Date(last + days * 86_400_000));
        expect(Math.abs(disc.ageDays - days)).toBeLessThan(0.001);
      }
    }
  });

  it("stands at colongitude near 0°, 90°, 180° and 270° at first quarter, full, last quarter and new", () => {
    const expected = { "first-quarter": 0, full: 90, "last-quarter": 180, new: 270 } as const;
    for (const [name, instant] of referenceRows("swiss-ephemeris/moon-phases.txt").slice(0, 60)) {
      const disc = moonDisc(FELL, new Date(instant ?? ""));
      // By the libration in longitude, up to 8°.
      const from = expected[name as keyof typeof expected];
      expect(Math.abs(halfTurnDeg(disc.colongitudeDeg - from))).toBeLessThan(8.5);
    }
  });
});
