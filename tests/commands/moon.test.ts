/** `/moon`: phase, terminator, best nights, and a disc right for the observer. */
import { describe, expect, it } from "vitest";
import { AskError } from "../../commands/ask-error.ts";
import { moon } from "../../commands/moon.ts";
import { fakeRequest } from "./fake-context.ts";
import { FELL_END, worldWith } from "./outreach-site.ts";

const world = worldWith(FELL_END);
const ask = (options: Record<string, string | number>, at = "2026-11-17T19:30:00Z") =>
  moon.answer(fakeRequest("moon", options, at), world);

type BestNight = {
  night: string;
  best: string;
  sunAltitudeDeg: number;
  moonAltitudeDeg: number;
  morning: boolean;
  window: { start: string; end: string };
};

describe("/moon", () => {
  it("gives the disc under names that explain themselves", async () => {
    const { figures } = await ask({});
    for (const name of [
      "illuminatedFraction",
      "phaseAngleDeg",
      "ageDays",
      "diameterArcmin",
      "librationLongitudeDeg",
      "librationLatitudeDeg",
      "axisPositionAngleDeg",
      "brightLimbPositionAngleDeg",
      "parallacticAngleDeg",
      "colongitudeDeg",
    ]) {
      expect(figures).toHaveProperty(["disc", name]);
    }
  });

  it("names what stands on the terminator: all of it with the Sun 0.5° to 8° up", async () => {
    const { onTerminator } = (await ask({})).figures as {
      onTerminator: { name: string; sunAltitudeDeg: number; latitudeDeg: number }[];
    };
    expect(onTerminator.length).toBeGreaterThan(5);
    for (const { sunAltitudeDeg } of onTerminator) {
      expect(sunAltitudeDeg).toBeGreaterThanOrEqual(0.5);
      expect(sunAltitudeDeg).toBeLessThanOrEqual(8);
    }
  });

  it("finds nights for Copernicus a day or two after first quarter and near last quarter", async () => {
    const answer = await ask({ feature: "copernicus", nights: 60 });
    const { bestNights, phases } = answer.figures as {
      bestNights: BestNight[];
      phases: { name: string; at: string }[];
    };
    expect(bestNights.length).toBeGreaterThan(1);
    for (const one of bestNights) {
      expect(one.sunAltitudeDeg).toBeGreaterThanOrEqual(0.5);
      expect(one.sunAltitudeDeg).toBeLessThanOrEqual(8);
      expect(one.moonAltitudeDeg).toBeGreaterThan(14.9);
    }
    // At 20° west its sunrise comes 20/12.2 = 1.6 days after the one at the middle of the disc, which
    // comes within 0.7 days of first quarter; the Sun climbs to 8° within another day.
    const [evening] = bestNights.filter(({ morning }) => morning);
    const quarter = phases.find(({ name }) => name === "first-quarter");
    const daysAfter = (Date.parse(evening?.best ?? "") - Date.parse(quarter?.at ?? "")) / 864e5;
    const within = ((daysAfter % 29.53) + 29.53) % 29.53;
    expect(within).toBeGreaterThan(0.7);
    expect(within).toBeLessThan(3.3);
  });

  it("marks a feature asked for on the drawing and says so", async () => {
    const [chart] = (await ask({ feature: "Grimaldi" })).charts;
    if (chart?.kind !== "moon") throw new Error("the Moon's disc is missing");
    expect(chart.features.some(({ name }) => name === "Grimaldi")).toBe(true);
    expect(chart.caption).toContain("Grimaldi is marked");
  });

  it("carries the solar caution first when a new Moon stands beside a Sun that is up", async () => {
    // New Moon of 2026 December 9, 00:52 UT.
    const answer = await ask({}, "2026-12-09T11:30:00Z");
    expect(answer.cautions[0]?.id).toBe("sun");
    expect(answer.charts[0]?.cautions[0]).toBe(answer.cautions[0]?.text);
  });

  it("carries none on an evening with the Moon at first quarter", async () => {
    expect((await ask({})).cautions).toEqual([]);
  });

  it("knows what people call things besides their IAU names", async () => {
    const { feature } = (await ask({ feature: "straight wall" })).figures as {
      feature: { name: string };
    };
    expect(feature.name).toBe("Rupes Recta");
  });

  it("completes features by their beginnings, and leaves sites to the door", async () => {
    const request = fakeRequest("moon", {}, "2026-11-17T19:30:00Z");
    const names = await moon.complete?.("feature", "cop", request, world);
    expect(names?.[0]?.name).toBe("Copernicus");
    expect(await moon.complete?.("site", "fell", request, world)).toBeNull();
  });

  it.each([
    [{ feature: "Copernikus" }, "feature", "Copernicus"],
    [{ nights: 0 }, "nights", "400"],
    [{ night: "2026-13-01" }, "night", "YYYY-MM-DD|calendar"],
    [{ time: "25:00" }, "time", "HH:MM"],
  ])("refuses %j, naming the option and what would be right", async (options, option, hint) => {
    const refusal = await ask(options as Record<string, string>).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(AskError);
    expect((refusal as AskError).option).toBe(option);
    expect((refusal as AskError).message).toMatch(new RegExp(hint));
  });
});
