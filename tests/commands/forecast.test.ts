/**
 * `/forecast`: figures by the contract, rows by the night, credits, and the word sample where it belongs.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import type { Answer } from "../../commands/answer.ts";
import type { Context, ForecastReport } from "../../commands/context.ts";
import { forecast } from "../../commands/forecast.ts";
import type { OptionValue } from "../../commands/request.ts";
import type { ForecastHour } from "../../core/weather/forecast-hour.ts";
import { hoursFrom, modelOf } from "../core/weather/sample-night.ts";
import { fakeContext, fakeRequest } from "./fake-context.ts";

/** Moonless, and dark from 20:23 to 05:32 summer time. */
const AT = "2026-10-10T17:00:00Z";
const CREDITS = ["Weather by somebody."];

function report(...models: ForecastReport["models"]): ForecastReport {
  return { models, credits: models.length > 0 ? CREDITS : [], problems: [] };
}

/** Ten days from noon on, all alike. */
function tenDays(weather: Partial<ForecastHour>): ForecastHour[] {
  return hoursFrom("2026-10-10T12:00", 240, () => weather);
}

async function ask(
  said: ForecastReport,
  options: Readonly<Record<string, OptionValue>> = {},
  at = AT,
): Promise<Answer> {
  const context = fakeContext({
    books: { clubs: { settings: async () => ({ limits: {} }) } } as unknown as Context["books"],
    forecasts: { at: async () => said },
    places: { find: async () => [] },
    timeZoneAt: () => "Europe/London",
  });
  return forecast.answer(fakeRequest("forecast", { site: "54.5, -2.6", ...options }, at), context);
}

type NightFigure = Readonly<Record<string, unknown>>;

function nightsOf(answer: Answer): readonly NightFigure[] {
  return answer.figures.nights as unknown as readonly NightFigure[];
}

describe("/forecast", () => {
  it("gives a verdict, a window and the figures of the contract", async () => {
    const answer = await ask(report(modelOf(tenDays({ cloudPercent: 10 }))), { night: "2026-10-10" });
    const [night] = nightsOf(answer);
    expect(night).toMatchObject({ night: "2026-10-10", verdict: "go", outlook: false, agreement: null });
    expect(night?.meanCloudPercent).toBeCloseTo(10, 9);
    expect(night?.usableHours).toBeCloseTo(9.14, 1);
    expect(JSON.stringify(night?.window)).toMatch(
      /^\{"start":"2026-10-10T19:2\d:.*Z","end":"2026-10-11T04:3\d:.*Z"\}$/,
    );
    expect(answer.figures.providers).toEqual([
      { name: "Provider", model: "model", issuedAt: null, fetchedAt: null },
    ]);
    expect(answer.credits).toEqual(CREDITS);
    expect(answer.summary).toMatch(/^Go tonight from 20:2\d to 05:3\d: 9.1 of 9.1 dark hours usable\. Moon /);
  });

  it("shows a row a night: verdicts, then outlooks, then nothing", async () => {
    const answer = await ask(report(modelOf(tenDays({ cloudPercent: 10 }))), { nights: 10 });
    expect(nightsOf(answer).map(({ verdict, outlook }) => [verdict, outlook])).toEqual([
      ...Array.from({ length: 4 }, () => ["go", false]),
      ...Array.from({ length: 4 }, () => ["go", true]),
      ...Array.from({ length: 2 }, () => [null, false]),
    ]);
    const rows = answer.sections[0]?.table?.rows ?? [];
    expect(rows).toHaveLength(10);
    expect(rows[0]?.slice(0, 2)).toEqual(["Sat 10 Oct", "go"]);
    expect(rows[5]?.[1]).toBe("outlook: go");
    expect(rows[9]?.[1]).toBe("no verdict");
  });

  it("gives tonight and the outlook's seven nights when nothing is said", async () => {
    const answer = await ask(report(modelOf(tenDays({ cloudPercent: 10 }))));
    expect(nightsOf(answer)).toHaveLength(8);
  });

  it("gives no verdict, and null figures, without a forecast", async () => {
    const answer = await ask(report(), { night: "2026-10-10" });
    expect(nightsOf(answer)[0]).toMatchObject({
      verdict: null,
      window: null,
      usableHours: null,
      meanCloudPercent: null,
      agreement: null,
    });
    expect(answer.summary).toMatch(/^No verdict tonight\. No forecast is at hand for this night\. Moon /);
    expect(answer.credits).toEqual([]);
  });

  it("names quantity, value and limit of what speaks against a night", async () => {
    const answer = await ask(report(modelOf(tenDays({ gustMetresPerSecond: 15 }))), { night: "2026-10-10" });
    expect(nightsOf(answer)[0]?.verdict).toBe("no-go");
    expect(nightsOf(answer)[0]?.reasons).toContain(
      "Gusts reach 54 km/h through all 9 h 9 min of darkness; the limit is 40 km/h.",
    );
  });

  it("says that the models disagree when nothing in their median speaks against a marginal night", async () => {
    const clear = modelOf(tenDays({ cloudPercent: 0 }));
    const cloudy = modelOf(tenDays({ cloudPercent: 55 }));
    const answer = await ask(report(clear, cloudy), { nights: 2 });
    expect(nightsOf(answer)[0]?.verdict).toBe("marginal");
    expect(answer.sections[0]?.table?.rows[0]?.[4]).toBe("models disagree");
  });

  it("says sample in the title when the hours are invented", async () => {
    const answer = await ask(report(modelOf(tenDays({}), { sample: true })), { night: "2026-10-10" });
    expect(answer.title).toMatch(/^Sample forecast/);
    expect((await ask(report(modelOf(tenDays({}))))).title).toMatch(/^Forecast/);
  });

  it("shows cloud in eighths, steadiness and transparency with their figures", async () => {
    const hours = tenDays({ cloudPercent: 25, upperWindMetresPerSecond: 45, aerosolOpticalDepth: 0.5 });
    const answer = await ask(report(modelOf(hours)), { night: "2026-10-10" });
    const lines = answer.sections.flatMap((section) => section.lines).join("\n");
    expect(lines).toContain("Cloud in eighths, on the hour from 21:00: 2 2 2 2 2 2 2 2 2.");
    expect(lines).toContain("unsteady, by 45 m/s of wind near 250 hPa (rough)");
    expect(lines).toContain("hazy, aerosol depth 0.50");
  });

  it("names the limits it leans on", async () => {
    const answer = await ask(report(modelOf(tenDays({}))));
    const lines = answer.sections.flatMap((section) => section.lines).join("\n");
    expect(lines).toContain("Limits: cloud 30 %, high thin cloud 50 %, gusts 40 km/h");
  });

  it("passes on what failed", async () => {
    const answer = await ask({ models: [], credits: [], problems: ["MET Norway is failing."] });
    expect(answer.sections.at(-1)?.lines).toContain("MET Norway is failing.");
  });

  it.each([0, 17, -1])("refuses %d nights", async (nights) => {
    await expect(ask(report(), { nights })).rejects.toMatchObject({ option: "nights" });
  });
});
