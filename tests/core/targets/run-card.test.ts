import { describe, expect, it } from "vitest";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { type CardTarget, runCard } from "../../../core/targets/run-card.ts";
import { viewingCard } from "../../../core/targets/viewing-card.ts";
import { FELL } from "./night-of-a-rig.ts";

const TIMES = nightTimes(FELL, nightOn("2026-10-10", FELL.timeZone));
const RULES = {
  setUpMinutes: 60,
  alignMinutes: 30,
  leastHandOverMinutes: 45,
  objectsByEye: 3,
  lookMinutes: 30,
};
const at = (clock: string) => new Date(`2026-10-${clock < "12" ? "11" : "10"}T${clock}:00Z`);
const span = (start: string, end: string) => ({ start: at(start), end: at(end) });

const VEIL = { name: "Veil", windows: [span("19:30", "23:30")], worthOfHour: 0.8, meridianFlip: at("20:15") };
const ROSETTE = { name: "Rosette", windows: [span("22:30", "04:30")], worthOfHour: 0.7, meridianFlip: null };
const M33 = { name: "M33", windows: [span("19:30", "04:30")], worthOfHour: 0.6, meridianFlip: at("00:40") };

describe("runCard", () => {
  it("sets up an hour before, flips, hands over to what fills the rest, ends", () => {
    const card = runCard({ times: TIMES, first: VEIL, others: [M33, ROSETTE], dew: [], polar: false }, RULES);
    expect(card?.second).toBe("Rosette");
    expect(card?.steps.map(({ kind }) => kind)).toEqual(["set-up", "dark", "start", "flip", "start", "end"]);
    expect(card?.steps.map((step) => step.at)).toEqual([
      at("18:30"),
      TIMES.astronomicalDusk,
      at("19:30"),
      at("20:15"),
      at("23:30"),
      at("04:30"),
    ]);
  });

  it("starts with the second target when the first comes late", () => {
    const card = runCard({ times: TIMES, first: ROSETTE, others: [VEIL], dew: [], polar: false }, RULES);
    const starts = card?.steps.filter((step) => step.kind === "start").map((step) => step.target);
    expect(starts).toEqual(["Veil", "Rosette"]);
  });

  it("hands over to nothing for less than 45 minutes", () => {
    const brief = { ...M33, windows: [span("23:30", "00:14")] };
    expect(
      runCard({ times: TIMES, first: VEIL, others: [brief], dew: [], polar: false }, RULES)?.second,
    ).toBeNull();
    const enough = { ...M33, windows: [span("23:30", "00:15")] };
    expect(
      runCard({ times: TIMES, first: VEIL, others: [enough], dew: [], polar: false }, RULES)?.second,
    ).toBe("M33");
  });

  it("says when frost begins, once", () => {
    const frost = [
      { ...span("22:00", "23:00"), kind: "frost" as const },
      { ...span("23:10", "23:20"), kind: "frost" as const },
    ];
    const dew = runCard(
      { times: TIMES, first: VEIL, others: [], dew: frost, polar: false },
      RULES,
    )?.steps.filter(({ kind }) => kind === "dew");
    expect(dew).toEqual([{ kind: "dew", at: at("22:00"), frost: true }]);
  });

  it("sets the polar axis half an hour before, but not before civil dusk", () => {
    const alignedAt = (first: typeof VEIL) =>
      runCard({ times: TIMES, first, others: [], dew: [], polar: true }, RULES)?.steps.find(
        ({ kind }) => kind === "align",
      )?.at;
    expect(alignedAt(VEIL)).toEqual(at("19:00"));
    const early = { ...VEIL, windows: [span("18:10", "21:00")] };
    expect(alignedAt(early)).toEqual(TIMES.civilDusk);
  });

  it("is none without a window", () => {
    expect(
      runCard({ times: TIMES, first: { ...VEIL, windows: [] }, others: [M33], dew: [], polar: false }, RULES),
    ).toBeNull();
  });
});

describe("viewingCard", () => {
  const looks = (first: CardTarget, ...others: CardTarget[]) =>
    viewingCard({ times: TIMES, first, others, dew: [], polar: false }, RULES)?.steps.flatMap((step) =>
      step.kind === "start" ? [[step.target, step.at]] : [],
    );

  it("sees first what is lost first, half an hour on each", () => {
    expect(looks(M33, ROSETTE, VEIL)).toEqual([
      ["Veil", at("19:30")],
      ["M33", at("20:00")],
      ["Rosette", at("22:30")],
    ]);
  });

  it("takes no more than the list's first three, and none without a window", () => {
    const late = { ...M33, name: "late" };
    expect(looks(M33, ROSETTE, VEIL, late)?.map(([name]) => name)).not.toContain("late");
    expect(looks({ ...M33, windows: [] })).toBeUndefined();
  });
});
