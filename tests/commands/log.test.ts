import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { World } from "../../bot/world.ts";
import { answerIn, askIn, refusalIn, worldIn } from "../bot/console/asked.ts";
import { temporaryFolder } from "../bot/store/temporary-folder.ts";

/** The morning after the night of 3 October. */
const MORNING = ["--at", "2026-10-04T08:00:00Z"] as const;

// biome-ignore lint/suspicious/noExplicitAny: figures are read as JSON, as a script would
type Figures = any;

const sample = (name: string) => new URL(`../reference/astropy/${name}.fits`, import.meta.url).pathname;

async function freshWorld(): Promise<World> {
  return worldIn(temporaryFolder());
}

async function log(world: World, ...words: readonly string[]): Promise<Figures> {
  return (await answerIn(world, "log", ...words, ...MORNING)).figures;
}

/** The whole log as the member's own table. */
async function exported(world: World, ...words: readonly string[]): Promise<string> {
  const answer = await answerIn(world, "log", "export", ...words);
  return new TextDecoder().decode(answer.attachments?.[0]?.bytes);
}

describe("/log add", () => {
  it("keeps one line as its writer meant it", async () => {
    const world = await freshWorld();
    const { added } = await log(world, "add", "--line", "NGC 6888 24x180 oiii gain100 -10C, 3 rejected");
    expect(added).toEqual([
      {
        night: "2026-10-03",
        object: "NGC 6888",
        passband: "o-iii",
        frames: 21,
        rejected: 3,
        subSeconds: 180,
        clockHours: 1.05,
        gain: 100,
        iso: null,
        sensorCelsius: -10,
        rotationDeg: null,
        rig: "Eight-inch",
        startedAt: null,
      },
    ]);
  });

  it("takes the same by options, and options over the line", async () => {
    const world = await freshWorld();
    const words = ["--target", "M33", "--frames", "40", "--sub", "60", "--filter", "lum", "--start", "23:15"];
    const { added } = await log(world, "add", ...words);
    expect(added[0]).toMatchObject({
      object: "M33",
      passband: "luminance",
      startedAt: "2026-10-03T22:15:00.000Z",
    });
    const over = await log(
      world,
      "add",
      "--line",
      "M33 40x60 lum",
      "--frames",
      "12",
      "--night",
      "2026-10-01",
    );
    expect(over.added[0]).toMatchObject({ frames: 12, night: "2026-10-01" });
  });

  it("names what it took from the rig", async () => {
    const { added, assumptions } = await log(await freshWorld(), "add", "--line", "M33 40x60");
    expect(added[0]).toMatchObject({ gain: 100, sensorCelsius: -10, passband: "none" });
    expect(assumptions).toHaveLength(3);
  });

  it("weighs the hours: more under no Moon than under a full one", async () => {
    const world = await freshWorld();
    // A lunation after the eclipses of 2026: new Moon 11 September (solar, 12 August), full
    // Moon 26 September (lunar, 28 August).
    const dark = await log(world, "add", "--line", "M33 20x300 lum", "--night", "2026-09-12");
    const bright = await log(world, "add", "--line", "M33 20x300 lum", "--night", "2026-09-26");
    expect(dark.countingHours).toBeGreaterThan(3 * bright.countingHours);
    expect(dark.countingHours).toBeLessThan(20 / 12);
  });

  it.each([
    ["NGC 6888 24x180 oiii first light", "“24x180”"],
    ["hello there", "nothing"],
  ])("quotes “%s” back with what it understood", async (line, understood) => {
    const refused = await refusalIn(await freshWorld(), "log", "add", "--line", line, ...MORNING);
    expect(refused.option).toBe("line");
    expect(refused.message).toContain(line);
    expect(refused.message).toContain(`Understood: ${understood}`);
  });

  it.each([
    [["--line", "M33 10x60 400C"], "line", "400 °C"],
    [["--line", "M33 1000000000x60"], "line", "1000000000"],
    [["--line", "M33 10x60", "--sensor-temp", "400"], "sensor-temp", "400 °C"],
    [["--line", "M33 10x60 2026-12-24"], "line", "has not come yet"],
    [["--line", "M33 10x60", "--night", "2026-12-24"], "night", "has not come yet"],
    [["--line", "M33 10x60", "--night", "1970-01-01"], "night", "too long ago"],
    [["--line", "M33 10x60", "--start", "10:30", "--night", "2026-10-03"], "start", "has not come yet"],
    [["--line", "M333x 10x60"], "line", "nothing is called"],
    [["--target", "M33", "--frames", "0", "--sub", "60"], "frames", "0 is out of range"],
    [["--target", "M33", "--frames", "10"], "sub", "missing"],
    [["--line", "M33 10x60", "--filter", "purple"], "filter", "no filter"],
  ] as const)("refuses %s in one sentence, and stores nothing", async (words, option, part) => {
    const world = await freshWorld();
    const before = await exported(world);
    const refused = await refusalIn(world, "log", "add", ...words, ...MORNING);
    expect(refused.option).toBe(option);
    expect(refused.message).toContain(part);
    expect(await exported(world)).toBe(before);
  });

  it("refuses the same subs twice, and takes a second run that has a start", async () => {
    const world = await freshWorld();
    const line = ["add", "--line", "M33 10x60 lum"] as const;
    await log(world, ...line);
    const refused = await refusalIn(world, "log", ...line, ...MORNING);
    expect(refused.message).toContain("already");
    const again = await log(world, ...line, "--start", "03:10");
    expect(again.added).toHaveLength(1);
  });

  it("files last night by day as the night just over, and after dark as the one before", async () => {
    const world = await freshWorld();
    const nightAt = async (at: string) => {
      const answer = await answerIn(world, "log", "add", "--line", "last night M33 10x60", "--at", at);
      return (answer.figures as Figures).added[0].night;
    };
    expect(await nightAt("2026-10-04T08:00:00Z")).toBe("2026-10-03");
    expect(await nightAt("2026-10-05T14:00:00Z")).toBe("2026-10-04");
    expect(await nightAt("2026-10-07T20:30:00Z")).toBe("2026-10-06");
  });
});

describe("/log import", () => {
  it("takes FITS files many at once, darks and flats into the library", async () => {
    const world = await freshWorld();
    const figures = await log(
      world,
      "import",
      ...["--file", sample("light"), "--file-2", sample("dark"), "--file-3", sample("flat")],
    );
    expect(figures.addedCount).toBe(3);
    expect(figures.added[0]).toMatchObject({
      object: "NGC 6888",
      passband: "o-iii",
      sensorCelsius: -10.1,
      startedAt: "2026-10-03T21:40:00.250Z",
      night: "2026-10-03",
    });
    expect(figures.library.map(({ kind }: { kind: string }) => kind)).toEqual(["dark", "flat"]);
  });

  it("knows a file that came before", async () => {
    const world = await freshWorld();
    await log(world, "import", "--file", sample("light"));
    const again = await log(world, "import", "--file", sample("light"), "--file-2", sample("quoted"));
    expect(again).toMatchObject({ addedCount: 1, duplicates: 1 });
  });

  it("reads pasted EXIF text by the site's clock", async () => {
    const text = "Exposure Time : 120\nISO : 1600\nDate/Time Original : 2026:10:03 22:40:10";
    const figures = await log(await freshWorld(), "import", "--text", text, "--target", "M33");
    expect(figures.added[0]).toMatchObject({
      object: "M33",
      iso: 1600,
      startedAt: "2026-10-03T21:40:10.000Z",
    });
  });

  it("gives an export back whole, for its writer and for another member", async () => {
    const world = await freshWorld();
    await log(world, "add", "--line", "NGC 6888 24x180 oiii gain100 -9,8C rot 45.5 22:40, 3 rejected");
    await log(world, "add", "--line", "M33 40x1/60s lum iso800");
    await log(
      world,
      "import",
      "--file",
      sample("light"),
      "--file-2",
      sample("dark"),
      "--file-3",
      sample("flat"),
    );
    await answerIn(world, "calibration", "add", "--kind", "bias", "--frames", "50", ...MORNING);
    const table = await exported(world);
    expect(table.trim().split("\r\n")).toHaveLength(7);
    const path = join(temporaryFolder(), "log.csv");
    writeFileSync(path, table);

    const again = await log(world, "import", "--file", path);
    expect(again).toMatchObject({ addedCount: 0, duplicates: 6 });

    const other = await log(world, "import", "--file", path, "--as", "wren", "--site", "54.5,-2.6");
    expect(other).toMatchObject({ addedCount: 6, duplicates: 0 });
    expect(sorted(await exported(world, "--as", "wren"))).toEqual(sorted(table));
  });

  it.each([
    ["script", "OBJECT"],
    ["hot", "400 °C"],
    ["endless", "36 blocks"],
    ["no-exposure", "EXPTIME"],
  ])("refuses %s.fits in one sentence, and keeps nothing of the other file", async (name, part) => {
    const world = await freshWorld();
    const files = ["--file", sample("light"), "--file-2", sample(name)];
    const refused = await refusalIn(world, "log", "import", ...files, ...MORNING);
    expect(refused.option).toBe("file-2");
    expect(refused.message).toContain(part);
    expect((await log(world, "list")).rows).toBe(0);
  });

  it.each([
    ["a script", "#!/bin/sh\nrm -rf /\n", "exposure time"],
    ["markup", "<script>alert(1)</script>", "exposure time"],
    ["a zip", "PK\u0003\u0004", "neither text nor a FITS file"],
    ["bytes", new Uint8Array([0xff, 0xfe, 0x00, 0x41]), "neither text nor a FITS file"],
    ["another table", "a,b,c\n1,2,3\n", "night and frames"],
    ["markup in a table", "night,object,frames,sub_seconds\n2026-10-03,<b>M33</b>,4,60\n", "no name"],
    [
      "a mention in a table",
      "night,object,frames,sub_seconds,rig\n2026-10-03,M33,4,60,@everyone\n",
      "no name",
    ],
    ["a future row", "night,object,frames,sub_seconds\n2027-01-01,M33,4,60\n", "has not come yet"],
    ["a row of 10⁹", "night,object,frames,sub_seconds\n2026-10-03,M33,1e9,60\n", "out of range"],
    ["an unknown object", "night,object,frames,sub_seconds\n2026-10-03,Nibiru,4,60\n", "Nibiru"],
  ])("refuses %s", async (_, content, part) => {
    const world = await freshWorld();
    const path = join(temporaryFolder(), "sent.txt");
    writeFileSync(path, content);
    const refused = await refusalIn(world, "log", "import", "--file", path, ...MORNING);
    expect(refused.message).toContain(part);
    expect((await log(world, "list")).rows).toBe(0);
  });

  it("refuses a file of 50 MB, and a FITS file cut short", async () => {
    const world = await freshWorld();
    const path = join(temporaryFolder(), "sent");
    writeFileSync(path, new Uint8Array(50 * 1_048_576));
    expect((await refusalIn(world, "log", "import", "--file", path)).message).toContain("too large");
    writeFileSync(path, readFileSync(sample("light")).subarray(0, 2000));
    expect((await refusalIn(world, "log", "import", "--file", path)).message).toContain("cut short");
  });
});

describe("/log progress", () => {
  it("sums hours by hand against hours wanted", async () => {
    const world = await freshWorld();
    // 24 × 180 s and 20 × 180 s are 2.2 h; 12 × 300 s is 1 h.
    await log(world, "add", "--line", "NGC 6888 24x180 oiii", "--night", "2026-09-30");
    await log(world, "add", "--line", "NGC 6888 20x180 oiii", "--night", "2026-10-02");
    await log(world, "add", "--line", "NGC 6888 12x300 ha", "--night", "2026-10-02");
    await log(world, "want", "--target", "ngc6888", "--filter", "oiii", "--hours", "10");
    const { targets, tonight, finish } = await log(world, "progress");
    const [oiii, ha] = targets;
    expect(oiii).toMatchObject({ object: "NGC 6888", passband: "o-iii", wantedHours: 10, frames: 44 });
    expect(oiii.clockHours).toBeCloseTo(2.2, 10);
    expect(oiii.leftHours).toBeCloseTo(7.8, 10);
    expect(oiii.countingHours).toBeLessThan(2.2);
    expect(ha).toMatchObject({ passband: "h-alpha", wantedHours: null, leftHours: null });
    expect(ha.clockHours).toBeCloseTo(1, 10);
    expect(tonight[0]).toMatchObject({ object: "NGC 6888", passband: "o-iii" });
    expect(tonight[0].usableHours).toBeGreaterThan(1);
    expect(finish).toMatchObject({ kind: "unknown", nightsGiven: 2 });
  });

  it("draws a stair, and estimates once there are nights enough", async () => {
    const world = await freshWorld();
    for (const night of ["2026-09-12", "2026-09-20", "2026-10-02"]) {
      await log(world, "add", "--line", "NGC 6888 40x180 oiii", "--night", night);
    }
    await log(world, "want", "--target", "ngc6888", "--filter", "oiii", "--hours", "12");
    const answer = await answerIn(world, "log", ...MORNING);
    expect(answer.charts).toMatchObject([{ kind: "progress" }]);
    // Eight weeks gave 6 h, 0.75 h a week: the 6 h left take 8 weeks.
    expect((answer.figures as Figures).finish).toMatchObject({
      kind: "estimate",
      hoursPerWeek: 0.75,
      weeks: 8,
    });
  });

  it("says that there is nothing yet", async () => {
    const answer = await answerIn(await freshWorld(), "log");
    expect(answer.summary).toContain("Nothing is logged yet");
    expect(answer.charts).toEqual([]);
  });
});

describe("/log undo", () => {
  it("takes back the latest batch alone, sums and all, until none is left", async () => {
    const world = await freshWorld();
    await log(world, "add", "--line", "M33 10x60 lum");
    await log(world, "import", "--file", sample("light"), "--file-2", sample("dark"));
    expect(await log(world, "undo")).toMatchObject({ removedCount: 2 });
    expect((await log(world, "progress")).targets).toHaveLength(1);
    expect(await log(world, "undo")).toMatchObject({ removedCount: 1 });
    expect((await log(world, "progress")).targets).toEqual([]);
    expect((await refusalIn(world, "log", "undo")).message).toContain("empty");
  });

  it("reaches nobody else's log", async () => {
    const world = await freshWorld();
    await log(world, "add", "--line", "M33 10x60 lum");
    const refused = await refusalIn(world, "log", "undo", "--as", "wren");
    expect(refused.message).toContain("empty");
    const wren = await answerIn(world, "log", "list", "--as", "wren");
    expect(wren.figures).toMatchObject({ rows: 0 });
    expect((await log(world, "list")).rows).toBe(1);
  });
});

describe("/log pool", () => {
  it("adds up the hours of those who joined, by filter, and of nobody else", async () => {
    const world = await freshWorld();
    await log(world, "add", "--line", "NGC 6888 20x180 oiii");
    await log(world, "add", "--line", "NGC 6888 40x180 oiii", "--as", "wren", "--site", "54.5,-2.6");
    await log(
      world,
      "add",
      "--line",
      "NGC 6888 60x180 oiii",
      "--as",
      "hollis",
      "--site",
      "54.5,-2.6",
      "--rig",
      "Ten-inch",
    );
    await log(world, "pool", "--target", "NGC 6888", "--filter", "oiii", "--hours", "20");
    await log(world, "pool", "--target", "NGC 6888", "--join", "--as", "wren");
    const { pools } = await log(world, "pool");
    expect(pools).toEqual([
      {
        object: "NGC 6888",
        filters: [{ passband: "o-iii", wantedHours: 20, inHandHours: 3, leftHours: 17 }],
        members: [
          { name: "me", hours: 1 },
          { name: "wren", hours: 2 },
        ],
      },
    ]);
  });

  it("is left by whom it counts, and closed by an organiser alone", async () => {
    const world = await freshWorld();
    await log(world, "pool", "--target", "M33", "--filter", "lum", "--hours", "20");
    const refused = await refusalIn(world, "log", "pool", "--target", "M33", "--close", "--as", "wren");
    expect(refused.option).toBe("close");
    await log(world, "pool", "--target", "M33", "--leave");
    expect((await log(world, "pool")).pools[0].members).toEqual([]);
    await log(world, "pool", "--target", "M33", "--close");
    expect((await log(world, "pool")).pools).toEqual([]);
  });

  it.each([
    [["--hours", "5"], "target"],
    [["--target", "M33", "--hours", "5"], "filter"],
    [["--target", "M33", "--hours", "-5", "--filter", "lum"], "hours"],
    [["--target", "M33", "--join", "--leave"], "leave"],
  ] as const)("refuses %s", async (words, option) => {
    expect((await refusalIn(await freshWorld(), "log", "pool", ...words)).option).toBe(option);
  });
});

describe("a member's data", () => {
  it("holds the log, and is gone with it", async () => {
    const world = await freshWorld();
    await log(world, "add", "--line", "M33 10x60 lum");
    const shown = await world.context().books.members.exportAll("fell-end", "me");
    expect(shown.log_frames).toMatchObject([{ object: "M33", frames: 10 }]);
    await world.context().books.members.eraseAll("fell-end", "me");
    const left = await askIn(world, ["log", "list"]);
    expect(left.kind === "answered" && left.answer.figures).toMatchObject({ rows: 0 });
  });
});

/** Rows apart from their order: two added in one moment have none. */
function sorted(table: string): string[] {
  return table.trim().split("\r\n").sort();
}
