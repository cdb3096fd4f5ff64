import { describe, expect, it } from "vitest";
import type { World } from "../../bot/world.ts";
import { answerIn, refusalIn, worldIn } from "../bot/console/asked.ts";
import { temporaryFolder } from "../bot/store/temporary-folder.ts";

const MORNING = ["--at", "2026-10-10T08:00:00Z"] as const;

// biome-ignore lint/suspicious/noExplicitAny: figures are read as JSON, as a script would
type Figures = any;

async function add(world: World, line: string, night: string): Promise<void> {
  await answerIn(world, "log", "add", "--line", line, "--night", night, ...MORNING);
}

async function owed(world: World, ...words: readonly string[]): Promise<Figures> {
  return (await answerIn(world, "calibration", ...words, ...MORNING)).figures;
}

describe("/calibration owed", () => {
  it("makes one set of two nights alike and owes each kind once", async () => {
    const world = await worldIn(temporaryFolder());
    await add(world, "NGC 6888 24x180 oiii gain100 -10C rot 45", "2026-10-03");
    await add(world, "NGC 6888 30x180 oiii gain100 -9,8C rot 45", "2026-10-07");
    const figures = await owed(world);
    expect(figures.sets).toHaveLength(1);
    expect(figures.sets[0]).toMatchObject({ nights: ["2026-10-03", "2026-10-07"], frames: 54 });
    expect(figures.owed.map(({ kind, frames }: Figures) => [kind, frames])).toEqual([
      ["dark", 20],
      ["flat", 20],
      ["bias", 50],
    ]);
  });

  it("makes two of a turned camera, and matches a cooled dark of another night", async () => {
    const world = await worldIn(temporaryFolder());
    await add(world, "NGC 6888 24x180 oiii gain100 -10C rot 45", "2026-10-03");
    await add(world, "NGC 6888 30x180 oiii gain100 -10C rot 120", "2026-10-07");
    const dark = [
      "--kind",
      "dark",
      "--frames",
      "25",
      "--sub",
      "180",
      "--gain",
      "100",
      "--sensor-temp",
      "-10",
    ];
    await answerIn(world, "calibration", "add", ...dark, "--night", "2026-08-01", ...MORNING);
    const figures = await owed(world);
    expect(figures.sets).toHaveLength(2);
    expect(figures.sets.map((set: Figures) => set.dark.owed)).toEqual([0, 0]);
    expect(figures.owed.filter(({ kind }: Figures) => kind === "flat")).toHaveLength(2);
  });

  it("takes a tolerance, and looks back as far as it is told", async () => {
    const world = await worldIn(temporaryFolder());
    await add(world, "NGC 6888 24x180 oiii gain100 -10C", "2026-10-03");
    await add(world, "NGC 6888 24x180 oiii gain100 -13C", "2026-10-07");
    expect((await owed(world)).sets).toHaveLength(2);
    expect((await owed(world, "owed", "--tolerance", "3")).sets).toHaveLength(1);
    expect((await owed(world, "owed", "--since", "2026-10-05")).sets).toHaveLength(1);
  });

  it("says when the next moonlit hours come", async () => {
    const world = await worldIn(temporaryFolder());
    await add(world, "NGC 6888 24x180 oiii gain100 -10C", "2026-10-03");
    const answer = await answerIn(world, "calibration", "--at", "2026-10-04T08:00:00Z");
    // Last quarter on 3 October: the Moon is up in the second half of these nights.
    const { idle } = answer.figures as Figures;
    expect(idle[0]).toMatchObject({ why: "moon" });
    expect(idle[0].start > "2026-10-04T22:00" && idle[0].end < "2026-10-05T06:00").toBe(true);
  });

  it("owes nothing without subs", async () => {
    const answer = await answerIn(await worldIn(temporaryFolder()), "calibration");
    expect(answer.figures).toMatchObject({ sets: [], owed: [] });
  });
});

describe("/calibration add", () => {
  it.each([
    [["--kind", "dark", "--frames", "20"], "sub"],
    [["--kind", "bias", "--frames", "20", "--sub", "1"], "sub"],
    [["--kind", "dark", "--frames", "20", "--sub", "60", "--filter", "lum"], "filter"],
    [["--kind", "dark", "--frames", "20", "--sub", "60", "--rotation", "4"], "rotation"],
    [["--kind", "dark", "--frames", "0", "--sub", "60"], "frames"],
    [["--kind", "dark", "--frames", "20", "--sub", "60", "--sensor-temp", "400"], "sensor-temp"],
    [["--kind", "dark", "--frames", "20", "--sub", "60", "--night", "2027-01-01"], "night"],
    [["--kind", "darkness", "--frames", "20"], "kind"],
  ] as const)("refuses %s, naming the option", async (words, option) => {
    const world = await worldIn(temporaryFolder());
    const refused = await refusalIn(world, "calibration", "add", ...words, ...MORNING);
    expect(refused.option).toBe(option);
    expect((await answerIn(world, "calibration", "library")).figures.library).toEqual([]);
  });

  it("refuses the same run twice", async () => {
    const world = await worldIn(temporaryFolder());
    const words = ["calibration", "add", "--kind", "bias", "--frames", "50", ...MORNING];
    await answerIn(world, ...words);
    expect((await refusalIn(world, ...words)).message).toContain("already");
  });
});
