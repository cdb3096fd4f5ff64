import { describe, expect, it } from "vitest";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { runCard } from "../../../core/targets/run-card.ts";
import { FELL } from "./night-of-a-rig.ts";

const TIMES = nightTimes(FELL, nightOn("2026-10-10", FELL.timeZone));
const RULES = { setUpMinutes: 60, leastHandOverMinutes: 45 };
const at = (clock: string) => new Date(`2026-10-${clock < "12" ? "11" : "10"}T${clock}:00Z`);
const span = (start: string, end: string) => ({ start: at(start), end: at(end) });

const VEIL = { name: "Veil", windows: [span("19:30", "23:30")], worthOfHour: 0.8, meridianFlip: at("20:15") };
const ROSETTE = { name: "Rosette", windows: [span("22:30", "04:30")], worthOfHour: 0.7, meridianFlip: null };
const M33 = { name: "M33", windows: [span("19:30", "04:30")], worthOfHour: 0.6, meridianFlip: at("00:40") };

describe("runCard", () => {
  it("sets up an hour before, flips, hands over to what fills the rest, ends", () => {
    const card = runCard(TIMES, VEIL, [M33, ROSETTE], [], RULES);
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
    const card = runCard(TIMES, ROSETTE, [VEIL], [], RULES);
    const starts = card?.steps.filter((step) => step.kind === "start").map((step) => step.target);
    expect(starts).toEqual(["Veil", "Rosette"]);
  });

  it("hands over to nothing for less than 45 minutes", () => {
    const brief = { ...M33, windows: [span("23:30", "00:14")] };
    expect(runCard(TIMES, VEIL, [brief], [], RULES)?.second).toBeNull();
    const enough = { ...M33, windows: [span("23:30", "00:15")] };
    expect(runCard(TIMES, VEIL, [enough], [], RULES)?.second).toBe("M33");
  });

  it("says when frost begins, once", () => {
    const frost = [
      { ...span("22:00", "23:00"), kind: "frost" as const },
      { ...span("23:10", "23:20"), kind: "frost" as const },
    ];
    const dew = runCard(TIMES, VEIL, [], frost, RULES)?.steps.filter(({ kind }) => kind === "dew");
    expect(dew).toEqual([{ kind: "dew", at: at("22:00"), frost: true }]);
  });

  it("is none without a window", () => {
    expect(runCard(TIMES, { ...VEIL, windows: [] }, [M33], [], RULES)).toBeNull();
  });
});
