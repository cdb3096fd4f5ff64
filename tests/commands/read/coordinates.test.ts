import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AskError } from "../../../commands/ask-error.ts";
import {
  coordinateWords,
  isNumbersAlone,
  keptDegrees,
  parseCoordinates,
} from "../../../commands/read/coordinates.ts";

describe("parseCoordinates", () => {
  it.each([
    ["54.5, -2.6, 310", 54.5, -2.6, 310],
    ["-33.93,18.42", -33.93, 18.42, null],
    ["54.5 -2.6", 54.5, -2.6, null],
    ["+54.5°, −2.6°", 54.5, -2.6, null],
    ["90,180,-400", 90, 180, -400],
  ])("reads %s", (text, latitudeDeg, longitudeDeg, elevationMetres) => {
    expect(isNumbersAlone(text)).toBe(true);
    expect(parseCoordinates("site", text)).toEqual({ latitudeDeg, longitudeDeg, elevationMetres });
  });

  it.each([
    ["91, 0", /91 is out of range: “site” must be from -90 to 90° of latitude/],
    ["0, 180.5", /from -180 to 180° of longitude/],
    ["10, 20, 99999", /from -430 to 9000 metres of elevation/],
    ["54.5", /latitude, longitude/],
    ["1,2,3,4", /latitude, longitude/],
    ["5..4, 3", /latitude, longitude/],
    ["1,,2", /latitude, longitude/],
  ])("refuses %s and says what would be right", (text, message) => {
    expect(() => parseCoordinates("site", text)).toThrow(message);
  });

  it("is never asked for text with a letter in it", () => {
    for (const name of ["M33", "54.5N", "Fell End", "１２３ street"])
      expect(isNumbersAlone(name)).toBe(false);
  });

  it("reads any pair within range as it was written", () => {
    const degrees = (most: number) => fc.integer({ min: -most * 1e4, max: most * 1e4 }).map((n) => n / 1e4);
    fc.assert(
      fc.property(degrees(90), degrees(180), (latitudeDeg, longitudeDeg) => {
        const read = parseCoordinates("site", `${latitudeDeg},${longitudeDeg}`);
        expect(read).toEqual({
          latitudeDeg: latitudeDeg + 0,
          longitudeDeg: longitudeDeg + 0,
          elevationMetres: null,
        });
      }),
    );
  });

  it("answers any text made of numbers alone, or refuses it by name", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[\d.,;+\- °]{1,24}$/), (text) => {
        try {
          const { latitudeDeg, longitudeDeg } = parseCoordinates("site", text);
          expect(Math.abs(latitudeDeg)).toBeLessThanOrEqual(90);
          expect(Math.abs(longitudeDeg)).toBeLessThanOrEqual(180);
        } catch (fault) {
          expect(fault).toBeInstanceOf(AskError);
          expect((fault as AskError).option).toBe("site");
        }
      }),
    );
  });
});

describe("keptDegrees", () => {
  it("keeps a hundredth of a degree, and no negative zero", () => {
    expect(keptDegrees(54.4962)).toBe(54.5);
    expect(keptDegrees(-2.6049)).toBe(-2.6);
    expect(Object.is(keptDegrees(-0.001), 0)).toBe(true);
  });
});

describe("coordinateWords", () => {
  it("names the hemispheres", () => {
    expect(coordinateWords(54.5, -2.6)).toBe("54.5° N, 2.6° W");
    expect(coordinateWords(-33.93, 18.42)).toBe("33.93° S, 18.42° E");
  });
});
