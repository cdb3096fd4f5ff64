/**
 * Forecasts from files: recognised by shape, refused by name.
 *
 * @packageDocumentation
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { NO_FORECASTS, savedForecasts } from "../../../bot/forecast/saved-files.ts";
import { AskError } from "../../../commands/ask-error.ts";
import { SAVED_FORECAST_BYTES_AT_MOST } from "../../../config/forecast-services.ts";
import { aerosolAnswer, metHours, openMeteoAnswer, repeated, threeModels } from "./invented-answers.ts";

const ANYWHERE = { latitudeDeg: -33, longitudeDeg: 151, elevationMetres: 0 };
const EVER = new Date("1999-01-01T00:00Z");

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "saved-forecasts-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

function saved(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === "string" ? content : JSON.stringify(content));
  return path;
}

describe("savedForecasts", () => {
  it("recognises each provider by its shape and credits it", async () => {
    const paths = [
      saved("one.json", threeModels(20)),
      saved("two.json", metHours(30)),
      saved("three.json", aerosolAnswer(0.2)),
    ];
    const report = await savedForecasts(paths).at(ANYWHERE, EVER);
    expect(report.models.map(({ provider }) => provider)).toEqual([
      "Open-Meteo",
      "Open-Meteo",
      "Open-Meteo",
      "MET Norway",
      "Open-Meteo air quality",
    ]);
    expect(report.credits).toHaveLength(3);
    expect(report.models.every(({ fetchedAt, sample }) => fetchedAt === null && !sample)).toBe(true);
  });

  it("takes the first place of several, and a byte order mark in its stride", async () => {
    const path = saved("several.json", `\uFEFF${JSON.stringify([threeModels(20), threeModels(90)])}`);
    const report = await savedForecasts([path]).at(ANYWHERE, EVER);
    expect(report.models[0]?.hours[0]?.cloudPercent).toBe(20);
  });

  it("takes a file without a known hour for a forecast that says nothing", async () => {
    const path = saved("nulls.json", openMeteoAnswer({ cloud_cover: repeated(null) }));
    expect(await savedForecasts([path]).at(ANYWHERE, EVER)).toEqual({
      models: [],
      credits: [],
      problems: [],
    });
  });

  it.each([
    ["truncated.json", JSON.stringify(threeModels(20)).slice(0, 400)],
    ["empty.json", ""],
    ["words.txt", "clear tonight, they say"],
    ["other.json", { weather: "fine" }],
    ["list.json", []],
    ["null.json", "null"],
    ["refusal.json", { error: true, reason: "Daily API request limit exceeded." }],
    ["binary.bin", "\u0000\u0001\u0002"],
    ["large.json", " ".repeat(SAVED_FORECAST_BYTES_AT_MOST + 1)],
  ])("refuses %s as a mistake in forecast", (name, content) => {
    const path = saved(name, content);
    expect(() => savedForecasts([path])).toThrow(AskError);
    try {
      savedForecasts([path]);
    } catch (fault) {
      expect(fault).toMatchObject({ option: "forecast" });
      expect((fault as Error).message).toContain(name);
    }
  });

  it("refuses a file that is not there, and a folder", () => {
    expect(() => savedForecasts([join(folder, "missing.json")])).toThrow(/no such file/);
    expect(() => savedForecasts([folder])).toThrow(AskError);
  });
});

describe("NO_FORECASTS", () => {
  it("knows nothing and names no problem", async () => {
    expect(await NO_FORECASTS.at(ANYWHERE, EVER)).toEqual({ models: [], credits: [], problems: [] });
  });
});
