/**
 * Medians hour by hour: what may be mixed, and what may not.
 *
 * @packageDocumentation
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { median, mergedHours } from "../../../core/weather/merge.ts";
import { cloudyNight, hoursFrom, modelOf } from "./sample-night.ts";

describe("median", () => {
  it("is the middle, or the mean of the middle two", () => {
    expect(median([])).toBeNull();
    expect(median([3])).toBe(3);
    expect(median([9, 1, 2])).toBe(2);
    expect(median([9, 1, 2, 4])).toBe(3);
  });
});

describe("mergedHours", () => {
  it("gives a single model back", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 5, maxLength: 30 }), (values) => {
        const hours = hoursFrom("2026-10-10T12:00", values.length, (index) => ({
          cloudPercent: values[index] ?? 0,
          precipitationMm: (values[index] ?? 0) / 10,
          gustMetresPerSecond: values[index] ?? 0,
        }));
        const merged = mergedHours([modelOf(hours)]);
        expect(merged.map((hour) => hour.cloudPercent)).toEqual(values);
        expect(merged.map((hour) => hour.gustMetresPerSecond)).toEqual(values);
        merged.forEach((hour, index) => {
          expect(hour.precipitationMm).toBeCloseTo((values[index] ?? 0) / 10, 9);
        });
      }),
    );
  });

  it("takes the spread within each model before the median", () => {
    const at = (temperatureCelsius: number, dewPointCelsius: number) =>
      modelOf(hoursFrom("2026-10-10T12:00", 1, () => ({ temperatureCelsius, dewPointCelsius })));
    // Spreads 1, 1 and 5: median 1, though the medians of air and dew point alone are 10 − 8 = 2 apart.
    const [hour] = mergedHours([at(10, 9), at(9, 8), at(12, 7)]);
    expect(hour?.temperatureCelsius).toBe(10);
    expect(hour?.dewPointCelsius).toBeCloseTo(9, 9);
  });

  it("never mixes the cloud layers of two providers", () => {
    const layers = (lowCloudPercent: number, boundary: number, provider: string) =>
      modelOf(
        hoursFrom("2026-10-10T12:00", 2, () => ({ lowCloudPercent })),
        { provider, layerBoundariesMetres: [boundary, 8000] },
      );
    const merged = mergedHours([layers(10, 3000, "one"), layers(20, 3000, "one"), layers(90, 2000, "other")]);
    expect(merged[0]?.lowCloudPercent).toBe(15);
  });

  it("lets a model of longer steps speak in between, its rain shared out", () => {
    const hourly = modelOf(hoursFrom("2026-10-10T12:00", 7, () => ({ cloudPercent: 0, precipitationMm: 0 })));
    const coarse = modelOf(
      hoursFrom("2026-10-10T12:00", 2, (index) => ({ cloudPercent: index * 60, precipitationMm: 3 }), 6),
    );
    const merged = mergedHours([hourly, coarse]);
    expect(merged).toHaveLength(7);
    expect(merged[3]?.cloudPercent).toBeCloseTo(15, 9);
    expect(merged[3]?.precipitationMm).toBeCloseTo(0.25, 9);
  });

  it("keeps the rain, gusts and chances of hours whose cloud is unknown", () => {
    const hours = hoursFrom("2026-10-10T12:00", 3, (index) => ({
      cloudPercent: index === 1 ? null : 0,
      precipitationMm: index === 1 ? 2 : 0,
      gustMetresPerSecond: index === 1 ? 20 : 1,
    }));
    const merged = mergedHours([modelOf(hours)]);
    expect(merged).toHaveLength(2);
    expect(merged[1]).toMatchObject({ precipitationMm: 2, gustMetresPerSecond: 20 });
  });

  it("takes aerosol from a model that knows nothing else", () => {
    const empty = {
      cloudPercent: null,
      temperatureCelsius: null,
      dewPointCelsius: null,
      lowCloudPercent: null,
    };
    const air = modelOf(hoursFrom("2026-10-10T12:00", 9, () => ({ ...empty, aerosolOpticalDepth: 0.2 }), 3));
    const merged = mergedHours([modelOf(cloudyNight(() => 10)), air]);
    expect(merged).toHaveLength(25);
    expect(merged[1]).toMatchObject({ cloudPercent: 10, aerosolOpticalDepth: 0.2 });
  });
});
