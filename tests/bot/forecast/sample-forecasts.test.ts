/**
 * The demo's sample weather: laid on tonight by whole days, marked, and shown only where nothing is known.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import { liveOrSample, sampleForecasts } from "../../../bot/forecast/sample-forecasts.ts";
import { NO_FORECASTS, readSavedForecast } from "../../../bot/forecast/saved-files.ts";
import type { Forecasts } from "../../../commands/context.ts";
import { OBSERVING_LIMITS } from "../../../config/observing-limits.ts";
import { nightHolding } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { nightVerdict } from "../../../core/weather/verdict.ts";
import { threeModels } from "./invented-answers.ts";

const FELL_END = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 300, timeZone: "Europe/London" };

describe("sampleForecasts", () => {
  it.each([
    "2026-01-15T17:00:00Z",
    "2026-03-29T19:00:00Z",
    "2026-06-21T21:00:00Z",
    "2026-10-10T12:30:00Z",
    "2026-10-11T02:00:00Z",
    "2026-12-21T08:50:00Z",
  ])("gives the night at hand at %s a go of its own, marked as a sample", async (instant) => {
    const at = new Date(instant);
    const { models, credits } = await sampleForecasts().at(FELL_END, at);
    const times = nightTimes(FELL_END, nightHolding(at, FELL_END));
    const verdict = nightVerdict(times, models, OBSERVING_LIMITS, at);
    expect(verdict).toMatchObject({ kind: "go", sample: true });
    expect(credits.join(" ")).toContain("invented");
  });

  it("moves by whole days", async () => {
    const { models } = await sampleForecasts().at(FELL_END, new Date("2026-10-10T17:34:56Z"));
    expect(models[0]?.hours[0]?.at).toEqual(new Date("2026-10-09T12:00:00Z"));
  });

  it("names no provider", async () => {
    const { models } = await sampleForecasts().at(FELL_END, new Date("2026-10-10T17:00:00Z"));
    expect(new Set(models.map(({ provider }) => provider))).toEqual(new Set(["Sample"]));
  });
});

describe("liveOrSample", () => {
  const at = new Date("2026-10-10T17:00:00Z");

  it("prefers live weather", async () => {
    const live: Forecasts = { at: async () => readSavedForecast(JSON.stringify(threeModels(20)), "live") };
    const report = await liveOrSample(live, sampleForecasts()).at(FELL_END, at);
    expect(report.models.some(({ sample }) => sample)).toBe(false);
  });

  it("keeps the reasons why there was none", async () => {
    const down: Forecasts = { at: async () => ({ models: [], credits: [], problems: ["It is down."] }) };
    const report = await liveOrSample(down, sampleForecasts()).at(FELL_END, at);
    expect(report.models.every(({ sample }) => sample)).toBe(true);
    expect(report.problems).toEqual(["It is down."]);
    expect((await liveOrSample(NO_FORECASTS, sampleForecasts()).at(FELL_END, at)).problems).toEqual([]);
  });
});
