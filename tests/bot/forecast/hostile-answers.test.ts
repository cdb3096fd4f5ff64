/**
 * Nonsense from a service or a file: understood, refused, never believed and never a crash.
 *
 * @packageDocumentation
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { UnreadableAnswer } from "../../../bot/forecast/polite-host.ts";
import { readSavedForecast } from "../../../bot/forecast/saved-files.ts";
import { AskError } from "../../../commands/ask-error.ts";
import type { ForecastReport } from "../../../commands/context.ts";
import { OBSERVING_LIMITS } from "../../../config/observing-limits.ts";
import { nightVerdict } from "../../../core/weather/verdict.ts";
import { nightDark, utc } from "../../core/weather/sample-night.ts";
import { metHours, threeModels } from "./invented-answers.ts";

/** Reads a text as a saved forecast; a refusal is `null`, anything else thrown fails the test. */
function readOrRefused(text: string): ForecastReport | null {
  try {
    return readSavedForecast(text, "file.json");
  } catch (fault) {
    if (fault instanceof AskError || fault instanceof UnreadableAnswer) return null;
    throw fault;
  }
}

function expectSane(report: ForecastReport | null): void {
  if (report === null) return;
  for (const { hours } of report.models) {
    hours.forEach((hour, index) => {
      expect(Number.isNaN(hour.at.getTime())).toBe(false);
      const before = hours[index - 1];
      if (before !== undefined) expect(before.at < hour.at).toBe(true);
      if (hour.cloudPercent !== null) {
        expect(hour.cloudPercent).toBeGreaterThanOrEqual(0);
        expect(hour.cloudPercent).toBeLessThanOrEqual(100);
      }
    });
  }
  const verdict = nightVerdict(nightDark(), report.models, OBSERVING_LIMITS, utc("2026-10-10T16:00"));
  expect(JSON.stringify(verdict)).not.toContain("NaN");
}

describe("a saved forecast", () => {
  it("may be any JSON", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => expectSane(readOrRefused(JSON.stringify(value)))),
    );
  });

  it("may be any text", () => {
    fc.assert(fc.property(fc.string({ maxLength: 300 }), (text) => expectSane(readOrRefused(text))));
  });

  it.each([
    ["Open-Meteo's", threeModels(20)],
    ["MET Norway's", metHours(30)],
  ])("may be %s with any one value in it replaced", (_, answer) => {
    const paths = pathsIn(answer);
    fc.assert(
      fc.property(fc.nat(paths.length - 1), fc.jsonValue({ maxDepth: 2 }), (index, value) => {
        const changed: unknown = structuredClone(answer);
        replaceAt(changed, paths[index] ?? [], value);
        expectSane(readOrRefused(JSON.stringify(changed)));
      }),
      { numRuns: 400 },
    );
  });
});

type Path = readonly (string | number)[];

function pathsIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const entries: readonly (readonly [string | number, unknown])[] = Array.isArray(value)
    ? value.map((entry, index) => [index, entry] as const)
    : Object.entries(value);
  return [path, ...entries.flatMap(([name, entry]) => pathsIn(entry, [...path, name]))].filter(
    ({ length }) => length > 0,
  );
}

function replaceAt(holder: unknown, path: Path, value: unknown): void {
  const [name, ...rest] = path;
  if (name === undefined || typeof holder !== "object" || holder === null) return;
  const record = holder as Record<string | number, unknown>;
  if (rest.length === 0) record[name] = value;
  else replaceAt(record[name], rest, value);
}
