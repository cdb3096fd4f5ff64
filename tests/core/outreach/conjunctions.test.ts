/** Close approaches against Swiss Ephemeris, and only such sights as there are. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareSite } from "../../../commands/read/site.ts";
import { approachSight, closeApproaches } from "../../../core/outreach/conjunctions.ts";
import { sunAltitudeDeg } from "../../../core/sky/bodies.ts";
import { targetTrack } from "../../../core/targets/placer.ts";
import { referenceRows } from "../../reference/reference-rows.ts";

const LIMITS = { moonDeg: 5, planetsDeg: 3, leastElongationDeg: 12 };
const RULES = { leastAltitudeDeg: 5, sunDepthDeg: 4 };
const found = closeApproaches(new Date("2024-01-01T00:00Z"), new Date("2032-01-01T00:00Z"), LIMITS);

describe("closeApproaches", () => {
  const rows = referenceRows("swiss-ephemeris/approaches.txt");
  /** A 30″ worse place may fall on the other side of a limit. */
  const isClear = (body: string, separation: number, elongation: number) =>
    Math.abs(separation - (body === "Moon" ? 5 : 3)) > 0.02 && Math.abs(elongation - 12) > 0.02;

  it("finds those of eight years, 300 and more, to 10 minutes for the Moon, 3 hours for planets", () => {
    expect(rows.length).toBeGreaterThan(300);
    for (const [one = "", other = "", instant = "", separation = "", elongation = ""] of rows) {
      if (!isClear(one, Number(separation), Number(elongation))) continue;
      // Planets pass slowly: 20″ of one are hours of the pass.
      const allowed = one === "Moon" ? 600_000 : 3 * 36e5;
      const near = found.find(
        ({ bodies, at }) =>
          bodies[0] === one && bodies[1] === other && Math.abs(at.getTime() - Date.parse(instant)) < allowed,
      );
      expect(`${one} ${other} ${instant} ${near !== undefined}`).toBe(`${one} ${other} ${instant} true`);
      expect(Math.abs((near?.separationDeg ?? 0) - Number(separation))).toBeLessThan(0.015);
      expect(Math.abs((near?.elongationDeg ?? 0) - Number(elongation))).toBeLessThan(0.2);
    }
  });

  it("finds no others", () => {
    const clear = found.filter(({ bodies, separationDeg, elongationDeg }) =>
      isClear(bodies[0], separationDeg, elongationDeg),
    );
    for (const { bodies, at } of clear) {
      const known = rows.some(
        ([one, other, instant]) =>
          one === bodies[0] &&
          other === bodies[1] &&
          Math.abs(Date.parse(instant ?? "") - at.getTime()) < 3 * 36e5,
      );
      expect(`${bodies} ${at.toISOString()} ${known}`).toBe(`${bodies} ${at.toISOString()} true`);
    }
  });
});

describe("approachSight", () => {
  it("is with both bodies up and the Sun down, within 18 hours", () => {
    const place = fc.record({
      latitudeDeg: fc.double({ min: -60, max: 60, noNaN: true }),
      longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
      which: fc.integer({ min: 0, max: found.length - 1 }),
    });
    fc.assert(
      fc.property(place, ({ latitudeDeg, longitudeDeg, which }) => {
        const approach = found[which];
        if (approach === undefined) return;
        const site = bareSite({ name: "", latitudeDeg, longitudeDeg, elevationMetres: 0, timeZone: "UTC" });
        const sight = approachSight(site, approach, RULES);
        if (sight === null) return;
        expect(Math.abs(sight.at.getTime() - approach.at.getTime())).toBeLessThanOrEqual(18 * 36e5);
        expect(sunAltitudeDeg(site, sight.at)).toBeLessThanOrEqual(-3.99);
        for (const body of approach.bodies) {
          const { altitudeDeg } = targetTrack(site, { kind: "body", body }, sight.at)(sight.at.getTime());
          expect(altitudeDeg).toBeGreaterThanOrEqual(4.99);
        }
      }),
      { numRuns: 60 },
    );
  });
});
