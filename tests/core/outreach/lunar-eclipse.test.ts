/** Lunar eclipses against Swiss Ephemeris and published circumstances. */
import { describe, expect, it } from "vitest";
import { lunarEclipsesIn } from "../../../core/outreach/lunar-eclipse.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const found = lunarEclipsesIn(new Date("2024-01-01T00:00Z"), new Date("2042-01-01T00:00Z"));
const near = (instant: string) =>
  found.find(({ greatest }) => Math.abs(greatest.getTime() - Date.parse(instant)) < 36e5);

describe("lunarEclipsesIn", () => {
  it("finds Swiss Ephemeris's eclipses of 18 years, and no others, of the same kinds", () => {
    const rows = referenceRows("swiss-ephemeris/lunar-eclipses.txt");
    expect(found.map(({ kind }) => kind)).toEqual(rows.map(([kind]) => kind));
  });

  it("gives its contacts to 60 s, and its magnitudes", () => {
    for (const [, ...cells] of referenceRows("swiss-ephemeris/lunar-eclipses.txt")) {
      const eclipse = near(cells[3] ?? "");
      if (eclipse === undefined) throw new Error(`no eclipse near ${cells[3]}`);
      const contacts = [
        eclipse.penumbraBegins,
        eclipse.partialBegins,
        eclipse.totalBegins,
        eclipse.greatest,
        eclipse.totalEnds,
        eclipse.partialEnds,
        eclipse.penumbraEnds,
      ];
      contacts.forEach((contact, i) => {
        const expected = cells[i] ?? "";
        if (expected === "-") expect(contact).toBeNull();
        else expect(Math.abs((contact?.getTime() ?? 0) - Date.parse(expected))).toBeLessThan(60_000);
      });
      // That table has 0 where the umbra misses the Moon.
      expect(Math.abs(Math.max(0, eclipse.umbralMagnitude) - Number(cells[7]))).toBeLessThan(0.002);
      expect(Math.abs(eclipse.penumbralMagnitude - Number(cells[8]))).toBeLessThan(0.002);
    }
  });

  it.each([
    // NASA's catalogue of lunar eclipses (from memory).
    ["2026-03-03T11:34Z", "total", 1.151],
    ["2026-08-28T04:13Z", "partial", 0.93],
    ["2025-09-07T18:12Z", "total", 1.362],
  ])("has the eclipse of %s, %s, to a minute, magnitude %s", (instant, kind, magnitude) => {
    const eclipse = near(instant);
    expect(eclipse?.kind).toBe(kind);
    expect(Math.abs((eclipse?.greatest.getTime() ?? 0) - Date.parse(instant))).toBeLessThan(60_000);
    expect(Math.abs((eclipse?.umbralMagnitude ?? 0) - magnitude)).toBeLessThan(0.003);
  });
});
