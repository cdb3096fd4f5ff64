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
    expect(answer.summary).toMatch(/below the horizon while it is dark/);
    expect(answer.figures.windows).toEqual([]);
    expect(answer.figures.moonCost).toBeNull();
  });

  it("does not put a low Moon below the horizon", async () => {
    // 2026 June 20, 54.5° north, 2.6° west: civil dusk 21:51 UT; the Moon sets at 23:46 UT (Swiss Ephemeris, by swetest).
    const { summary, title } = await ask({ target: "Moon" }, "2026-06-20T18:00:00Z");
    expect(title).toMatch(/^The Moon on/);
    expect(summary).toMatch(/never clears the skyline and 30° in the dark; at most it stands \d+° high/);
  });

  it("places a moving target at the clock's instant, or where the track begins", async () => {
    // Swiss Ephemeris, by swetest: the Moon's apparent place from 54.5° north, 2.6° west, 0 m, at 17:00 and 20:00 UT.
    const from = "2026-10-10T20:00:00Z";
    const placeOf = ({ figures }: Answer) => figures.object as unknown as { raDeg: number; decDeg: number };
    const now = await ask({ target: "Moon" });
    const tracked = await ask({ target: "Moon", from, to: from });
    expect([now.figures.placeAt, tracked.figures.placeAt]).toEqual([
      "2026-10-10T17:00:00.000Z",
      "2026-10-10T20:00:00.000Z",
    ]);
    // Places are to hold to 5″, which is 0.0014°.
    expect(Math.abs(placeOf(now).raDeg - 194.5487209)).toBeLessThan(0.0014);
    expect(Math.abs(placeOf(now).decDeg + 11.4050651)).toBeLessThan(0.0014);
    expect(Math.abs(placeOf(tracked).raDeg - 196.0999375)).toBeLessThan(0.0014);
    expect(Math.abs(placeOf(tracked).decDeg + 12.0271108)).toBeLessThan(0.0014);
  });

  it("names what its hours lean on", async () => {
    const { figures } = await ask({
      target: "M31",
      rig: "400mm f/5.6, 23.5x15.7mm, 3.76um",
      filter: "656/7",
    });
    const said = (figures.assumptions as unknown as string[]).join(" ");
    for (const word of [/pass 90 % of the light/, /filter .* 85 %/, /air .* 10 °C/, /Haze/, /sky of/]) {
      expect(said).toMatch(word);
    }
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
