import { describe, expect, it } from "vitest";
import type { Answer } from "../../commands/answer.ts";
import { target } from "../../commands/target.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import { hoursFrom, modelOf } from "../core/weather/sample-night.ts";
import { eveningContext } from "./evening-context.ts";
import { fakeRequest } from "./fake-context.ts";

const AT = "2026-10-10T17:00:00Z";

type Point = {
  readonly at: string;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly airmass: number | null;
  readonly hourAngleDeg: number;
  readonly moonSeparationDeg: number;
  readonly skyMagArcsec2: number | null;
  readonly clearOfHorizon: boolean;
};

async function ask(
  options: Record<string, string | number>,
  at = AT,
  context = eveningContext(),
): Promise<Answer> {
  return target.answer(fakeRequest("target", options, at), context);
}

const trackOf = (answer: Answer) => answer.figures.track as unknown as readonly Point[];

describe("/target", () => {
  it("gives the figures of the contract", async () => {
    const { figures } = await ask({ target: "NGC 6888", filter: "656/7" });
    expect(figures.object).toMatchObject({ id: "NGC 6888", kind: "emission-nebula" });
    for (const name of [
      "track",
      "transit",
      "windows",
      "usableHours",
      "countingHours",
      "moonCost",
      "meridianFlip",
    ]) {
      expect(figures, name).toHaveProperty(name);
    }
    expect(trackOf({ figures } as Answer)[0]).toEqual({
      at: expect.any(String),
      altitudeDeg: expect.any(Number),
      azimuthDeg: expect.any(Number),
      airmass: expect.any(Number),
      hourAngleDeg: expect.any(Number),
      moonSeparationDeg: expect.any(Number),
      moonAltitudeDeg: expect.any(Number),
      skyMagArcsec2: null,
      clearOfHorizon: true,
    });
  });

  // Common practice, no source: from 43° north, 80° west, on 23 September at half past nine in the evening
  // (daylight time, four hours behind UTC), an object at 2h33m, +61.4° stands 35° up in the north-east.
  it("puts 2h33m +61.4° 35° up in the north-east from 43° north on a September evening", async () => {
    const instant = "2026-09-24T01:30:00Z";
    const answer = await ask({
      target: "02h33m +61d24m",
      site: "43, -80",
      from: instant,
      to: instant,
    });
    const [point, ...others] = trackOf(answer);
    expect(others).toEqual([]);
    expect(point?.altitudeDeg).toBeCloseTo(35, -0.3);
    expect(Math.abs((point?.altitudeDeg ?? 0) - 35)).toBeLessThan(1);
    expect(Math.abs((point?.azimuthDeg ?? 0) - 45)).toBeLessThan(22.5);
  });

  it("begins its track exactly at from, steps on, and does not pass to", async () => {
    const answer = await ask({
      target: "M33",
      from: "2026-10-10T20:00:30Z",
      to: "2026-10-10T20:25:00Z",
      "step-minutes": 10,
    });
    expect(trackOf(answer).map(({ at }) => at)).toEqual([
      "2026-10-10T20:00:30.000Z",
      "2026-10-10T20:10:30.000Z",
      "2026-10-10T20:20:30.000Z",
    ]);
  });

  it("cuts its windows to clear sky where a forecast is at hand", async () => {
    const cloudyAfterMidnight = hoursFrom("2026-10-10T12:00", 48, (hour) => ({
      cloudPercent: hour < 12 ? 0 : 100,
    }));
    const report = { models: [modelOf(cloudyAfterMidnight)], credits: ["Credit."], problems: [] };
    const open = await ask({ target: "M33" });
    const cut = await ask({ target: "M33" }, AT, eveningContext({ report }));
    expect(cut.figures.usableHours).toBeLessThan(open.figures.usableHours as number);
    const [window] = cut.figures.windows as unknown as { end: string }[];
    expect(window?.end.slice(0, 13)).toBe("2026-10-10T23");
    expect(cut.credits).toEqual(["Credit."]);
  });

  it("answers that an object stays below the horizon", async () => {
    const answer = await ask({ target: "NGC 104" });
    expect(answer.summary).toMatch(/below the horizon all night/);
    expect(answer.figures.windows).toEqual([]);
    expect(answer.figures.moonCost).toBeNull();
  });

  it("finds the Moon costing [O III] more than Hα", async () => {
    const at = "2026-10-24T17:00:00Z";
    const cost = async (filter: string) =>
      (await ask({ target: "M31", filter }, at)).figures.moonCost as number;
    expect(await cost("501/7")).toBeGreaterThan(await cost("656/7"));
  });

  it("shows both bands of a filter, and the worse cost for the whole", async () => {
    const { figures } = await ask({ target: "M31", filter: "656/7+501/7" }, "2026-10-24T17:00:00Z");
    const bands = figures.bands as unknown as { name: string; moonCost: number }[];
    expect(bands.map(({ name }) => name)).toEqual(["Hα", "[O III]"]);
    expect(figures.moonCost).toBe(Math.max(...bands.map(({ moonCost }) => moonCost)));
  });

  it("puts the solar text first for the Sun and for what stands beside a risen Sun", async () => {
    const noon = "2026-10-10T12:00:00Z";
    for (const options of [{ target: "Sun" }, { target: "Mercury", from: noon, to: noon }]) {
      const answer = await ask(options, noon);
      expect(answer.cautions[0]).toEqual({ id: "sun", text: CAUTION_TEXTS.sun });
      expect(answer.charts[0]?.cautions[0]).toBe(CAUTION_TEXTS.sun);
    }
  });

  it("brings no solar text to a night far from the Sun", async () => {
    expect((await ask({ target: "M33" })).cautions.map(({ id }) => id)).not.toContain("sun");
  });

  it.each([
    [{ target: "Crecent" }, "target"],
    [{ target: "M33", from: AT }, "to"],
    [{ target: "M33", from: AT, to: "2026-10-09T00:00Z" }, "to"],
    [{ target: "M33", "step-minutes": 0 }, "step-minutes"],
    [
      { target: "M33", from: "2026-01-01T00:00Z", to: "2027-01-01T00:00Z", "step-minutes": 1 },
      "step-minutes",
    ],
    [{ target: "M33", night: "2026-02-30" }, "night"],
    [{ target: "M33", sky: "30" }, "sky"],
    [{ target: "M33", filter: "656/700" }, "filter"],
  ])("refuses %j by its option", async (options, option) => {
    await expect(ask(options as Record<string, string>)).rejects.toMatchObject({ name: "AskError", option });
  });
});
