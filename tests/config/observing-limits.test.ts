/**
 * The weather limits and the services' manners hang together.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import { STEADINESS, TRANSPARENCY } from "../../config/air-words.ts";
import {
  OPEN_METEO_ALLOWANCE,
  OPEN_METEO_CELLS_PER_REQUEST,
  OPEN_METEO_MODELS,
} from "../../config/forecast-services.ts";
import { OBSERVING_LIMITS } from "../../config/observing-limits.ts";

describe("OBSERVING_LIMITS", () => {
  it("grow from usable to poor, and from verdict to outlook", () => {
    expect(OBSERVING_LIMITS.cloudPercent).toBeLessThan(OBSERVING_LIMITS.poorCloudPercent);
    expect(OBSERVING_LIMITS.verdictNights).toBeLessThan(OBSERVING_LIMITS.outlookNights);
  });

  it("hold shares above nothing and up to all", () => {
    const { goDarknessShare, marginalShare, agreementShare, knownShare } = OBSERVING_LIMITS;
    for (const share of [goDarknessShare, marginalShare, agreementShare, knownShare]) {
      expect(share).toBeGreaterThan(0);
      expect(share).toBeLessThanOrEqual(1);
    }
    // With a half or less, go and no-go could both be carried.
    expect(agreementShare).toBeGreaterThan(0.5);
  });
});

describe("the words for the air", () => {
  it("change at rising values", () => {
    expect(STEADINESS.steadyBelowMetresPerSecond).toBeLessThan(STEADINESS.unsteadyAboveMetresPerSecond);
    expect(TRANSPARENCY.clearUpTo).toBeLessThan(TRANSPARENCY.hazyAbove);
  });
});

describe("Open-Meteo's manners", () => {
  it("stay under the free service's 600 a minute, 5,000 an hour and 10,000 a day", () => {
    const published: Readonly<Record<number, number>> = { 60000: 600, 3600000: 5000, 86400000: 10_000 };
    for (const { spanMs, weight } of OPEN_METEO_ALLOWANCE) {
      expect(weight).toBeLessThan(published[spanMs] ?? 0);
    }
  });

  it("fit a batch of places into a minute", () => {
    // Its own weighing: twelve variables of so many models, ten of which are one call.
    const batch = OPEN_METEO_CELLS_PER_REQUEST * ((12 * OPEN_METEO_MODELS.length) / 10);
    expect(batch).toBeLessThan(OPEN_METEO_ALLOWANCE[0]?.weight ?? 0);
  });

  it("ask for several models, each once", () => {
    expect(new Set(OPEN_METEO_MODELS).size).toBe(OPEN_METEO_MODELS.length);
    expect(OPEN_METEO_MODELS.length).toBeGreaterThan(2);
  });
});
