/**
 * Dew and frost points against the published constants, and dew on optics at its limits.
 *
 * @packageDocumentation
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BARE_OPTICS } from "../../../config/observing-limits.ts";
import { dewHours, dewOnOptics, dewPoint, frostPoint, opticsCelsius } from "../../../core/weather/dew.ts";
import { fineHour, hoursFrom, utc } from "./sample-night.ts";

describe("dewPoint", () => {
  // O. A. Alduchov & R. E. Eskridge 1996, J. Appl. Meteor. 35, 601, constants 17.625 and 243.04:
  // values worked from them by hand, printed to a hundredth.
  it.each([
    [20, 50, 9.26],
    [5, 80, 1.84],
    [0, 90, -1.44],
  ])("of air at %d °C and %d %% is %d °C", (celsius, humidity, expected) => {
    expect(dewPoint(celsius, humidity)).toBeCloseTo(expected, 2);
  });

  it("is the air's own temperature when saturated", () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 50, noNaN: true }), (celsius) => {
        expect(dewPoint(celsius, 100)).toBeCloseTo(celsius, 9);
      }),
    );
  });

  it("rises with humidity and never passes the air's temperature", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 99, noNaN: true }),
        (celsius, humidity) => {
          expect(dewPoint(celsius, humidity)).toBeLessThan(celsius);
          expect(dewPoint(celsius, humidity)).toBeLessThan(dewPoint(celsius, humidity + 1));
        },
      ),
    );
  });
});

describe("frostPoint", () => {
  // Alduchov & Eskridge 1996, over ice: 6.1121 exp(22.587 t/(273.86 + t)). By hand for a dew point of −10 °C:
  // e = 6.1094 exp(17.625 × −10/233.04) = 2.8678 hPa; ln(2.8678/6.1121) = −0.75673;
  // t = 273.86 × −0.75673/(22.587 + 0.75673) = −8.878 °C.
  it("is −8.88 °C for a dew point of −10 °C", () => {
    expect(frostPoint(-10)).toBeCloseTo(-8.878, 2);
  });

  it("lies above the dew point in frost, by about a tenth of its depth", () => {
    for (const celsius of [-30, -20, -10, -5]) {
      const above = frostPoint(celsius) - celsius;
      expect(above).toBeGreaterThan(0.08 * -celsius);
      expect(above).toBeLessThan(0.14 * -celsius);
    }
  });
});

describe("opticsCelsius", () => {
  it.each([
    ["bare under a clear calm sky, 3.5 °C below the air", 0, 2, BARE_OPTICS, 6.5],
    ["half of that in wind over 3 m/s", 0, 3.1, BARE_OPTICS, 8.25],
    ["all of it in wind of 3 m/s", 0, 3, BARE_OPTICS, 6.5],
    ["half of it under half cloud", 50, 0, BARE_OPTICS, 8.25],
    ["nothing under full cloud", 100, 0, BARE_OPTICS, 10],
    ["2 °C below the air where a shield allows no more", 0, 0, { ...BARE_OPTICS, coolingCelsius: 2 }, 8],
  ] as const)("is %s", (_, cloud, wind, cooling, expected) => {
    expect(opticsCelsius(10, cloud, wind, cooling)).toBeCloseTo(expected, 9);
  });
});

describe("dewOnOptics", () => {
  const at = utc("2026-10-10T22:00");
  const weather = (temperatureCelsius: number, dewPointCelsius: number) =>
    fineHour(at, { temperatureCelsius, dewPointCelsius, windMetresPerSecond: 1 });

  it("comes when the optics are at the dew point, and not a shade above", () => {
    expect(dewOnOptics(weather(10, 6.5), BARE_OPTICS)).toBe("dew");
    expect(dewOnOptics(weather(10, 6.49), BARE_OPTICS)).toBeNull();
  });

  it("is frost on optics below freezing, at the frost point, before their dew point", () => {
    expect(dewOnOptics(weather(-4, -8), BARE_OPTICS)).toBe("frost");
    expect(dewOnOptics(weather(-4, -9), BARE_OPTICS)).toBeNull();
  });

  it("is unknown without temperature, dew point or cloud", () => {
    expect(dewOnOptics(fineHour(at, { cloudPercent: null, dewPointCelsius: 10 }), BARE_OPTICS)).toBeNull();
    expect(
      dewOnOptics(fineHour(at, { dewPointCelsius: null, humidityPercent: null }), BARE_OPTICS),
    ).toBeNull();
  });

  it("takes the dew point from humidity where it is not given", () => {
    const humid = fineHour(at, { dewPointCelsius: null, humidityPercent: 90, windMetresPerSecond: 1 });
    expect(dewOnOptics(humid, BARE_OPTICS)).toBe("dew");
  });
});

describe("dewHours", () => {
  it("begins where the cooling optics meet the dew point, to five minutes", () => {
    // 12 °C at 18:00 falling 1 °C an hour, dew point 5 °C: optics reach it 3.5 h later, at 21:30.
    const hours = hoursFrom("2026-10-10T18:00", 10, (index) => ({
      temperatureCelsius: 12 - index,
      dewPointCelsius: 5,
      windMetresPerSecond: 1,
    }));
    const spans = dewHours(
      hours,
      { start: utc("2026-10-10T18:00"), end: utc("2026-10-11T00:00") },
      BARE_OPTICS,
    );
    expect(spans).toHaveLength(1);
    expect(
      Math.abs((spans[0]?.start.getTime() ?? 0) - utc("2026-10-10T21:30").getTime()),
    ).toBeLessThanOrEqual(300_000);
    expect(spans[0]).toMatchObject({ kind: "dew", end: utc("2026-10-11T00:00") });
  });
});
