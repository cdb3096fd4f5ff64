import { describe, expect, it } from "vitest";
import type { FramingChart } from "../../commands/chart.ts";
import { framing } from "../../commands/framing.ts";
import { answerTo, type Options, refusalOf, rigRoom, SITE } from "./rig-room.ts";

type Panel = { order: number; row: number; column: number; raDeg: number; decDeg: number };
type Figures = Record<string, number> & { panels: Panel[]; fits: boolean | null };

const figuresOf = async (options: Options) =>
  (await answerTo(framing, options)).figures as unknown as Figures;
const LENS = "250mm f/4, 23.5x15.7mm, 3.76um";

describe("/framing", () => {
  // Plain trigonometry: 2·atan(d/2f) and 206.265·p/f.
  it("tells the exact field and scale of 250 mm on 23.5 × 15.7 mm", async () => {
    const figures = await figuresOf({ target: "NGC 6888", rig: LENS });
    expect(figures.fieldWidthDeg).toBeCloseTo(5.3818, 4);
    expect(figures.fieldHeightDeg).toBeCloseTo(3.597, 4);
    expect(figures.scaleArcsecPerPx).toBeCloseTo(3.102, 3);
  });

  it("points one frame at a target that fits, the long side along it", async () => {
    const figures = await figuresOf({ target: "NGC 6888" });
    expect(figures.fits).toBe(true);
    expect(figures.objectInField).toBe(1);
    expect(figures.positionAngleDeg).toBe(130);
    expect(figures.panels).toHaveLength(1);
    expect(figures.panels[0]).toMatchObject({ order: 1, row: 1, column: 1 });
    // By hand: π/4 · 18′ · 12′ over 3.366° × 2.249° (tangents of half the sides).
    expect(figures.fillFraction).toBeCloseTo(((Math.PI / 4) * 0.3 * 0.2) / (3.3662 * 2.2489), 4);
  });

  it("answers the same turned by 180°, but for the angle", async () => {
    const one = await figuresOf({ target: "M31", angle: 20 });
    const other = await figuresOf({ target: "M31", angle: 200 });
    expect(other.fillFraction).toBeCloseTo(one.fillFraction ?? 0, 9);
    expect(other.objectInField).toBeCloseTo(one.objectInField ?? 0, 9);
    expect(other.fits).toBe(one.fits);
    expect(other.panels).toHaveLength(one.panels.length);
  });

  it("makes the least mosaic of what does not fit", async () => {
    const answer = await answerTo(framing, { target: "M31", rig: "800mm f/4, 23.5x15.7mm, 3.76um" });
    const figures = answer.figures as unknown as Figures;
    expect(figures.fits).toBe(false);
    expect(figures.panels.length).toBeGreaterThan(1);
    expect((figures.columns ?? 0) * (figures.rows ?? 0)).toBe(figures.panels.length);
    expect(answer.figures.mosaic).toMatchObject({ fits: true });
    expect(answer.summary).toMatch(/panels hold it whole/);
  });

  it("obeys a grid that was asked for where one frame would do", async () => {
    const figures = await figuresOf({ target: "NGC 6888", columns: 2, rows: 3, angle: 0, overlap: 20 });
    expect(figures.panels).toHaveLength(6);
    expect(figures.fits).toBe(true);
    const at = (column: number, row: number) =>
      figures.panels.find((panel) => panel.column === column && panel.row === row);
    // Columns towards east, rows towards north; 0.8 of the height apart.
    expect((at(1, 2)?.decDeg ?? 0) - (at(1, 1)?.decDeg ?? 0)).toBeCloseTo(0.8 * 2.249, 2);
    expect(at(2, 1)?.raDeg).toBeGreaterThan(at(1, 1)?.raDeg ?? 999);
  });

  it("frames an object without a size as a point, and says so", async () => {
    const answer = await answerTo(framing, { target: "Nameless" });
    expect(answer.figures).toMatchObject({ fillFraction: null, objectInField: null, fits: null });
    expect(answer.summary).toMatch(/size is not known/);
  });

  it("frames coordinates as a point", async () => {
    const answer = await answerTo(framing, { target: "23.46 30.66" });
    expect(answer.figures).toMatchObject({ fits: null, object: { raDeg: 23.46, decDeg: 30.66 } });
  });

  it("says how many panels would be too many", async () => {
    const answer = await answerTo(framing, { target: "M31", rig: "8000mm f/10, 6x4mm, 2.4um" });
    expect(answer.figures.beyond).not.toBeNull();
    expect(answer.summary).toMatch(/would take \d+ × \d+ panels/);
  });

  it("sets a reducer and another rig beside it", async () => {
    const answer = await answerTo(framing, { target: "M31", reducer: 0.8, "other-rig": LENS });
    const compared = answer.figures.compared as unknown as {
      fieldWidthDeg: number;
      scaleArcsecPerPx: number;
    }[];
    expect(compared).toHaveLength(2);
    expect(compared[0]?.scaleArcsecPerPx).toBeCloseTo((206.265 * 3.76) / 320, 3);
    expect(compared[1]?.fieldWidthDeg).toBeCloseTo(5.3818, 4);
  });

  it("takes the seeing as asked, as the site's, or as assumed and said", async () => {
    expect((await figuresOf({ target: "M31", seeing: 4 })).pixelsAcrossBlur).toBeCloseTo(4 / 1.9389, 3);
    expect((await figuresOf({ target: "M31" })).seeingArcsec).toBe(2.8);
    const unknown = rigRoom({ site: { ...SITE, seeingArcsec: null } });
    const answer = await answerTo(framing, { target: "M31" }, unknown);
    expect(answer.figures.assumptions).toEqual([expect.stringMatching(/blur/)]);
  });

  it("draws stars, neighbours and the target's ellipse, without a picture where none is served", async () => {
    const answer = await answerTo(framing, { target: "M31" });
    const chart = answer.charts[0] as FramingChart;
    expect(chart.neighbours.map(({ name }) => name)).toEqual(["M110"]);
    expect(chart.target).toMatchObject({ xiDeg: 0, etaDeg: 0, positionAngleDeg: 35 });
    expect(chart.picture).toBeNull();
    expect(chart.alt).toContain("M31");
    const crescent = (await answerTo(framing, { target: "NGC 6888" })).charts[0] as FramingChart;
    expect(crescent.stars).toHaveLength(1);
    expect(crescent.stars[0]).toMatchObject({ magnitude: 4 });
    // The star stands half a degree north.
    expect(crescent.stars[0]?.etaDeg).toBeCloseTo(0.5, 3);
  });

  it("lies on a survey's picture, turned as the frame, with its credit", async () => {
    const asked: unknown[] = [];
    const room = rigRoom({
      skyPictures: {
        skyPicture: async (question) => {
          asked.push(question);
          return { bytes: Uint8Array.of(1), mediaType: "image/jpeg", credit: "Somebody's survey" };
        },
      },
    });
    const answer = await answerTo(framing, { target: "NGC 6888", angle: 77 }, room);
    const chart = answer.charts[0] as FramingChart;
    expect(asked).toEqual([expect.objectContaining({ raDeg: 303.03, decDeg: 38.36, positionAngleDeg: 77 })]);
    expect(chart.picture?.spanDeg).toBeGreaterThan(chart.fieldWidthDeg);
    expect(answer.credits).toEqual(["Somebody's survey"]);
  });

  it("knows the Moon's extent", async () => {
    const { figures } = await answerTo(framing, { target: "Moon" }, rigRoom(), "2026-10-10T22:00:00Z");
    const object = figures.object as unknown as { name: string; kind: string; majorArcmin: number };
    expect(object).toMatchObject({ name: "Moon", kind: "moon" });
    // Swiss Ephemeris, by swetest, from 54.5° north, 2.6° west: the disc is 0°30′24.6″ across.
    expect(Math.abs(object.majorArcmin / 60 - 0.506837)).toBeLessThan(0.0005);
  });

  it("offers buttons that turn by 15° and add a panel, keeping the rest", async () => {
    const answer = await answerTo(framing, { target: "NGC 6888", rig: LENS, angle: 10 });
    const options = answer.next.filter(({ command }) => command === "framing").map((next) => next.options);
    expect(options.map((each) => each.angle)).toEqual([25, 355, 10, 10]);
    expect(options.every((each) => each.rig === LENS && each.target === "NGC 6888")).toBe(true);
    expect(options[2]).toMatchObject({ columns: 2, rows: 1 });
    expect(options[3]).toMatchObject({ columns: 1, rows: 2 });
    for (const next of answer.next) expect(next.label.length).toBeLessThanOrEqual(80);
  });

  it("carries the solar caution for the Sun, and for what stands beside it by day", async () => {
    const noon = "2026-10-10T12:00:00Z";
    const first = async (target: string, at: string) =>
      (await answerTo(framing, { target }, rigRoom(), at)).cautions[0]?.id;
    expect(await first("Sun", "2026-10-10T22:00:00Z")).toBe("sun");
    expect(await first("Beside the Sun", noon)).toBe("sun");
    expect(await first("Beside the Sun", "2026-10-10T22:00:00Z")).toBeUndefined();
    expect(await first("NGC 6888", noon)).toBeUndefined();
  });

  it.each<[Options, string, RegExp]>([
    [{ target: "M31", overlap: 90 }, "overlap", /from 0 to 50/],
    [{ target: "M31", columns: 400 }, "columns", /from 1 to 12/],
    [{ target: "M31", rows: 0 }, "rows", /from 1 to 12/],
    [{ target: "M31", columns: 2.5 }, "columns", /whole/],
    [{ target: "M31", angle: 1e9 }, "angle", /from -360 to 360/],
    [{ target: "M31", reducer: 0 }, "reducer", /from 0.2 to 6/],
    [{ target: "M31", seeing: 0 }, "seeing", /from 0.3 to 15/],
    [{ target: "M311" }, "target", /M31/],
    [{ target: "M31", rig: "400mm f/5.6, 23.5x15.7mm, 0um" }, "rig", /from 0.5 to 50/],
    [{ target: "M31", rig: "400mm f/5.6, 23.5x15.7mm, 1000000um" }, "rig", /from 0.5 to 50/],
    [{ target: "M31", rig: "400mm f/0.1, 23.5x15.7mm, 3.76um" }, "rig", /from 0.7 to 64/],
    [{ target: "M31", rig: "400mm f/5.6, 900x900mm, 3.76um" }, "rig", /from 1 to 254/],
    [{ target: "M31", "other-rig": "nothing" }, "other-rig", /no rig called/],
  ])("refuses %j, naming %s and its range", async (options, option, message) => {
    const refusal = await refusalOf(framing, options);
    expect(refusal.option).toBe(option);
    expect(refusal.message).toMatch(message);
  });
});
