import { describe, expect, it } from "vitest";
import type { World } from "../../bot/world.ts";
import { skyQuestionButtons, verdictNotes } from "../../commands/forecast-record.ts";
import type { VerdictNote } from "../../core/log/track-record.ts";
import type { NightVerdict } from "../../core/weather/verdict.ts";
import { answerIn, refusalIn, worldIn } from "../bot/console/asked.ts";
import { temporaryFolder } from "../bot/store/temporary-folder.ts";

const MORNING = ["--at", "2026-10-04T08:00:00Z"] as const;

// biome-ignore lint/suspicious/noExplicitAny: figures are read as JSON, as a script would
type Figures = any;

const note = (
  night: string,
  verdict: VerdictNote["verdict"],
  over: Partial<VerdictNote> = {},
): VerdictNote => ({
  night,
  leadNights: 0,
  model: null,
  verdict,
  agreement: 0.8,
  ...over,
});

async function worldWith(...notes: readonly VerdictNote[]): Promise<World> {
  const world = await worldIn(temporaryFolder());
  await world.context().books.record.note("fell-end", "Fell End", notes);
  return world;
}

const record = async (world: World, ...words: readonly string[]): Promise<Figures> =>
  (await answerIn(world, "forecast", "record", ...words, ...MORNING)).figures;

describe("/forecast record", () => {
  it("takes a member's word on last night and counts it", async () => {
    const world = await worldWith(note("2026-10-03", "go"), note("2026-10-02", "no-go"));
    expect(await record(world, "--kept", "no")).toMatchObject({ night: "2026-10-03", good: false });
    expect(await record(world, "--kept", "--night", "2026-10-02")).toMatchObject({
      verdict: "no-go",
      good: false,
    });
    const { lines, nightsKnown, brier } = await record(world);
    expect(nightsKnown).toBe(2);
    expect(lines).toMatchObject([{ model: null, go: { right: 0, wrong: 1 }, noGo: { right: 1, wrong: 0 } }]);
    expect(brier).toBeNull();
  });

  it("keeps the last word of each member", async () => {
    const world = await worldWith(note("2026-10-03", "go"));
    await record(world, "--kept", "no");
    await record(world, "--kept", "yes");
    expect((await record(world)).lines[0].go).toEqual({ right: 1, wrong: 0 });
  });

  it("shows a score from thirty nights on", async () => {
    const nights = Array.from({ length: 30 }, (_, day) => `2026-09-${String(day + 1).padStart(2, "0")}`);
    const world = await worldWith(...nights.map((night) => note(night, "go")));
    for (const night of nights.slice(0, 29)) await record(world, "--kept", "--night", night);
    expect((await record(world)).brier).toBeNull();
    await record(world, "--kept", "no", "--night", "2026-09-30");
    // Twenty-nine right at 0.8 and one wrong: (29 · 0.04 + 0.64)/30 = 0.06.
    expect((await record(world)).brier).toBeCloseTo(0.06, 12);
  });

  it.each([
    ["2026-10-05", "has not come yet"],
    ["2026-10-01", "no go or no-go"],
    ["2026-10-02", "no go or no-go"],
  ])("has no word to take on %s", async (night, part) => {
    const world = await worldWith(note("2026-10-03", "go"), note("2026-10-02", "marginal"));
    const refused = await refusalIn(world, "forecast", "record", "--kept", "--night", night, ...MORNING);
    expect(refused.option).toBe("night");
    expect(refused.message).toContain(part);
  });
});

describe("verdictNotes", () => {
  const verdict = {
    night: "2026-10-03",
    leadNights: 1,
    kind: "go",
    agreement: 0.5,
    sample: false,
    votes: [
      { provider: "MET Norway", model: "MEPS", kind: "go" },
      { provider: "Open-Meteo", model: "ICON", kind: "unknown" },
    ],
  } as unknown as NightVerdict;

  it("keeps the verdict of all and of each model that has one", () => {
    expect(verdictNotes(verdict)).toEqual([
      { night: "2026-10-03", leadNights: 1, model: null, verdict: "go", agreement: 0.5 },
      { night: "2026-10-03", leadNights: 1, model: "MET Norway MEPS", verdict: "go", agreement: null },
    ]);
  });

  it("keeps nothing of an unknown night or of invented weather", () => {
    expect(verdictNotes({ ...verdict, kind: "unknown" })).toEqual([]);
    expect(verdictNotes({ ...verdict, sample: true })).toEqual([]);
  });
});

describe("skyQuestionButtons", () => {
  it("ask the command that takes the word", () => {
    expect(
      skyQuestionButtons("2026-10-03", "Fell End").map(({ command, options }) => [command, options.kept]),
    ).toEqual([
      ["forecast", true],
      ["forecast", false],
    ]);
  });
});
