import { describe, expect, it } from "vitest";
import { begunWords, preferencesOf } from "../../commands/begun.ts";
import { begunTargets, type NightTally } from "../../core/log/progress.ts";

const tally = (object: string, passband: string, clockHours: number): NightTally => ({
  object,
  passband,
  night: "2026-10-03",
  frames: 10,
  rejected: 0,
  clockHours,
  countingHours: null,
});

describe("preferencesOf", () => {
  it("prefers what is begun and unfinished, and what is only wanted, not what is done", () => {
    const begun = begunTargets(
      [tally("NGC 6888", "o-iii", 2), tally("M33", "luminance", 5), tally("M27", "o-iii", 1)],
      [
        { object: "NGC 6888", passband: "o-iii", hours: 10 },
        { object: "M33", passband: "luminance", hours: 5 },
        { object: "IC 434", passband: "h-alpha", hours: 4 },
      ],
    );
    expect([...preferencesOf(begun).keys()].sort()).toEqual(["IC 434", "M27", "NGC 6888"]);
    expect([...preferencesOf(begun).values()].every((strength) => strength > 1)).toBe(true);
  });
});

describe("begunWords", () => {
  it("says how much is left and in which filter", () => {
    const [target] = begunTargets(
      [tally("NGC 6888", "o-iii", 2), tally("NGC 6888", "h-alpha", 1)],
      [
        { object: "NGC 6888", passband: "o-iii", hours: 10 },
        { object: "NGC 6888", passband: "h-alpha", hours: 1.5 },
      ],
    );
    expect(target && begunWords(target)).toBe("Begun: 8 h left in o-iii, 30 min in h-alpha.");
  });

  it("says what is in hand where nothing was wanted, or all is done", () => {
    const [target] = begunTargets([tally("M27", "o-iii", 1.5)], []);
    expect(target && begunWords(target)).toBe("In hand: 1 h 30 min in o-iii.");
  });
});
