import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AUDIENCES, WEIGHTS } from "../../../config/outreach-evenings.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import type { BodyInReach, EveningFacts } from "../../../core/outreach/evening-facts.ts";
import {
  bestEvenings,
  moonShape,
  type Placed,
  rainDate,
  weighEvening,
} from "../../../core/outreach/evening-worth.ts";
import { FELL } from "../targets/night-of-a-rig.ts";

const TIMES = nightTimes(FELL, nightOn("2026-11-16", FELL.timeZone));
const start = new Date("2026-11-16T18:30:00Z");
const end = new Date("2026-11-16T21:00:00Z");
const QUIET: EveningFacts = {
  times: TIMES,
  weekday: 1,
  session: { start, end, pastLeaveHours: 0 },
  darkFrom: start,
  darkHours: 2.5,
  moon: null,
  planets: [],
  events: [],
};

const reach = (body: BodyInReach["body"], diameterArcsec = 20): BodyInReach => ({
  body,
  span: { start, end },
  altitudeDeg: 30,
  azimuthDeg: 180,
  diameterArcsec,
  lostEarly: false,
});

function lit(illuminatedFraction: number): EveningFacts {
  return {
    ...QUIET,
    moon: reach("Moon"),
    times: { ...TIMES, moon: { ...TIMES.moon, illuminatedFraction } },
  };
}

const worth = (facts: EveningFacts, forecast: "go" | "marginal" | "no-go" | null = null) =>
  weighEvening(facts, forecast, AUDIENCES.families, WEIGHTS).worth;

describe("weighEvening", () => {
  it("likes a half-lit Moon best, then a crescent, and a full one least", () => {
    const worths = [0.5, 0.15, 0.85, 0.99].map((fraction) => worth(lit(fraction)));
    expect(worths).toEqual([...worths].sort((one, other) => other - one));
    expect(new Set(worths).size).toBe(4);
  });

  it("likes every planet in reach, and a large Mars more than a small one", () => {
    for (const body of ["Mercury", "Venus", "Mars", "Jupiter", "Saturn"] as const) {
      expect(worth({ ...QUIET, planets: [reach(body)] }), body).toBeGreaterThan(worth(QUIET));
    }
    expect(worth({ ...QUIET, planets: [reach("Mars", 14)] })).toBeGreaterThan(
      worth({ ...QUIET, planets: [reach("Mars", 5)] }),
    );
  });

  it("likes darkness in time, and dislikes a late hour", () => {
    expect(worth(QUIET)).toBeGreaterThan(worth({ ...QUIET, darkHours: 0 }));
    const late = { ...QUIET, session: { start, end, pastLeaveHours: 1 } };
    expect(worth(late)).toBeLessThan(worth(QUIET));
  });

  it("orders by the forecast where there is one", () => {
    expect(worth(QUIET, "go")).toBeGreaterThan(worth(QUIET, "marginal"));
    expect(worth(QUIET, "marginal")).toBeGreaterThan(worth(QUIET, "no-go"));
  });

  it("puts an eclipse before everything else", () => {
    const eclipse = { kind: "lunar-eclipse", title: "total eclipse of the Moon", at: start } as const;
    expect(worth({ ...lit(1), events: [eclipse] })).toBeGreaterThan(worth(lit(0.5)));
  });

  it("adds up to what its merits say, the weightiest first", () => {
    const found = weighEvening({ ...lit(0.5), planets: [reach("Saturn")] }, "go", AUDIENCES.adults, WEIGHTS);
    expect(found.worth).toBeCloseTo(
      found.merits.reduce((sum, { weight }) => sum + weight, 0),
      9,
    );
    const sizes = found.merits.map(({ weight }) => Math.abs(weight));
    expect(sizes).toEqual([...sizes].sort((one, other) => other - one));
  });
});

describe("moonShape", () => {
  it("names the quarters of the lit share", () => {
    expect([0.1, 0.25, 0.5, 0.75, 0.8, 0.95, 0.97].map(moonShape)).toEqual([
      "crescent",
      "half",
      "half",
      "half",
      "gibbous",
      "gibbous",
      "full",
    ]);
  });
});

const placed = fc
  .array(fc.double({ min: -5, max: 10, noNaN: true }), { minLength: 1, maxLength: 60 })
  .map((worths): Placed<string>[] =>
    worths.map((each, index) => ({ facts: `evening ${index}`, merits: [], worth: each, index })),
  );

describe("bestEvenings", () => {
  it("are the best, best first, and lie apart", () => {
    fc.assert(
      fc.property(placed, fc.integer({ min: 1, max: 7 }), (evenings, apart) => {
        const best = bestEvenings(evenings, 5, apart);
        expect(best[0]?.worth).toBe(Math.max(...evenings.map((each) => each.worth)));
        best.forEach((one, place) => {
          for (const other of best.slice(place + 1)) {
            expect(one.worth).toBeGreaterThanOrEqual(other.worth);
            expect(Math.abs(one.index - other.index)).toBeGreaterThanOrEqual(apart);
          }
        });
      }),
    );
  });
});

describe("rainDate", () => {
  it("is the best of the evenings that follow within reach", () => {
    fc.assert(
      fc.property(placed, fc.nat(), (evenings, pick) => {
        const evening = evenings[pick % evenings.length] as Placed<string>;
        const found = rainDate(evening, evenings, { min: 1, max: 16 });
        const after = evenings.filter(({ index }) => index > evening.index && index <= evening.index + 16);
        if (after.length === 0) expect(found).toBeNull();
        else expect(found?.worth).toBe(Math.max(...after.map((each) => each.worth)));
      }),
    );
  });
});
