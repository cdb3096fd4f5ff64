import { describe, expect, it } from "vitest";
import { answerIn, refusalIn, worldIn } from "../bot/console/asked.ts";
import { temporaryFolder } from "../bot/store/temporary-folder.ts";

const AT = ["--at", "2026-10-03T22:00:00Z"] as const;

// biome-ignore lint/suspicious/noExplicitAny: figures are read as JSON, as a script would
type Figures = any;

async function figuresOf(...words: readonly string[]): Promise<Figures> {
  const world = await worldIn(temporaryFolder());
  return (await answerIn(world, "align", ...AT, ...words)).figures;
}

describe("/align", () => {
  it("gives the pole star as the IAU SOFA routines place it", async () => {
    // tests/reference/erfa/pole-stars.txt: Polaris, 2026-10-03T22:00Z, 54.5° north, 2.6° west.
    const figures = await figuresOf();
    expect(figures).toMatchObject({ pole: "north", star: "Polaris", poleSeen: true });
    expect(figures.hourAngleHours).toBeCloseTo(19.52788, 2);
    expect(figures.poleDistanceArcmin).toBeCloseTo(37.58, 1);
    expect(figures.dial.correct).toBeCloseTo(12 - 19.52788 / 2, 2);
    expect(figures.dial.inverted).toBeCloseTo(18 - 19.52788 / 2, 2);
  });

  it("gives the four stars of Octans in the south", async () => {
    const figures = await figuresOf("--site", "-33.93,18.42");
    expect(figures).toMatchObject({ pole: "south", star: "sigma Octantis" });
    expect(figures.hourAngleHours).toBeCloseTo(2.54685, 2);
    expect(figures.poleStars.map(({ star }: { star: string }) => star)).toEqual([
      "sigma Octantis",
      "tau Octantis",
      "chi Octantis",
      "upsilon Octantis",
    ]);
  });

  it("names three stars, a focus star near the target, and the flip", async () => {
    const figures = await figuresOf("--target", "NGC 6888");
    expect(figures.alignmentStars).toHaveLength(3);
    expect(Object.keys(figures.alignmentStars[0])).toEqual([
      "name",
      "altitudeDeg",
      "azimuthDeg",
      "magnitude",
    ]);
    expect(figures.focusStar.name).toBe("Sadr");
  });

  it("flips in the window of a target that crosses the meridian in it, and not of one that has crossed", async () => {
    expect((await figuresOf("--target", "M33")).meridianFlip).not.toBeNull();
    expect((await figuresOf("--target", "NGC 6888")).meridianFlip).toBeNull();
  });

  it("has no alignment stars for a mount without goto, and some when told it has", async () => {
    const tracker = "135mm f/2.8, 23.5x15.7mm, 3.9um, tracker";
    expect((await figuresOf("--rig", tracker)).alignmentStars).toEqual([]);
    expect((await figuresOf("--rig", tracker, "--goto")).alignmentStars).toHaveLength(3);
    expect((await figuresOf("--goto", "no")).alignmentStars).toEqual([]);
  });

  it("reckons drift and turn by Hook 1989", async () => {
    // 5′ and 300 s: 6.6″; twice the error and half the time are the same.
    expect((await figuresOf("--error", "5", "--sub", "300")).drift.driftArcsec).toBeCloseTo(6.56, 2);
    const { drift } = await figuresOf("--error", "10", "--sub", "150", "--target", "12h00m +60d00m");
    expect(drift.driftArcsec).toBeCloseTo(6.56, 2);
    // At declination 59.85° of date the turn is twice the drift.
    expect(drift.fieldRotationArcsec / drift.driftArcsec).toBeCloseTo(
      1 / Math.cos((59.85 * Math.PI) / 180),
      2,
    );
  });

  it("offers the drift method where the pole star is low, below the horizon or behind a house", async () => {
    for (const site of ["1.2,36.8", "-0.1,-78.5"]) {
      const world = await worldIn(temporaryFolder());
      const answer = await answerIn(world, "align", ...AT, "--site", site);
      expect(answer.figures.poleSeen).toBe(false);
      expect(answer.charts).toEqual([]);
      expect(JSON.stringify(answer.sections)).toContain("Drift method");
    }
    const world = await worldIn(temporaryFolder());
    await answerIn(
      world,
      "site",
      "horizon",
      "--site",
      "Fell End",
      "--profile",
      "0:85, 90:85, 91:0, 269:0, 270:85",
    );
    const answer = await answerIn(world, "align", ...AT);
    expect(answer.summary).toContain("behind the skyline");
    expect(answer.figures.poleSeen).toBe(false);
  });

  it("reads the drift the other way round in the south", async () => {
    const world = await worldIn(temporaryFolder());
    const linesAt = async (site: string) =>
      JSON.stringify((await answerIn(world, "align", ...AT, "--site", site)).sections);
    expect(await linesAt("1.2,36.8")).toContain("drifts north, the axis points too far west");
    expect(await linesAt("-0.1,-78.5")).toContain("drifts north, the axis points too far east");
  });

  it("gives the field-rotation limit of an altazimuth mount instead of a flip", async () => {
    const rig = "400mm f/5.6, 23.5x15.7mm, 3.76um, altazimuth";
    const figures = await figuresOf("--rig", rig, "--target", "M33");
    expect(figures.meridianFlip).toBeNull();
    expect(figures.fieldRotationLimitSeconds).toBeGreaterThan(0.5);
    expect(figures.fieldRotationLimitSeconds).toBeLessThan(60);
  });

  it("asks no polar alignment of a mount without a polar axis", async () => {
    const world = await worldIn(temporaryFolder());
    const answer = await answerIn(world, "align", ...AT, "--rig", "250mm f/4.8 visual, altazimuth");
    expect(answer.charts).toEqual([]);
    expect(answer.summary).toMatch(/^Focus on /);
    expect(JSON.stringify(answer.sections)).toContain("no polar axis");
  });

  it("takes a time of the named night, through midnight", async () => {
    const figures = await figuresOf("--night", "2026-10-10", "--time", "01:30");
    expect(figures.at).toBe("2026-10-11T00:30:00.000Z");
    expect(figures.night).toBe("2026-10-10");
    const dusk = await figuresOf("--night", "2026-10-10");
    expect(dusk.at > "2026-10-10T18:00" && dusk.at < "2026-10-10T20:00").toBe(true);
  });

  it("puts the solar caution first by day, and keeps stars clear of the Sun", async () => {
    const world = await worldIn(temporaryFolder());
    const answer = await answerIn(world, "align", "--at", "2026-10-03T12:00:00Z");
    expect(answer.cautions[0]?.id).toBe("sun");
    expect(answer.charts.every(({ cautions }) => cautions.length > 0)).toBe(true);
    expect(answer.figures.byDay).toBe(true);
  });

  it.each([
    [["--error", "0"], "error"],
    [["--error", "nought"], "error"],
    [["--sub", "1e9"], "sub"],
    [["--time", "25:99"], "time"],
    [["--time", "soon"], "time"],
    [["--target", "NGC 688800"], "target"],
  ] as const)("refuses %s, naming the option", async (words, option) => {
    const world = await worldIn(temporaryFolder());
    const refused = await refusalIn(world, "align", ...AT, ...words);
    expect(refused.option).toBe(option);
    expect(refused.message).toContain(`“${option}”`);
  });
});
