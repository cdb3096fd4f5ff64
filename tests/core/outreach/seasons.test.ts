/** Equinoxes, solstices and the Sun's longitude of 2000, against Swiss Ephemeris and Meeus. */
import { describe, expect, it } from "vitest";
import { seasonTurns, solarLongitudePassages } from "../../../core/outreach/seasons.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const FROM = new Date("2024-01-01T00:00Z");
const TO = new Date("2032-01-01T00:00Z");

describe("seasonTurns", () => {
  it("finds every turn of eight years within a minute of Swiss Ephemeris", () => {
    const found = seasonTurns(FROM, TO);
    const rows = referenceRows("swiss-ephemeris/seasons.txt");
    expect(found).toHaveLength(rows.length);
    const names = {
      0: "march-equinox",
      90: "june-solstice",
      180: "september-equinox",
      270: "december-solstice",
    };
    for (const [degrees = "", instant = ""] of rows) {
      const near = found.find(({ at }) => Math.abs(at.getTime() - Date.parse(instant)) < 60_000);
      expect(near?.name).toBe(names[Number(degrees) as keyof typeof names]);
    }
  });

  it("puts the June solstice of 1962 at 21:24:42 dynamical time (Meeus 27.a, from memory)", () => {
    const [turn] = seasonTurns(new Date("1962-06-01T00:00Z"), new Date("1962-07-01T00:00Z"));
    // 34 s between the scales then; a minute is ours.
    expect(Math.abs((turn?.at.getTime() ?? 0) - Date.parse("1962-06-21T21:24:08Z"))).toBeLessThan(60_000);
  });
});

describe("solarLongitudePassages", () => {
  it("dates the showers' maxima within two minutes of Swiss Ephemeris", () => {
    for (const [degrees = "", instant = ""] of referenceRows("swiss-ephemeris/solar-longitudes.txt")) {
      const found = solarLongitudePassages(Number(degrees), FROM, TO);
      const near = found.filter((at) => Math.abs(at.getTime() - Date.parse(instant)) < 120_000);
      expect(`${degrees} ${instant} ${near.length}`).toBe(`${degrees} ${instant} 1`);
    }
  });

  it.each([
    // The International Meteor Organization's calendar for 2025 (from memory), to the hour.
    [283.15, "2025-01-03T15:00Z"],
    [32.32, "2025-04-22T13:30Z"],
    [140.0, "2025-08-12T20:00Z"],
    [235.27, "2025-11-17T18:00Z"],
    [262.2, "2025-12-14T08:00Z"],
  ])("reaches %s° in the hour of %s", (degrees, instant) => {
    const [at] = solarLongitudePassages(
      degrees,
      new Date("2025-01-01T00:00Z"),
      new Date("2026-01-01T00:00Z"),
    );
    expect(Math.abs((at?.getTime() ?? 0) - Date.parse(instant))).toBeLessThan(61 * 60_000);
  });
});
