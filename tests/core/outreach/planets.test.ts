/** A planet through a night: only where and when it can be looked at, and how it looks. */
import earthData from "astronomia/data/vsop87Bearth";
import saturnData from "astronomia/data/vsop87Bsaturn";
import { Planet } from "astronomia/planetposition";
import { ring } from "astronomia/saturnring";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareSite } from "../../../commands/read/site.ts";
import { PLANET_RULES } from "../../../config/outreach.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { PLANETS, planetLook, planetNight } from "../../../core/outreach/planets.ts";
import { sunAltitudeDeg } from "../../../core/sky/bodies.ts";
import { targetTrack } from "../../../core/targets/placer.ts";
import { ephemerisDay, spreadInstants } from "./dynamical-time.ts";

const earth = new Planet(earthData);
const saturn = new Planet(saturnData);
const siteAt = (latitudeDeg: number, longitudeDeg: number) =>
  bareSite({ name: "here", latitudeDeg, longitudeDeg, elevationMetres: 0, timeZone: "UTC" });
const ARCSEC_PER_RAD = (180 / Math.PI) * 3600;

describe("planetNight", () => {
  it("never looks below the least altitude, with the Sun less than 4° down, or within 10° of it", () => {
    const night = fc.record({
      latitude: fc.double({ min: -65, max: 65, noNaN: true }),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }),
      day: fc.integer({ min: 0, max: 3000 }),
      planet: fc.constantFrom(...PLANETS),
    });
    fc.assert(
      fc.property(night, ({ latitude, longitude, day, planet }) => {
        const site = siteAt(latitude, longitude);
        const date = new Date(Date.UTC(2024, 0, 1) + day * 864e5).toISOString().slice(0, 10);
        const times = nightTimes(site, nightOn(date, "UTC"));
        const found = planetNight(site, times, planet, PLANET_RULES);
        const track = targetTrack(site, { kind: "body", body: planet }, times.night.noon);
        for (const { start, end } of found.windows) {
          for (const at of [start, new Date((+start + +end) / 2), end]) {
            expect(track(at.getTime()).altitudeDeg).toBeGreaterThan(4.99);
            expect(sunAltitudeDeg(site, at)).toBeLessThan(-3.99);
          }
        }
        if (found.windows.length > 0) expect(found.look.elongationDeg).toBeGreaterThan(9.5);
      }),
      { numRuns: 60 },
    );
  });
});

describe("planetLook", () => {
  it("measures Saturn's ring as astronomia does (Meeus 45): B to 0.03°, the long axis to 1 %", () => {
    for (const at of spreadInstants(12)) {
      const [tilt, sunTilt, , , major] = ring(ephemerisDay(at), earth, saturn);
      const look = planetLook(siteAt(0, 0), "Saturn", at);
      expect(Math.abs((look.ring?.tiltDeg ?? 0) - (tilt * 180) / Math.PI)).toBeLessThan(0.03);
      expect(Math.abs((look.ring?.sunTiltDeg ?? 0) - (sunTilt * 180) / Math.PI)).toBeLessThan(0.03);
      // Meeus takes 375.35″ at 1 AU for it, a little less than the A ring's edge.
      expect((look.ring?.majorArcsec ?? 0) / (major * ARCSEC_PER_RAD)).toBeCloseTo(1, 1);
      expect(Math.abs((look.ring?.majorArcsec ?? 0) / (major * ARCSEC_PER_RAD) - 1)).toBeLessThan(0.01);
    }
  });

  it("gives the ring 35.9″ by 10.2″ on 1992 December 16 (Meeus 45.a, from memory)", () => {
    const { ring: seen } = planetLook(siteAt(0, 0), "Saturn", new Date("1992-12-15T23:59:00Z"));
    expect(Math.abs((seen?.majorArcsec ?? 0) - 35.87)).toBeLessThan(0.4);
    expect(Math.abs((seen?.minorArcsec ?? 0) - 10.15)).toBeLessThan(0.15);
  });

  it("places planets in the constellations of the almanacs", () => {
    // Where they stood by any almanac of those days (from memory).
    const inside = (planet: (typeof PLANETS)[number], instant: string) =>
      planetLook(siteAt(0, 0), planet, new Date(instant)).constellation;
    expect(inside("Jupiter", "2026-01-10T00:00Z")).toBe("Gemini");
    expect(inside("Saturn", "2025-09-21T00:00Z")).toBe("Pisces");
    expect(inside("Uranus", "2025-11-21T00:00Z")).toBe("Taurus");
  });
});
