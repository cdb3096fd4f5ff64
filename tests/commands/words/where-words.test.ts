/** A fist at arm's length is 10° (common practice). */
import { describe, expect, it } from "vitest";
import { fistWords, whereWords } from "../../../commands/words/where-words.ts";

describe("fistWords", () => {
  it.each([
    [1, "just"],
    [5, "half a fist"],
    [10, "a fist"],
    [15, "a fist and a half"],
    [20, "two fists"],
    [24, "two and a half fists"],
    [41, "four fists"],
  ])("%d° is %s", (degrees, words) => {
    expect(fistWords(degrees)).toBe(words);
  });
});

describe("whereWords", () => {
  const hill = [
    { azimuthDeg: 0, altitudeDeg: 10 },
    { azimuthDeg: 180, altitudeDeg: 10 },
  ];

  it("counts from the skyline, or from the horizon where there is no profile", () => {
    expect(whereWords({ altitudeDeg: 25, azimuthDeg: 225 }, hill)).toBe(
      "a fist and a half above the south-west skyline",
    );
    expect(whereWords({ altitudeDeg: 25, azimuthDeg: 225 }, [])).toBe(
      "two and a half fists above the south-west horizon",
    );
  });

  it("gives up counting high in the sky", () => {
    expect(whereWords({ altitudeDeg: 52, azimuthDeg: 0 }, [])).toBe(
      "rather more than half-way up the sky, in the north",
    );
    expect(whereWords({ altitudeDeg: 60, azimuthDeg: 90 }, [])).toBe(
      "two thirds of the way up the sky, in the east",
    );
    expect(whereWords({ altitudeDeg: 80, azimuthDeg: 180 }, [])).toBe("almost overhead, towards the south");
  });
});
