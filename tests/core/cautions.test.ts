import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import { cautionsOf, nearRisenSun, QUIET_OCCASION } from "../../core/cautions.ts";

const NIGHT_POINTING = { sunSeparationDeg: 90, sunAltitudeDeg: -30, minutesToSunrise: 400 };

describe("cautionsOf", () => {
  it("has nothing to say of a quiet night", () => {
    expect(cautionsOf({ ...QUIET_OCCASION, pointings: [NIGHT_POINTING] })).toEqual([]);
  });

  it("puts the Sun first whatever else applies", () => {
    const every = {
      ...QUIET_OCCASION,
      thunderExpected: true,
      children: true,
      laser: true,
      lowestCelsius: -5,
    };
    expect(cautionsOf({ ...every, solar: true })[0]).toBe("sun");
  });

  it("warns within 30° of a Sun that is up, and not beyond", () => {
    const up = { sunAltitudeDeg: 20, minutesToSunrise: null };
    expect(nearRisenSun({ ...up, sunSeparationDeg: 30 })).toBe(true);
    expect(nearRisenSun({ ...up, sunSeparationDeg: 30.01 })).toBe(false);
  });

  it("warns within 60 minutes of sunrise, and not before", () => {
    const near = { sunSeparationDeg: 12, sunAltitudeDeg: -9 };
    expect(nearRisenSun({ ...near, minutesToSunrise: 60 })).toBe(true);
    expect(nearRisenSun({ ...near, minutesToSunrise: 61 })).toBe(false);
  });

  it("counts the Sun as up while its refracted upper limb shows", () => {
    const near = { sunSeparationDeg: 12, minutesToSunrise: null };
    expect(nearRisenSun({ ...near, sunAltitudeDeg: -0.8 })).toBe(true);
    expect(nearRisenSun({ ...near, sunAltitudeDeg: -0.9 })).toBe(false);
  });

  it("says to cap in time when a session ends within the hour before sunrise", () => {
    expect(cautionsOf({ ...QUIET_OCCASION, endToSunriseMinutes: 45 })).toContain("cap-before-sunrise");
    expect(cautionsOf({ ...QUIET_OCCASION, endToSunriseMinutes: 90 })).toEqual([]);
  });

  it("never drops the Sun for anything an occasion may hold", () => {
    const flag = fc.boolean();
    const occasion = fc.record({
      solar: fc.constant(true),
      pointings: fc.constant([]),
      endToSunriseMinutes: fc.option(fc.integer({ min: 0, max: 900 })),
      lowestCelsius: fc.option(fc.integer({ min: -40, max: 40 })),
      windMetresPerSecond: fc.option(fc.integer({ min: 0, max: 40 })),
      dewExpected: flag,
      thunderExpected: flag,
      publicSession: flag,
      children: flag,
      laser: flag,
      mainsPower: flag,
      awayFromHome: flag,
      heavyGear: flag,
    });
    fc.assert(
      fc.property(occasion, (any) => {
        expect(cautionsOf(any)[0]).toBe("sun");
      }),
    );
  });
});

describe("the solar text", () => {
  it.each([
    "FRONT",
    "never use a filter at the eyepiece",
    "finder",
    "ISO 12312-2",
    "Inspect",
    "unattended",
    "children",
    "totality",
    "projection",
    "dedicated solar telescope",
    "never those together with optics",
  ])("says “%s”", (words) => {
    expect(CAUTION_TEXTS.sun.toLowerCase()).toContain(words.toLowerCase());
  });
});
