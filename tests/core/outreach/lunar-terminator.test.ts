/** Which features of the Moon are lit, dark, or on the terminator. */
import earthData from "astronomia/data/vsop87Bearth";
import { physical, sunAltitude } from "astronomia/moon";
import { Planet } from "astronomia/planetposition";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOON_FEATURES } from "../../../config/moon-features.ts";
import {
  featuresOnTerminator,
  isLunarMorning,
  sunAltitudeOnMoonDeg,
  turnedTowardsUs,
} from "../../../core/outreach/lunar-terminator.ts";
import { lunarSun } from "../../../core/outreach/moon-disc.ts";
import { DEG_PER_RAD, RAD_PER_DEG } from "../../../core/sky/angles.ts";
import { ephemerisDay, spreadInstants } from "./dynamical-time.ts";

const BAND = { lowestDeg: 0.5, highestDeg: 8 };
const FACE_ON = { longitudeDeg: 0, latitudeDeg: 0 };
const earth = new Planet(earthData);
const sun = fc.record({
  colongitudeDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  sunLatitudeDeg: fc.double({ min: -1.6, max: 1.6, noNaN: true }),
});

describe("the Sun over the Moon", () => {
  it("stands over each feature as high as astronomia's Meeus has it, to 0.06°", () => {
    for (const at of spreadInstants(20)) {
      const [, , subsolar] = physical(ephemerisDay(at), earth);
      const ours = lunarSun(at);
      for (const feature of MOON_FEATURES) {
        const place = { lon: feature.longitudeDeg * RAD_PER_DEG, lat: feature.latitudeDeg * RAD_PER_DEG };
        const theirs = sunAltitude(place, subsolar) * DEG_PER_RAD;
        expect(Math.abs(sunAltitudeOnMoonDeg(ours, feature) - theirs)).toBeLessThan(0.06);
      }
    }
  });

  it("rises at longitude −c and sets at 180° − c on the equator, for a Sun on it", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 360, noNaN: true }), (colongitudeDeg) => {
        const above = { colongitudeDeg, sunLatitudeDeg: 0 };
        const at = (longitudeDeg: number) => sunAltitudeOnMoonDeg(above, { longitudeDeg, latitudeDeg: 0 });
        expect(at(-colongitudeDeg)).toBeCloseTo(0, 6);
        expect(at(180 - colongitudeDeg)).toBeCloseTo(0, 6);
        expect(at(90 - colongitudeDeg)).toBeCloseTo(90, 4);
        expect(isLunarMorning(above, { longitudeDeg: -colongitudeDeg + 1 })).toBe(true);
        expect(isLunarMorning(above, { longitudeDeg: 180 - colongitudeDeg - 1 })).toBe(false);
      }),
    );
  });
});

describe("featuresOnTerminator", () => {
  it("keeps to the band, to the side that faces us, and runs from north to south", () => {
    fc.assert(
      fc.property(sun, (where) => {
        const found = featuresOnTerminator(MOON_FEATURES, where, FACE_ON, BAND, 0.1);
        const latitudes = found.map(({ feature }) => feature.latitudeDeg);
        expect(latitudes).toEqual([...latitudes].sort((a, b) => b - a));
        for (const { feature, sunAltitudeDeg } of found) {
          expect(sunAltitudeDeg).toBeGreaterThanOrEqual(0.5);
          expect(sunAltitudeDeg).toBeLessThanOrEqual(8);
          expect(turnedTowardsUs(FACE_ON, feature)).toBeGreaterThanOrEqual(0.1);
        }
      }),
    );
  });

  it("shows Ptolemaeus, Alphonsus and Arzachel in the morning light just after first quarter", () => {
    const names = featuresOnTerminator(
      MOON_FEATURES,
      { colongitudeDeg: 6, sunLatitudeDeg: 0 },
      FACE_ON,
      BAND,
      0.1,
    );
    for (const name of ["Ptolemaeus", "Alphonsus", "Arzachel"]) {
      expect(names.find(({ feature }) => feature.name === name)?.morning).toBe(true);
    }
  });

  it("shows them in the evening light just before last quarter", () => {
    const found = featuresOnTerminator(
      MOON_FEATURES,
      { colongitudeDeg: 177, sunLatitudeDeg: 0 },
      FACE_ON,
      BAND,
      0.1,
    );
    expect(found.find(({ feature }) => feature.name === "Ptolemaeus")?.morning).toBe(false);
  });

  it("turns the edge away with libration: Mare Orientale's middle shows only when the west comes forward", () => {
    const orientale = { longitudeDeg: -94.67, latitudeDeg: -19.87 };
    expect(turnedTowardsUs(FACE_ON, orientale)).toBeLessThan(0);
    expect(turnedTowardsUs({ longitudeDeg: -8, latitudeDeg: -6 }, orientale)).toBeGreaterThan(0);
  });
});
