/** How Sun, Moon and planets face us and are lit: against Meeus's examples and astronomia. */
import earthData from "astronomia/data/vsop87Bearth";
import saturnData from "astronomia/data/vsop87Bsaturn";
import { physical } from "astronomia/moon";
import { Planet } from "astronomia/planetposition";
import { ring } from "astronomia/saturnring";
import { ephemeris } from "astronomia/solardisk";
import { describe, expect, it } from "vitest";
import { globeSeen } from "../../../core/outreach/globe.ts";
import { DEG_PER_RAD, halfTurnDeg, turnDeg } from "../../../core/sky/angles.ts";
import { bodyPlace } from "../../../core/sky/bodies.ts";
import { localSiderealDeg } from "../../../core/sky/time.ts";
import { ephemerisDay, fromDynamical, spreadInstants } from "./dynamical-time.ts";

const earth = new Planet(earthData);
const saturn = new Planet(saturnData);
/** How far two angles lie apart. */
const off = (a: number, b: number) => Math.abs(halfTurnDeg(a - b));

describe("globeSeen against Meeus, Astronomical Algorithms, 2nd ed. (from memory)", () => {
  it("gives the Sun's P +26.27°, B0 +5.99°, L0 238.63° (example 29.a)", () => {
    const sun = globeSeen("Sun", null, fromDynamical("1992-10-13T00:00:00Z", 59.184));
    expect(off(sun.axisDeg, 26.27)).toBeLessThan(0.01);
    expect(off(sun.centre.latitudeDeg, 5.99)).toBeLessThan(0.006);
    expect(off(sun.centre.longitudeDeg, 238.63)).toBeLessThan(0.01);
  });

  it("gives the Moon's libration −1.23°, +4.20°, axis 15.08° (53.a), bright limb 285.0° (48.a)", () => {
    const moon = globeSeen("Moon", null, fromDynamical("1992-04-12T00:00:00Z", 58.184));
    // The series of the IAU working group and Eckhardt's, which Meeus has, differ by up to 0.03°.
    expect(off(moon.centre.longitudeDeg, -1.23)).toBeLessThan(0.03);
    expect(off(moon.centre.latitudeDeg, 4.2)).toBeLessThan(0.035);
    expect(off(moon.axisDeg, 15.08)).toBeLessThan(0.03);
    expect(off(moon.brightLimbDeg, 285)).toBeLessThan(0.06);
  });

  it("gives the Sun over the Moon at 67.89°, +1.46° (53.a)", () => {
    const moon = globeSeen("Moon", null, fromDynamical("1992-04-12T00:00:00Z", 58.184));
    expect(off(moon.subsolar.longitudeDeg, 67.89)).toBeLessThan(0.03);
    expect(off(moon.subsolar.latitudeDeg, 1.46)).toBeLessThan(0.03);
  });

  it("gives Saturn's ring B +16.44°, P +6.74° (45.a)", () => {
    const ringed = globeSeen("Saturn", null, fromDynamical("1992-12-16T00:00:00Z", 59.184));
    expect(off(ringed.centre.latitudeDeg, 16.44)).toBeLessThan(0.01);
    // The pole of the working group's report and Meeus's plane lie 0.03° apart.
    expect(off(ringed.axisDeg, 6.74)).toBeLessThan(0.04);
  });

  it("gives Jupiter's D −2.48°, the Sun's −2.20°, P 24.80° (43.a)", () => {
    const jupiter = globeSeen("Jupiter", null, fromDynamical("1992-12-16T00:00:00Z", 59.184));
    expect(off(jupiter.centre.latitudeDeg, -2.48)).toBeLessThan(0.01);
    expect(off(jupiter.subsolar.latitudeDeg, -2.2)).toBeLessThan(0.01);
    expect(off(jupiter.axisDeg, 24.8)).toBeLessThan(0.01);
  });
});

describe("globeSeen against astronomia over ten years", () => {
  it("agrees on the Sun's P and B0 to 0.01°, on L0 to 0.06°", () => {
    for (const at of spreadInstants(36)) {
      const [axis, latitude, longitude] = ephemeris(ephemerisDay(at), earth);
      const sun = globeSeen("Sun", null, at);
      expect(off(sun.axisDeg, axis * DEG_PER_RAD)).toBeLessThan(0.01);
      expect(off(sun.centre.latitudeDeg, latitude * DEG_PER_RAD)).toBeLessThan(0.01);
      // The working group rounds Carrington's 360° in 25.38 days to 14.1844° a day: 0.04° by 2032.
      expect(off(sun.centre.longitudeDeg, longitude * DEG_PER_RAD)).toBeLessThan(0.06);
    }
  });

  it("agrees on the Moon's libration and axis and on the Sun over it to 0.05°", () => {
    for (const at of spreadInstants(60)) {
      const [libration, axis, sun] = physical(ephemerisDay(at), earth);
      const moon = globeSeen("Moon", null, at);
      expect(off(moon.centre.longitudeDeg, libration.lon * DEG_PER_RAD)).toBeLessThan(0.05);
      expect(off(moon.centre.latitudeDeg, libration.lat * DEG_PER_RAD)).toBeLessThan(0.05);
      // Its arcsine is blind to an axis beyond 90°, which the Moon's never reaches: it stays within 25°.
      expect(off(moon.axisDeg, axis * DEG_PER_RAD)).toBeLessThan(0.05);
      expect(off(moon.subsolar.longitudeDeg, sun.lon * DEG_PER_RAD)).toBeLessThan(0.05);
      expect(off(moon.subsolar.latitudeDeg, sun.lat * DEG_PER_RAD)).toBeLessThan(0.05);
    }
  });

  it("agrees on the tilt of Saturn's ring to 0.03°, the sign saying which side we see", () => {
    for (const at of spreadInstants(24)) {
      const [tilt] = ring(ephemerisDay(at), earth, saturn);
      // The pole of the working group's report and Meeus's plane lie 0.03° apart.
      expect(off(globeSeen("Saturn", null, at).centre.latitudeDeg, tilt * DEG_PER_RAD)).toBeLessThan(0.03);
    }
  });
});

describe("globeSeen from a site", () => {
  it("turns the Moon by up to its parallax of 1° and no more", () => {
    const site = { latitudeDeg: -33.9, longitudeDeg: 18.4, elevationMetres: 10 };
    const turned = spreadInstants(48).map((at) => {
      const there = globeSeen("Moon", site, at).centre;
      const centre = globeSeen("Moon", null, at).centre;
      return Math.hypot(
        halfTurnDeg(there.longitudeDeg - centre.longitudeDeg),
        there.latitudeDeg - centre.latitudeDeg,
      );
    });
    expect(Math.max(...turned)).toBeGreaterThan(0.5);
    expect(Math.max(...turned)).toBeLessThan(1.05);
  });

  it("corrects libration and axis as Meeus's differential formulas do (chapter 53, from memory), to 0.04°", () => {
    const site = { latitudeDeg: 40.2, longitudeDeg: -75.3, elevationMetres: 0 };
    for (const at of spreadInstants(40)) {
      const centre = globeSeen("Moon", null, at);
      const there = globeSeen("Moon", site, at);
      const moon = bodyPlace("Moon", site, at);
      const hour = (localSiderealDeg(at, site.longitudeDeg) - moon.raDeg) / DEG_PER_RAD;
      const latitude = site.latitudeDeg / DEG_PER_RAD;
      const dec = moon.decDeg / DEG_PER_RAD;
      const zenith = Math.acos(
        Math.sin(dec) * Math.sin(latitude) + Math.cos(dec) * Math.cos(latitude) * Math.cos(hour),
      );
      const parallax = Math.asin(6378.14 / (moon.distanceAu * 149_597_870.7));
      const shift = parallax * (Math.sin(zenith) + 0.0084 * Math.sin(2 * zenith));
      const q = Math.atan2(
        Math.cos(latitude) * Math.sin(hour),
        Math.cos(dec) * Math.sin(latitude) - Math.sin(dec) * Math.cos(latitude) * Math.cos(hour),
      );
      const axis = centre.axisDeg / DEG_PER_RAD;
      const b = centre.centre.latitudeDeg / DEG_PER_RAD;
      const longitude = (-shift * Math.sin(q - axis)) / Math.cos(b);
      const tilt = shift * Math.cos(q - axis);
      const turn = longitude * Math.sin(b + tilt) - shift * Math.sin(q) * Math.tan(dec);
      // First order in a parallax of a degree, and the Moon's place taken from the ground: 0.02° at most.
      expect(
        off(there.centre.longitudeDeg - centre.centre.longitudeDeg, longitude * DEG_PER_RAD),
      ).toBeLessThan(0.04);
      expect(off(there.centre.latitudeDeg - centre.centre.latitudeDeg, tilt * DEG_PER_RAD)).toBeLessThan(
        0.04,
      );
      expect(off(there.axisDeg - centre.axisDeg, turn * DEG_PER_RAD)).toBeLessThan(0.04);
    }
  });

  it("leaves where the Sun stands over the Moon alone", () => {
    const at = new Date("2026-11-25T22:00:00Z");
    const site = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 250 };
    const from = (place: typeof site | null) => turnDeg(globeSeen("Moon", place, at).subsolar.longitudeDeg);
    expect(off(from(site), from(null))).toBeLessThan(0.001);
  });
});
