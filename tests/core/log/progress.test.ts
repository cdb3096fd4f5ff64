import { describe, expect, it } from "vitest";
import { finishEstimate } from "../../../core/log/finish-estimate.ts";
import { begunTargets, type NightTally, progressLines } from "../../../core/log/progress.ts";

const tally = (night: string, passband: string, frames: number, subSeconds: number): NightTally => ({
  object: "NGC 6888",
  passband,
  night,
  frames,
  rejected: 1,
  clockHours: (frames * subSeconds) / 3600,
  countingHours: ((frames * subSeconds) / 3600) * 0.5,
});

describe("progressLines", () => {
  // By hand: 20 × 180 s is 1 h, 30 × 180 s 1.5 h, 12 × 300 s 1 h.
  const tallies = [
    tally("2026-10-09", "o-iii", 30, 180),
    tally("2026-10-03", "o-iii", 20, 180),
    tally("2026-10-03", "h-alpha", 12, 300),
  ];
  const wanted = [
    { object: "NGC 6888", passband: "o-iii", hours: 10 },
    { object: "NGC 6888", passband: "h-alpha", hours: 0.5 },
    { object: "M33", passband: "luminance", hours: 6 },
  ];

  it("sums hours by filter against hours wanted, the latest first", () => {
    const lines = progressLines(tallies, wanted);
    expect(
      lines.map(({ object, passband, inHandHours, countingHours, leftHours }) => ({
        object,
        passband,
        inHandHours,
        countingHours,
        leftHours,
      })),
    ).toEqual([
      { object: "NGC 6888", passband: "o-iii", inHandHours: 2.5, countingHours: 1.25, leftHours: 7.5 },
      { object: "NGC 6888", passband: "h-alpha", inHandHours: 1, countingHours: 0.5, leftHours: 0 },
      { object: "M33", passband: "luminance", inHandHours: 0, countingHours: 0, leftHours: 6 },
    ]);
  });

  it("keeps what each night gave", () => {
    expect(progressLines(tallies, wanted)[0]?.steps).toEqual([
      { night: "2026-10-03", hours: 1 },
      { night: "2026-10-09", hours: 1.5 },
    ]);
  });

  it("does not know counting hours where a night's are unknown", () => {
    const [line] = progressLines(
      [...tallies, { ...tally("2026-10-10", "o-iii", 20, 180), countingHours: null }],
      [],
    );
    expect(line).toMatchObject({ inHandHours: 3.5, countingHours: null, wantedHours: null, leftHours: null });
  });

  it("gathers filters by object for tonight", () => {
    const begun = begunTargets(tallies, wanted);
    expect(begun.map(({ object, filters }) => [object, filters.map(({ passband }) => passband)])).toEqual([
      ["NGC 6888", ["o-iii", "h-alpha"]],
      ["M33", ["luminance"]],
    ]);
  });
});

describe("finishEstimate", () => {
  const rules = { weeks: 4, leastNights: 3 };
  const nights = [
    { night: "2026-10-30", hours: 3 },
    { night: "2026-10-25", hours: 2 },
    { night: "2026-10-10", hours: 4 },
    { night: "2026-08-01", hours: 100 },
    { night: "2026-11-01", hours: 100 },
  ];

  it("agrees with a reckoning by hand", () => {
    // Four weeks before 1 November: 3 h (1–7 days ago) + 2 h (7 days ago) = 5, 0, 0, 4 (22 days ago).
    // Mean 2.25, variance ((2.75² + 2.25² + 2.25² + 1.75²)/3) = 6.9167; 9 h take 4 weeks, give or
    // take √(6.9167·9/11.3906 + 16·6.9167/(4·5.0625)) = √(5.4650 + 5.4650) = 3.3061.
    const estimate = finishEstimate(9, nights, "2026-11-01", rules);
    expect(estimate).toMatchObject({
      kind: "estimate",
      hoursPerWeek: 2.25,
      nightsGiven: 3,
      weeks: 4,
      earliest: "2026-11-06",
      likely: "2026-11-29",
      latest: "2026-12-23",
    });
    expect(estimate.kind === "estimate" && estimate.giveOrTakeWeeks).toBeCloseTo(3.3061, 3);
  });

  it("is done when nothing is left, and says nothing of too few nights", () => {
    expect(finishEstimate(0, nights, "2026-11-01", rules)).toEqual({ kind: "done" });
    expect(finishEstimate(5, nights.slice(0, 2), "2026-11-01", rules)).toEqual({
      kind: "unknown",
      nightsGiven: 2,
      nightsNeeded: 3,
    });
  });

  it("names no latest date beyond five years", () => {
    const estimate = finishEstimate(600, nights, "2026-11-01", rules);
    expect(estimate).toMatchObject({ kind: "estimate", latest: null });
  });
});
