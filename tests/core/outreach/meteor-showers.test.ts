/** Meteor showers: rates by the published formula, and only in the dark with the radiant up. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareSite } from "../../../commands/read/site.ts";
import { METEOR_SHOWERS } from "../../../config/meteor-showers.ts";
import { PHOTOMETRY } from "../../../config/photometry.ts";
import { nightOfInstant } from "../../../core/log/night-of.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { meteorsPerHour, showerNight, showerPeaks } from "../../../core/outreach/meteor-showers.ts";
import { horizontalOf, skyFrame } from "../../../core/sky/frame.ts";
import { observingConditions } from "../../../core/targets/observing-conditions.ts";

describe("meteorsPerHour", () => {
  it("is the zenithal rate itself at the zenith under a sky of 6.5", () => {
    expect(meteorsPerHour(100, 2.2, 90, 6.5)).toBeCloseTo(100, 9);
  });

  it("halves with the radiant at 30°, and falls by r for each magnitude (by hand)", () => {
    expect(meteorsPerHour(150, 2.6, 30, 6.5)).toBeCloseTo(75, 9);
    expect(meteorsPerHour(150, 2.6, 30, 5.5)).toBeCloseTo(75 / 2.6, 9);
    expect(meteorsPerHour(100, 2.2, 45, 5)).toBeCloseTo((100 * Math.SQRT1_2) / 2.2 ** 1.5, 9);
  });

  it("is none with the radiant down", () => {
    expect(meteorsPerHour(150, 2.6, -1, 6.5)).toBe(0);
  });
});

describe("showerNight", () => {
  const all = showerPeaks(METEOR_SHOWERS, new Date("2026-01-01T00:00Z"), new Date("2027-01-01T00:00Z"));
  const conditionsAt = (latitudeDeg: number, longitudeDeg: number, mag = 20.5) =>
    observingConditions({
      site: bareSite({ name: "", latitudeDeg, longitudeDeg, elevationMetres: 0, timeZone: "UTC" }),
      zenithMagArcsec2: mag,
      aerosolExtinction: 0.12,
      photometry: PHOTOMETRY,
      airCelsiusAt: () => 5,
    });
  const nightAt = (code: string, latitude: number, longitude: number, mag?: number) => {
    const peak = all.find(({ shower }) => shower.code === code);
    if (peak === undefined) throw new Error(`no ${code}`);
    const conditions = conditionsAt(latitude, longitude, mag);
    const times = nightTimes(conditions.site, nightOn(nightOfInstant(peak.at, "UTC"), "UTC"));
    return showerNight(peak, times, conditions);
  };

  it("peaks once a year each", () => {
    expect(all).toHaveLength(METEOR_SHOWERS.length);
  });

  it("shows the Geminids high after midnight at 54° north with the radiant near the meridian", () => {
    const night = nightAt("GEM", 54.5, -2.6);
    // Radiant at declination 33° culminates 90 − 54.5 + 33 = 68.5° high, about 2 o'clock there (by hand).
    expect(Math.abs((night?.radiantAltitudeDeg ?? 0) - 68.4)).toBeLessThan(1);
    expect(Math.abs((night?.best.getTime() ?? 0) - Date.parse("2026-12-15T02:05:00Z"))).toBeLessThan(36e5);
    expect(night?.moonAltitudeDeg).toBeLessThan(0);
  });

  it("shows fewer from a town than from the hills", () => {
    expect(nightAt("PER", 54.5, -2.6, 18.5)?.ratePerHour ?? 0).toBeLessThan(
      (nightAt("PER", 54.5, -2.6, 21.5)?.ratePerHour ?? 0) / 2,
    );
  });

  it("shows no Ursids far south and no γ-Normids far north", () => {
    expect(nightAt("URS", -35, 149)).toBeNull();
    expect(nightAt("GNO", 54.5, -2.6)).toBeNull();
  });

  it("stands where the radiant stands by the sky's own frame, in the dark, whatever the site", () => {
    const question = fc.record({
      which: fc.integer({ min: 0, max: all.length - 1 }),
      latitude: fc.double({ min: -60, max: 60, noNaN: true }),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    fc.assert(
      fc.property(question, ({ which, latitude, longitude }) => {
        const peak = all[which];
        if (peak === undefined) return;
        const conditions = conditionsAt(latitude, longitude);
        const times = nightTimes(conditions.site, nightOn(nightOfInstant(peak.at, "UTC"), "UTC"));
        const night = showerNight(peak, times, conditions);
        if (night === null) return;
        const { shower } = peak;
        const frame = skyFrame(conditions.site, night.best);
        const { altitudeDeg } = horizontalOf(frame, shower.raDeg, shower.decDeg);
        // Half a day of the radiant's drift, at most 1.4° a day.
        expect(Math.abs(altitudeDeg - night.radiantAltitudeDeg)).toBeLessThan(0.8);
        expect(times.workingWindows.some(({ start, end }) => night.best >= start && night.best <= end)).toBe(
          true,
        );
        if (night.ratePerHour !== null) {
          expect(night.ratePerHour).toBeLessThanOrEqual((shower.zhr ?? 0) * 1.6);
        }
      }),
      { numRuns: 50 },
    );
  });
});
