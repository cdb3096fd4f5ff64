/** Oppositions, conjunctions and elongations over ten years against Swiss Ephemeris. */
import { describe, expect, it } from "vitest";
import { planetEvents } from "../../../core/outreach/planet-events.ts";
import { PLANETS } from "../../../core/outreach/planets.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const rows = referenceRows("swiss-ephemeris/planet-events.txt");

describe("planetEvents", () => {
  it.each(PLANETS)("finds every event of %s in ten years and no other, to ten minutes", (planet) => {
    const expected = rows.filter(([name]) => name === planet);
    const found = planetEvents(planet, new Date("2024-01-01T00:00Z"), new Date("2034-01-01T00:00Z"));
    expect(found.map(({ kind }) => kind)).toEqual(expected.map(([, kind]) => kind));
    expected.forEach(([, , instant, elongation], i) => {
      const event = found[i];
      expect(Math.abs((event?.at.getTime() ?? 0) - Date.parse(instant ?? ""))).toBeLessThan(600_000);
      expect(Math.abs((event?.elongationDeg ?? 0) - Number(elongation))).toBeLessThan(0.01);
    });
  });

  it("loses none at the ends of a span, and takes the first end in", () => {
    const all = planetEvents("Mercury", new Date("2026-01-01T00:00Z"), new Date("2027-01-01T00:00Z"));
    const [first] = all;
    if (first === undefined) throw new Error("Mercury does nothing in 2026");
    const after = new Date(first.at.getTime() + 1000);
    expect(planetEvents("Mercury", first.at, new Date("2027-01-01T00:00Z"))).toHaveLength(all.length);
    expect(planetEvents("Mercury", after, new Date("2027-01-01T00:00Z"))).toHaveLength(all.length - 1);
  });
});
