import { describe, expect, it } from "vitest";
import {
  brierScore,
  calibrationBins,
  trackRecord,
  type VerdictNote,
} from "../../../core/log/track-record.ts";

const note = (night: string, over: Partial<VerdictNote> = {}): VerdictNote => ({
  night,
  leadNights: 0,
  model: null,
  verdict: "go",
  agreement: 0.8,
  ...over,
});
const answer = (night: string, good: boolean, member = "ada") => ({ night, member, good });

describe("brierScore", () => {
  it("agrees with a table worked by hand", () => {
    // Brier 1950, for two outcomes: 0.9, 0.8, 0.6, 0.3 against yes, yes, no, no:
    // (0.01 + 0.04 + 0.36 + 0.09)/4 = 0.125.
    const pairs = [
      { probability: 0.9, happened: true },
      { probability: 0.8, happened: true },
      { probability: 0.6, happened: false },
      { probability: 0.3, happened: false },
    ];
    expect(brierScore(pairs)).toBeCloseTo(0.125, 12);
  });

  it("is 0 for a seer, 1 for the opposite, 0.25 for a coin", () => {
    expect(brierScore([{ probability: 1, happened: true }])).toBe(0);
    expect(brierScore([{ probability: 1, happened: false }])).toBe(1);
    expect(brierScore([true, false].map((happened) => ({ probability: 0.5, happened })))).toBe(0.25);
  });
});

describe("calibrationBins", () => {
  it("sets stated shares against how often the sky was good", () => {
    const pairs = [0.05, 0.15, 0.85, 0.95, 1].map((probability) => ({
      probability,
      happened: probability > 0.9,
    }));
    const [low, high] = calibrationBins(pairs, 5);
    expect(low).toMatchObject({ fromShare: 0, toShare: 0.2, nights: 2, goodShare: 0 });
    expect(low?.meanShare).toBeCloseTo(0.1, 12);
    expect(high).toMatchObject({ fromShare: 0.8, toShare: 1, nights: 3 });
    expect(high?.goodShare).toBeCloseTo(2 / 3, 12);
  });
});

describe("trackRecord", () => {
  const notes = [
    note("2026-10-01"),
    note("2026-10-02", { verdict: "no-go", agreement: 0.7 }),
    note("2026-10-03"),
    note("2026-10-04", { verdict: "marginal", agreement: 0.5 }),
    note("2026-10-01", { model: "first", agreement: null }),
    note("2026-10-03", { model: "first", verdict: "no-go", agreement: null }),
    note("2026-10-03", { leadNights: 2 }),
    note("2026-10-05"),
  ];
  const answers = [
    answer("2026-10-01", true),
    answer("2026-10-02", false),
    answer("2026-10-03", false),
    answer("2026-10-03", true, "ben"),
    answer("2026-10-03", false, "cid"),
    answer("2026-10-04", true),
    answer("2026-10-05", true),
    answer("2026-10-05", false, "ben"),
  ];

  it("counts by model and lead, by the majority, leaving ties out", () => {
    const record = trackRecord(notes, answers, 30);
    expect(record.nightsKnown).toBe(4);
    expect(record.lines).toEqual([
      {
        model: null,
        leadNights: 0,
        nights: 4,
        go: { right: 1, wrong: 1 },
        noGo: { right: 1, wrong: 0 },
        marginal: { good: 1, poor: 0 },
      },
      {
        model: null,
        leadNights: 2,
        nights: 1,
        go: { right: 0, wrong: 1 },
        noGo: { right: 0, wrong: 0 },
        marginal: { good: 0, poor: 0 },
      },
      {
        model: "first",
        leadNights: 0,
        nights: 2,
        go: { right: 1, wrong: 0 },
        noGo: { right: 1, wrong: 0 },
        marginal: { good: 0, poor: 0 },
      },
    ]);
  });

  it("has no score until there are nights enough, then one worked by hand", () => {
    expect(trackRecord(notes, answers, 4).score).toBeNull();
    // Go at 0.8 and good, no-go at 0.7 (0.3) and poor, go at 0.8 and poor: (0.04 + 0.09 + 0.64)/3.
    expect(trackRecord(notes, answers, 3).score?.brier).toBeCloseTo(0.77 / 3, 12);
  });

  it("is empty without answers", () => {
    expect(trackRecord(notes, [], 30)).toEqual({ lines: [], nightsKnown: 0, score: null });
  });
});
