import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCoordinates } from "../../../core/targets/coordinates.ts";

/** 1h 34m is 23.5°, 30° 40′ is 30.6667°: arithmetic. */
const M33_RA_DEG = 23.5;
const M33_DEC_DEG = 30 + 40 / 60;

describe("readCoordinates", () => {
  it.each([
    "01h34m +30d40m",
    "1h34m +30d40m",
    "01h34m00s +30d40m00s",
    "01h 34m 00.0s +30° 40′ 00″",
    "01h34m+30d40m",
    "1 34 00 +30 40 00",
    "1 34 +30 40",
    "01:34:00 +30:40:00",
    "01:34:00, +30:40:00",
    "1h34m 30d40m",
    "01 34 00 30 40 00",
    "23.5 30.666666667",
    "23.5, 30.666666667",
    "23.5 +30.666666667",
    "23.5° +30.666666667°",
  ])("reads %s as the place of M33", (text) => {
    const place = readCoordinates(text);
    if (place.kind !== "place") throw new Error(`${text} was ${place.kind}`);
    expect(place.raDeg).toBeCloseTo(M33_RA_DEG, 6);
    expect(place.decDeg).toBeCloseTo(M33_DEC_DEG, 6);
  });

  it.each([
    "01h34m -30d40m",
    "01h34m −30d40m",
    "1 34 00 – 30 40 00",
    "23.5,-30.666666667",
    "01:34:00 -30:40",
  ])("reads the minus sign of %s", (text) => {
    const place = readCoordinates(text);
    if (place.kind !== "place") throw new Error(`${text} was ${place.kind}`);
    expect(place.decDeg).toBeCloseTo(-M33_DEC_DEG, 6);
  });

  it("keeps the sign of a declination between 0 and −1 degrees", () => {
    expect(readCoordinates("05h36m -00d30m")).toMatchObject({ kind: "place", raDeg: 84, decDeg: -0.5 });
  });

  it.each([
    "24h30m +10d",
    "25 00 00 +10 00 00",
    "361 10",
    "10 91",
    "1h60m +10d",
    "1 34 00 +30 60 00",
    "1h34m -90d01m",
    "-10 20",
  ])("says what is right when %s is no place on the sky", (text) => {
    const place = readCoordinates(text);
    if (place.kind !== "impossible") throw new Error(`${text} was ${place.kind}`);
    expect(place.problem).toContain("0h to 24h");
  });

  it.each(["", "42", "M31", "61 Cyg", "47 Tuc", "1 2 3", "NGC 7000", "+", "1 34 00 +30 40 00 5", "30 Dor"])(
    "takes “%s” for something else",
    (text) => expect(readCoordinates(text).kind).toBe("not-coordinates"),
  );

  it("reads every place back from hours and from degrees", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 24 * 3600 - 1 }),
        fc.integer({ min: -90 * 3600, max: 90 * 3600 }),
        fc.constantFrom(" ", ":"),
        (raSeconds, decArcsec, between) => {
          const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
          const parts = (seconds: number) =>
            [seconds / 3600, (seconds / 60) % 60, seconds % 60].map(two).join(between);
          const sign = decArcsec < 0 ? "-" : "+";
          const sexagesimal = readCoordinates(`${parts(raSeconds)} ${sign}${parts(Math.abs(decArcsec))}`);
          const degrees = readCoordinates(`${raSeconds / 240} ${sign}${Math.abs(decArcsec) / 3600}`);
          for (const place of [sexagesimal, degrees]) {
            if (place.kind !== "place") throw new Error(place.kind);
            expect(place.raDeg).toBeCloseTo(raSeconds / 240, 8);
            expect(place.decDeg).toBeCloseTo(decArcsec / 3600, 8);
          }
        },
      ),
    );
  });

  it("never throws and never leaves the sky, whatever is typed", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[\d\s.,:+\-hmsd°'"−]{0,30}$/), (text) => {
        const place = readCoordinates(text);
        if (place.kind !== "place") return;
        expect(place.raDeg).toBeGreaterThanOrEqual(0);
        expect(place.raDeg).toBeLessThan(360);
        expect(Math.abs(place.decDeg)).toBeLessThanOrEqual(90);
      }),
    );
  });
});
