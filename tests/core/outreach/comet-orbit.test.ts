/** A comet's place against Meeus's examples and astronomia's solvers, which go other ways. */
import { kepler3 } from "astronomia/kepler";
import { Elements } from "astronomia/nearparabolic";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cometPlace, inOrbit } from "../../../core/outreach/comet-orbit.ts";
import { halfTurnDeg } from "../../../core/sky/angles.ts";
import { fromDynamical } from "./dynamical-time.ts";

const DEG = 180 / Math.PI;
const polar = ({ x, y }: { x: number; y: number }) => ({
  anomalyDeg: Math.atan2(y, x) * DEG,
  distance: Math.hypot(x, y),
});

describe("inOrbit", () => {
  it.each([
    // Meeus, Astronomical Algorithms, example 35.a and the table after it (from memory).
    [0.921326, 1, 138.4783, 102.74426, 2.364192],
    [0.1, 0.987, 254.9, 164.50029, 4.063777],
    [0.123456, 0.99997, -30.47, 221.9119, 0.965053],
    [3.363943, 1.05731, 1237.1, 109.40598, 10.668551],
    [0.5871018, 0.9672746, 20, 52.85331, 0.729116],
  ])("for q %s, e %s, %s days has true anomaly and distance as printed", (q, e, days, anomaly, distance) => {
    const found = polar(inOrbit(q, e, days));
    expect(Math.abs(halfTurnDeg(found.anomalyDeg - anomaly))).toBeLessThan(1e-5);
    expect(Math.abs(found.distance - distance)).toBeLessThan(1e-6);
  });

  it("agrees with astronomia's near-parabolic solver wherever that converges", () => {
    const orbit = fc.record({
      q: fc.double({ min: 0.1, max: 4, noNaN: true }),
      e: fc.double({ min: 0.98, max: 1.02, noNaN: true }),
      days: fc.integer({ min: -300, max: 300 }),
    });
    fc.assert(
      fc.property(orbit, ({ q, e, days }) => {
        const theirs = new Elements(2_451_545, q, e).anomalyDistance(2_451_545 + days);
        if (theirs.err) return;
        const ours = polar(inOrbit(q, e, days));
        expect(Math.abs(halfTurnDeg(ours.anomalyDeg - theirs.ano * DEG))).toBeLessThan(1e-4);
        expect(Math.abs(ours.distance - theirs.dist)).toBeLessThan(1e-5);
      }),
    );
  });

  it("goes round a long ellipse five times and knows where it is", () => {
    const [q, e, turns] = [0.1, 0.8841527293300293, -5.420964138043593];
    const axis = q / (1 - e);
    const eccentric = kepler3(e, 2 * Math.PI * turns);
    const { x } = inOrbit(q, e, (turns * 2 * Math.PI * axis ** 1.5) / 0.01720209895);
    expect(x).toBeCloseTo(axis * (Math.cos(eccentric) - e), 5);
  });

  it("agrees with Kepler's equation on ellipses, revolutions away too", () => {
    const orbit = fc.record({
      q: fc.double({ min: 0.1, max: 5, noNaN: true }),
      e: fc.double({ min: 0, max: 0.97, noNaN: true }),
      turns: fc.double({ min: -6, max: 6, noNaN: true }),
    });
    fc.assert(
      fc.property(orbit, ({ q, e, turns }) => {
        const axis = q / (1 - e);
        const days = (turns * 2 * Math.PI * axis ** 1.5) / 0.01720209895;
        const eccentric = kepler3(e, 2 * Math.PI * turns);
        const { x, y } = inOrbit(q, e, days);
        expect(x).toBeCloseTo(axis * (Math.cos(eccentric) - e), 5);
        expect(y).toBeCloseTo(axis * Math.sqrt(1 - e * e) * Math.sin(eccentric), 5);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("cometPlace", () => {
  it("has comet Encke at 10h34m14.2s, +19°09′31″ on 1990 October 6.0 (Meeus 33.b, from memory)", () => {
    const place = cometPlace(
      {
        name: "Encke",
        perihelionAu: 2.2091404 * (1 - 0.8502196),
        eccentricity: 0.8502196,
        inclinationDeg: 11.94524,
        nodeDeg: 334.75006,
        perihelionArgumentDeg: 186.23352,
        perihelionAt: new Date(fromDynamical("1990-10-28T00:00:00Z", 57.184).getTime() + 0.54502 * 864e5),
        brightness: { absoluteMag: 10, slope: 4 },
      },
      fromDynamical("1990-10-06T00:00:00Z", 57.184),
    );
    expect(Math.abs(place.raDeg - 158.558965)).toBeLessThan(0.001);
    expect(Math.abs(place.decDeg - 19.158496)).toBeLessThan(0.001);
    // Meeus goes on: Δ 0.8243, r 0.6525, 40.51° from the Sun (example 33.b).
    expect(Math.abs(place.earthDistanceAu - 0.8243)).toBeLessThan(0.0002);
    expect(Math.abs(place.elongationDeg - 40.51)).toBeLessThan(0.02);
    // m = H + 5 log Δ + 2.5 n log r, by hand: 10 − 0.4196 − 1.854.
    expect(place.magnitude).toBeCloseTo(7.727, 2);
  });
});
