/**
 * Open-Meteo's answers, good and odd, read without a network. Shapes are the service's, values invented.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import { openMeteoPauseMs } from "../../../bot/forecast/open-meteo.ts";
import { readOpenMeteo } from "../../../bot/forecast/open-meteo-answer.ts";
import { UnreadableAnswer } from "../../../bot/forecast/polite-host.ts";
import { openMeteoAnswer, repeated, threeModels } from "./invented-answers.ts";

function firstHour(answer: unknown) {
  return readOpenMeteo(answer, "Open-Meteo").models[0]?.hours[0];
}

describe("readOpenMeteo", () => {
  it("tells several models apart by the ends of the keys", () => {
    const { models, problems } = readOpenMeteo(threeModels(20), "Open-Meteo");
    expect(models.map((model) => model.model)).toEqual(["icon_seamless", "gfs_seamless", "ecmwf_ifs025"]);
    expect(models[1]?.hours[0]).toMatchObject({
      at: new Date("2026-10-10T00:00Z"),
      cloudPercent: 20,
      temperatureCelsius: 9,
      dewPointCelsius: null,
    });
    expect(problems).toEqual([]);
  });

  it("reads the lone model that covers the place, whose keys have lost their ends", () => {
    const { models } = readOpenMeteo(openMeteoAnswer({ cloud_cover: repeated(40) }), "Open-Meteo");
    expect(models).toHaveLength(1);
    expect(models[0]?.hours).toHaveLength(24);
  });

  it("tells layers, levels and spreads from models", () => {
    const { models } = readOpenMeteo(
      openMeteoAnswer({
        cloud_cover: repeated(40),
        cloud_cover_low: repeated(10),
        cloud_cover_250hPa: repeated(90),
        cloud_cover_spread: repeated(5),
      }),
      "Open-Meteo",
    );
    expect(models).toHaveLength(1);
    expect(models[0]?.hours[0]).toMatchObject({ cloudPercent: 40, lowCloudPercent: 10 });
  });

  it("reads the names of earlier years", () => {
    expect(
      firstHour(
        openMeteoAnswer({ cloudcover: repeated(40), windspeed_10m: repeated(5) }, { windspeed_10m: "m/s" }),
      ),
    ).toMatchObject({ cloudPercent: 40, windMetresPerSecond: 5 });
  });

  it.each([
    ["km/h", 36, 10],
    ["m/s", 10, 10],
    ["mp/h", 10, 4.4704],
    ["kn", 10, 5.14444],
  ])("reads wind in %s", (unit, given, metresPerSecond) => {
    const hour = firstHour(openMeteoAnswer({ wind_speed_10m: repeated(given) }, { wind_speed_10m: unit }));
    expect(hour?.windMetresPerSecond).toBeCloseTo(metresPerSecond, 9);
  });

  it("reads °F, inches and feet", () => {
    const hour = firstHour(
      openMeteoAnswer(
        { temperature_2m: repeated(50), precipitation: repeated(1), visibility: repeated(10_000) },
        { temperature_2m: "°F", precipitation: "inch", visibility: "ft" },
      ),
    );
    expect(hour?.temperatureCelsius).toBeCloseTo(10, 9);
    expect(hour?.precipitationMm).toBeCloseTo(25.4, 9);
    expect(hour?.visibilityMetres).toBeCloseTo(3048, 9);
  });

  it("refuses a unit it does not know, and keeps the rest", () => {
    const { models, problems } = readOpenMeteo(
      openMeteoAnswer(
        { cloud_cover: repeated(40), wind_speed_10m: repeated(5) },
        { wind_speed_10m: "furlongs" },
      ),
      "Open-Meteo",
    );
    expect(models[0]?.hours[0]).toMatchObject({ cloudPercent: 40, windMetresPerSecond: null });
    expect(problems).toEqual(["Open-Meteo gave wind in “furlongs”: it is not used."]);
  });

  it("keeps nulls unknown, and leaves out a model that says nothing", () => {
    const { models } = readOpenMeteo(
      openMeteoAnswer({
        cloud_cover_one: [10, null, 30],
        cloud_cover_two: [null, null, null],
        wind_speed_10m_one: [null, null, null],
      }),
      "Open-Meteo",
    );
    expect(models).toHaveLength(1);
    expect(models[0]?.hours.map((hour) => hour.cloudPercent)).toEqual([10, 30]);
    expect(models[0]?.hours[0]?.windMetresPerSecond).toBeNull();
  });

  it("takes what a model lacks as unknown, whatever its unit is called", () => {
    const { problems } = readOpenMeteo(
      openMeteoAnswer(
        { cloud_cover: repeated(10), wind_speed_250hPa: repeated(null) },
        { wind_speed_250hPa: "undefined" },
      ),
      "Open-Meteo",
    );
    expect(problems).toEqual([]);
  });

  it("refuses cloud that comes as shares of one", () => {
    const shares = repeated(null).map((_, hour) => hour / 24);
    const { models, problems } = readOpenMeteo(
      openMeteoAnswer({ cloud_cover: shares, temperature_2m: repeated(8) }),
      "Open-Meteo",
    );
    expect(models[0]?.hours[0]).toMatchObject({ cloudPercent: null, temperatureCelsius: 8 });
    expect(problems[0]).toContain("0 to 1");
  });

  it("takes a cloudless fortnight for what it is", () => {
    expect(firstHour(openMeteoAnswer({ cloud_cover: repeated(0, 336) }))?.cloudPercent).toBe(0);
  });

  it("takes impossible values as unknown", () => {
    const { models, problems } = readOpenMeteo(openMeteoAnswer({ cloud_cover: [50, 140, -3] }), "Open-Meteo");
    expect(models[0]?.hours.map((hour) => hour.cloudPercent)).toEqual([50]);
    expect(problems).toHaveLength(1);
  });

  it("refuses a column of another length", () => {
    const answer = openMeteoAnswer({ cloud_cover: repeated(10), temperature_2m: repeated(8, 3) });
    const { models, problems } = readOpenMeteo(answer, "Open-Meteo");
    expect(models[0]?.hours[0]?.temperatureCelsius).toBeNull();
    expect(problems[0]).toContain("3 of 24 hours");
  });

  it("turns local times without a zone into UTC by the one offset given", () => {
    const answer = {
      ...openMeteoAnswer({ cloud_cover: [1, 2] }),
      utc_offset_seconds: 7200,
      hourly: { time: ["2026-10-10T02:00", "2026-10-10T03:00"], cloud_cover: [1, 2] },
    };
    expect(firstHour(answer)?.at).toEqual(new Date("2026-10-10T00:00Z"));
  });

  it.each([
    ["a refusal", { error: true, reason: "No data is available for this location" }],
    ["an empty object", {}],
    ["nothing", null],
    ["a number", 7],
    ["hours that are no record", { latitude: 1, hourly: [] }],
    ["no times", { latitude: 1, hourly: { cloud_cover: [1] } }],
    ["times out of order", { latitude: 1, hourly: { time: [7200, 3600], cloud_cover: [1, 2] } }],
    ["times that are none", { latitude: 1, hourly: { time: ["soon"], cloud_cover: [1] } }],
  ])("refuses %s", (_, answer) => {
    expect(() => readOpenMeteo(answer, "Open-Meteo")).toThrow(UnreadableAnswer);
  });

  it("knows nothing from metadata alone", () => {
    expect(readOpenMeteo({ latitude: 54.5, longitude: -2.6 }, "Open-Meteo").models).toEqual([]);
  });
});

describe("openMeteoPauseMs", () => {
  const now = Date.UTC(2026, 9, 10, 22, 30, 15);
  const limit = (word: string) => ({ status: 429, text: `${word} API request limit exceeded.` });

  it("waits for the next minute, hour or midnight UTC, as the refusal says", () => {
    expect(openMeteoPauseMs(limit("Minutely"), now)).toBe(45_000);
    expect(openMeteoPauseMs(limit("Hourly"), now)).toBe(29 * 60_000 + 45_000);
    expect(openMeteoPauseMs(limit("Daily"), now)).toBe(89 * 60_000 + 45_000);
    expect(openMeteoPauseMs({ status: 429, text: "Too many concurrent requests" }, now)).toBeNull();
    expect(openMeteoPauseMs({ status: 500, text: "Daily" }, now)).toBeNull();
  });
});
