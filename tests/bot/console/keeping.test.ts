import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { answerIn, askIn, refusalIn, worldIn } from "./asked.ts";

/** The figures of an answer, as JSON carries them. */
async function figuresIn(...asked: Parameters<typeof answerIn>) {
  return JSON.parse(JSON.stringify((await answerIn(...asked)).figures));
}

describe("the demo club", () => {
  it("begins with me, an organiser with one default site and one default rig", async () => {
    const world = await worldIn(temporaryFolder());
    const { sites } = await figuresIn(world, "site", "list");
    const { rigs } = await figuresIn(world, "rig", "list");
    expect(sites.map(({ name, default: is }: { name: string; default: boolean }) => [name, is])).toEqual([
      ["Fell End", true],
    ]);
    expect(rigs.map(({ name, default: is }: { name: string; default: boolean }) => [name, is])).toEqual([
      ["Eight-inch", true],
    ]);
    expect(sites[0].latitudeDeg).toBe(54.5);
    expect(sites[0].timeZone).toBe("Europe/London");
    const data = (await figuresIn(world, "mydata")).data;
    expect(data.members).toMatchObject([{ organiser: true }]);
  });

  it("has hills to the south of its site", async () => {
    const world = await worldIn(temporaryFolder());
    const [{ skyline }] = (await figuresIn(world, "site", "list")).sites;
    const height = (azimuth: number) =>
      skyline.find((point: { azimuthDeg: number }) => point.azimuthDeg === azimuth)?.altitudeDeg;
    expect(height(180)).toBeGreaterThan(height(0));
  });

  it("lets its members see the shared site and nobody else's rig", async () => {
    const world = await worldIn(temporaryFolder());
    expect((await figuresIn(world, "site", "list", "--as", "hollis")).sites).toMatchObject([
      { name: "Fell End", shared: true },
    ]);
    expect((await figuresIn(world, "rig", "list", "--as", "wren")).rigs).toMatchObject([
      { name: "Travel lens" },
    ]);
  });

  it("shows nothing of it in another club", async () => {
    const world = await worldIn(temporaryFolder());
    expect((await figuresIn(world, "site", "list", "--club", "Other Circle")).sites).toEqual([]);
    expect((await refusalIn(world, "night", "--club", "Other Circle")).option).toBe("site");
  });
});

describe("/site", () => {
  it("keeps, renames, moves, lists and forgets a site", async () => {
    const world = await worldIn(temporaryFolder());
    await answerIn(
      world,
      "site",
      "add",
      "--name",
      "Cape",
      "--latitude",
      "-33.9312",
      "--longitude",
      "18.4241",
      "--sky",
      "bortle 6",
    );
    await answerIn(
      world,
      "site",
      "edit",
      "--site",
      "cape",
      "--name",
      "Cape garden",
      "--sky",
      "19.5",
      "--default",
    );
    const { sites } = await figuresIn(world, "site", "list");
    expect(sites).toHaveLength(2);
    const named = (name: string) => sites.find((one: { name: string }) => one.name === name);
    expect(named("Cape garden")).toMatchObject({
      latitudeDeg: -33.93,
      longitudeDeg: 18.42,
      timeZone: "Africa/Johannesburg",
      sky: { kind: "reading", magArcsec2: 19.5 },
      default: true,
    });
    expect(named("Fell End").default).toBe(false);
    await answerIn(world, "site", "remove", "--site", "Cape garden");
    expect((await figuresIn(world, "site", "list")).sites).toHaveLength(1);
  });

  it("keeps a skyline, from words or a file, and draws it", async () => {
    const folder = temporaryFolder();
    const world = await worldIn(join(folder, "data"));
    const typed = await answerIn(world, "site", "horizon", "--site", "Fell End", "--profile", "0:12, 90:30");
    expect(typed.charts).toMatchObject([{ kind: "curve", name: "skyline" }]);
    const file = join(folder, "profile.txt");
    writeFileSync(file, "0 12\n90 30\n200 4\n");
    await answerIn(world, "site", "horizon", "--file", file);
    const [{ skyline }] = (await figuresIn(world, "site", "list")).sites;
    expect(skyline).toEqual([
      { azimuthDeg: 0, altitudeDeg: 12 },
      { azimuthDeg: 90, altitudeDeg: 30 },
      { azimuthDeg: 200, altitudeDeg: 4 },
    ]);
  });

  it("lets nobody change a site that is merely shared with them", async () => {
    const world = await worldIn(temporaryFolder());
    const refusal = await refusalIn(world, "site", "remove", "--site", "Fell End", "--as", "wren");
    expect(refusal.option).toBe("site");
    expect((await figuresIn(world, "site", "list")).sites).toHaveLength(1);
  });
});

describe("/rig", () => {
  it("keeps a rig by its figures, changes one figure and leaves the rest", async () => {
    const world = await worldIn(temporaryFolder());
    const add = [
      "rig",
      "add",
      "--name",
      "Small",
      "--focal-length",
      "400",
      "--f-ratio",
      "5.6",
      "--sensor",
      "23.5x15.7mm",
    ];
    await answerIn(world, ...add, "--pixel", "3.76", "--mono", "--guided", "--read-noise", "1.6");
    const { rig } = await figuresIn(
      world,
      "rig",
      "edit",
      "--rig",
      "small",
      "--reducer",
      "0.8",
      "--sensor-temp",
      "-15",
    );
    expect(rig).toMatchObject({
      name: "Small",
      focalLengthMm: 320,
      focalRatio: expect.closeTo(4.48, 9),
      guided: true,
      readNoiseElectrons: 1.6,
      sensor: { widthMm: 23.5, heightMm: 15.7, pixelUm: 3.76, colour: false },
      sensorTemperature: { kind: "set", celsius: -15 },
    });
    expect(rig.assumptions.join(" ")).not.toMatch(/uncooled|unguided|Read noise/);
  });

  it("takes a description, and aperture in place of the ratio", async () => {
    const world = await worldIn(temporaryFolder());
    const described = await figuresIn(
      world,
      "rig",
      "add",
      "--name",
      "One line",
      "--description",
      "135mm f/2.8 APS-C colour tracker",
    );
    const words = [
      "rig",
      "add",
      "--name",
      "Figures",
      "--focal-length",
      "800",
      "--aperture",
      "200",
      "--sensor",
      "IMX571",
    ];
    const figures = await figuresIn(world, ...words, "--mono");
    expect(described.rig).toMatchObject({ focalLengthMm: 135, mount: "tracker", sensor: { name: "APS-C" } });
    expect(figures.rig).toMatchObject({ focalRatio: 4, apertureMm: 200 });
  });

  it("keeps a visual rig with its eyepieces", async () => {
    const world = await worldIn(temporaryFolder());
    const words = [
      "rig",
      "add",
      "--name",
      "By eye",
      "--aperture",
      "250",
      "--f-ratio",
      "4.8",
      "--eyepieces",
      "30/68, 12/82",
    ];
    expect((await figuresIn(world, ...words)).rig).toMatchObject({
      kind: "visual",
      apertureMm: 250,
      focalLengthMm: 1200,
      eyepieces: [{ focalLengthMm: 30 }, { focalLengthMm: 12 }],
    });
    const edited = await figuresIn(world, "rig", "edit", "--rig", "By eye", "--f-ratio", "5", "--default");
    expect(edited.rig).toMatchObject({ focalLengthMm: 1250, default: true });
  });

  it("brings quantum efficiency to the figures given", async () => {
    const world = await worldIn(temporaryFolder());
    const words = [
      "rig",
      "add",
      "--name",
      "Measured",
      "--focal-length",
      "400",
      "--f-ratio",
      "5.6",
      "--sensor",
      "IMX571",
      "--mono",
    ];
    const { rig } = await figuresIn(world, ...words, "--efficiency", "656.3:0.3, 500.7:0.5");
    const at = (nm: number) =>
      rig.sensor.channels[0].efficiency.find((point: { wavelengthNm: number }) => point.wavelengthNm === nm)
        .efficiency;
    expect(at(656.3)).toBeCloseTo(0.3, 9);
    expect(at(500.7)).toBeCloseTo(0.5, 9);
  });

  it("keeps filters with subs and a measured sky, and forgets them", async () => {
    const world = await worldIn(temporaryFolder());
    const filter = ["rig", "filter", "--rig", "Eight-inch", "--name", "Narrow"];
    // 600 ADU above the dark frame, 0.25 e/ADU, 300 s: 0.5 e/s.
    const measured = ["--measured-adu", "1100", "--measured-offset", "500", "--measured-seconds", "300"];
    const { rig } = await figuresIn(world, ...filter, "--bands", "656.3/3", "--sub", "600", ...measured);
    expect(rig.filters.map(({ name }: { name: string }) => name)).toContain("Narrow");
    expect(rig.subSeconds.Narrow).toBe(600);
    expect(rig.measuredSkies).toEqual([{ filterName: "Narrow", electronsPerPixelPerSecond: 0.5 }]);
    const after = (await figuresIn(world, ...filter, "--remove")).rig;
    expect(after.filters.map(({ name }: { name: string }) => name)).not.toContain("Narrow");
    expect([after.subSeconds.Narrow, after.measuredSkies]).toEqual([undefined, []]);
  });
});

describe("/mydata", () => {
  it("exports everything of a member's as one file, and erases it", async () => {
    const world = await worldIn(temporaryFolder());
    const exported = await answerIn(world, "mydata", "export");
    const [file] = exported.attachments ?? [];
    const read = JSON.parse(new TextDecoder().decode(file?.bytes));
    expect(read.sites).toMatchObject([{ name: "Fell End", latitudeDeg: 54.5 }]);
    expect(read.rigs).toMatchObject([{ name: "Eight-inch", rig: { kind: "camera" } }]);
    expect(JSON.stringify(read)).not.toMatch(/Travel lens|hollis/);
    await answerIn(world, "mydata", "erase", "--confirm");
    expect(Object.values((await figuresIn(world, "mydata", "export")).data).flat()).toEqual([]);
    expect((await figuresIn(world, "rig", "list", "--as", "wren")).rigs).toHaveLength(1);
    expect((await askIn(world, ["night"])).kind).toBe("refused");
  });
});

describe("/about", () => {
  it("names its sources, credits, limits and the solar caution", async () => {
    const about = await answerIn(await worldIn(temporaryFolder()), "about");
    expect(about.credits.join(" ")).toMatch(/Open-Meteo.*MET Norway/s);
    const text = JSON.stringify(about.sections);
    for (const word of ["Krisciunas", "Kasten", "ISO 12312-2", "rough"]) expect(text).toContain(word);
  });

  it("ships the notices it refers to", () => {
    expect(readFileSync(join(import.meta.dirname, "../../../NOTICE"), "utf8")).toContain("d3-celestial");
  });
});
