/** Rises, sets and transits beside SOFA and Meeus, and what must hold of any crossing. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bodyPlace } from "../../../core/sky/bodies.ts";
import { bodyCrossings, type Level, transitOfBody } from "../../../core/sky/crossings.ts";
import { heightTrack } from "../../../core/sky/topocentric.ts";
import type { BodyName } from "../../../core/targets/sky-object.ts";

const DAY_MS = 86_400_000;
const BOSTON = { latitudeDeg: 42.3333, longitudeDeg: -71.0833, elevationMetres: 0 };

describe("bodyCrossings", () => {
  it("has Venus at Boston on 1988 Mar 20 rise 12:25 and set 2:55 UT, Meeus, example 15.a", () => {
    const from = new Date("1988-03-20T00:00Z");
    const found = bodyCrossings(
      "Venus",
      BOSTON,
      { kind: "rise-set" },
      from,
      new Date(from.getTime() + DAY_MS),
    );
    // He prints 0.51766 and 0.12130 of a day, for the centre of the disc and the Earth's centre:
    // a radius of 11″ is 1 s, parallax as much.
    expect(found.map((each) => each.rising)).toEqual([false, true]);
    const seconds = found.map((each) => (each.at.getTime() - from.getTime()) / 1000);
    expect(Math.abs((seconds[0] ?? 0) - 0.1213 * 86_400)).toBeLessThan(6);
    expect(Math.abs((seconds[1] ?? 0) - 0.51766 * 86_400)).toBeLessThan(6);
  });

  it("finds the Sun up for minutes only at the edge of the polar night, both times", () => {
    // North of the circle the Sun's arc above the horizon shrinks to nothing: at some latitude
    // beside 67.4° it lasts a few minutes at the solstice.
    const from = new Date("2026-12-21T22:00Z");
    const to = new Date(from.getTime() + DAY_MS);
    let shortest = Number.POSITIVE_INFINITY;
    for (let latitudeDeg = 67.0; latitudeDeg < 67.6; latitudeDeg += 0.001) {
      const site = { latitudeDeg, longitudeDeg: 0, elevationMetres: 0 };
      const found = bodyCrossings("Sun", site, { kind: "rise-set" }, from, to);
      expect([0, 2]).toContain(found.length);
      const [rise, set] = found;
      if (rise && set) {
        expect(rise.rising && !set.rising).toBe(true);
        shortest = Math.min(shortest, set.at.getTime() - rise.at.getTime());
      }
    }
    // The step between samples is twenty minutes.
    expect(shortest).toBeLessThan(10 * 60_000);
  });

  const anySite = fc.record({
    latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
    longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
    elevationMetres: fc.constant(0),
  });
  const anyAt = fc.date({ min: new Date("1995-01-01"), max: new Date("2060-01-01"), noInvalidDate: true });

  it("alternates rising and setting, each on the level", () => {
    fc.assert(
      fc.property(
        fc.constantFrom<BodyName>("Sun", "Moon", "Venus", "Saturn"),
        anySite,
        anyAt,
        fc.double({ min: -30, max: 80, noNaN: true }),
        (body, site, from, altitudeDeg) => {
          const level: Level = { kind: "centre", altitudeDeg };
          const found = bodyCrossings(body, site, level, from, new Date(from.getTime() + 1.1 * DAY_MS));
          for (const [index, { at, rising }] of found.entries()) {
            expect(Math.abs(bodyPlace(body, site, at).altitudeDeg - altitudeDeg)).toBeLessThan(1e-4);
            if (index > 0) expect(rising).toBe(!found[index - 1]?.rising);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it("finds as many as a look every ten seconds does", () => {
    fc.assert(
      fc.property(
        fc.constantFrom<BodyName>("Sun", "Moon"),
        anySite,
        anyAt,
        fc.constantFrom(-18, -12, -6, 0, 10),
        (body, site, from, altitudeDeg) => {
          const to = new Date(from.getTime() + DAY_MS);
          const found = bodyCrossings(body, site, { kind: "centre", altitudeDeg }, from, to);
          const track = heightTrack(body, site);
          let seen = 0;
          let before = track(from.getTime()).altitudeDeg - altitudeDeg;
          for (let at = from.getTime() + 10_000; at <= to.getTime(); at += 10_000) {
            const now = track(at).altitudeDeg - altitudeDeg;
            if (before < 0 !== now < 0) seen++;
            before = now;
          }
          // Two passages within ten seconds are a graze that the look may miss.
          expect(found.length === seen || found.length === seen + 2).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("transitOfBody", () => {
  it("has Venus at Boston on 1988 Mar 20 transit 19:41 UT, Meeus, example 15.a", () => {
    const from = new Date("1988-03-20T00:00Z");
    const transit = transitOfBody("Venus", BOSTON, from, new Date(from.getTime() + DAY_MS));
    // He prints 0.81980 of a day, so 4 s a digit in the last place.
    expect(Math.abs(((transit?.getTime() ?? 0) - from.getTime()) / 1000 - 0.8198 * 86_400)).toBeLessThan(5);
  });

  it("puts the Moon on the meridian, due south of the north and north of the south", () => {
    for (const latitudeDeg of [54.5, -34]) {
      const site = { latitudeDeg, longitudeDeg: 20, elevationMetres: 0 };
      const from = new Date("2026-11-25T12:00Z");
      const transit = transitOfBody("Moon", site, from, new Date(from.getTime() + 1.04 * DAY_MS));
      const azimuth = bodyPlace("Moon", site, transit ?? from).azimuthDeg;
      expect(Math.abs(Math.sin((azimuth * Math.PI) / 180))).toBeLessThan(1e-4);
    }
  });
});
