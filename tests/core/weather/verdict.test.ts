/**
 * The verdict: rules of the club's own, checked at their limits and as properties.
 *
 * @packageDocumentation
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { OBSERVING_LIMITS } from "../../../config/observing-limits.ts";
import type { ForecastHour, ModelForecast } from "../../../core/weather/forecast-hour.ts";
import type { VerdictKind } from "../../../core/weather/night-judgement.ts";
import { leadNights, nightVerdict } from "../../../core/weather/verdict.ts";
import { cloudyNight, hoursFrom, modelOf, nightDark, utc } from "./sample-night.ts";

const AT = utc("2026-10-10T16:00");

function verdictOf(models: readonly ModelForecast[], at = AT, times = nightDark()) {
  return nightVerdict(times, models, OBSERVING_LIMITS, at);
}

/** Clear from one hour to another (hours from noon), overcast before and after; straight edges. */
function clearBetween(from: number, to: number): ForecastHour[] {
  return cloudyNight((hour) => (hour >= from && hour <= to ? 0 : 100));
}

describe("nightVerdict, one model", () => {
  it("says go of a clear night, from dusk to dawn", () => {
    const verdict = verdictOf([modelOf(cloudyNight(() => 0))]);
    expect(verdict.kind).toBe("go");
    expect(verdict.window).toEqual({ start: utc("2026-10-10T20:00"), end: utc("2026-10-11T04:00") });
    expect(verdict.usableHours).toBe(8);
    expect(verdict.meanCloudPercent).toBe(0);
    expect(verdict.agreement).toBeNull();
  });

  it("says no-go under full cloud, and names the value and the limit", () => {
    const verdict = verdictOf([modelOf(cloudyNight(() => 100))]);
    expect(verdict.kind).toBe("no-go");
    expect(verdict.window).toBeNull();
    expect(verdict.usableHours).toBe(0);
    expect(verdict.meanCloudPercent).toBe(100);
    expect(verdict.reasons[0]).toBe("Cloud averages 100 % through all 8 h of darkness; the limit is 30 %.");
  });

  it("says nothing without a forecast", () => {
    for (const models of [[], [modelOf([])], [modelOf(cloudyNight(() => null))]]) {
      const verdict = verdictOf(models);
      expect(verdict).toMatchObject({ kind: "unknown", window: null, usableHours: null, agreement: null });
      expect(verdict.meanCloudPercent).toBeNull();
      expect(verdict.reasons).toHaveLength(1);
    }
  });

  it("puts the window's edges where cloud running linearly crosses 30 %", () => {
    // 22:00 is overcast, 23:00 clear: 30 % is passed seven tenths of the way, at 22:42.
    const verdict = verdictOf([modelOf(clearBetween(11, 14))]);
    expect(verdict.window?.start).toEqual(utc("2026-10-10T22:42"));
    expect(verdict.window?.end).toEqual(utc("2026-10-11T02:18"));
    expect(verdict.usableHours).toBeCloseTo(3.6, 9);
  });

  it("takes 30 % cloud as usable, and a shade more as marginal", () => {
    expect(verdictOf([modelOf(cloudyNight(() => 30))]).kind).toBe("go");
    expect(verdictOf([modelOf(cloudyNight(() => 30.01))]).kind).toBe("marginal");
    expect(verdictOf([modelOf(cloudyNight(() => 50))]).kind).toBe("marginal");
    expect(verdictOf([modelOf(cloudyNight(() => 50.01))]).kind).toBe("no-go");
  });

  it("counts no hours usable on a night that is marginal by the poorer limit", () => {
    const verdict = verdictOf([modelOf(cloudyNight(() => 45))]);
    expect(verdict.usableHours).toBe(0);
    expect(verdict.window).toEqual({ start: utc("2026-10-10T20:00"), end: utc("2026-10-11T04:00") });
  });

  it("needs a run of 2.5 h for a go and of 1.25 h for a marginal night", () => {
    // Rain belongs to the hour before, so a dry run can be cut to the minute by instants at will.
    const dryMinutes = (minutes: number) => {
      const from = utc("2026-10-10T21:00").getTime();
      const wet = hoursFrom("2026-10-10T12:00", 25, () => ({ precipitationMm: 1 }));
      const dry = [15, 30, 45, 60, 75, 90, 105, 120, 135, 150]
        .filter((minute) => minute <= minutes)
        .map((minute) => ({ ...hoursFrom("2026-10-10T12:00", 1)[0], at: new Date(from + minute * 60_000) }));
      const all = new Map(wet.map((hour) => [hour.at.getTime(), hour]));
      for (const hour of dry) all.set(hour.at.getTime(), hour as ForecastHour);
      return modelOf([...all.values()].sort((one, other) => one.at.getTime() - other.at.getTime()));
    };
    expect(verdictOf([dryMinutes(150)]).kind).toBe("go");
    expect(verdictOf([dryMinutes(135)]).kind).toBe("marginal");
    expect(verdictOf([dryMinutes(75)]).kind).toBe("marginal");
    expect(verdictOf([dryMinutes(60)]).kind).toBe("no-go");
  });

  it("needs 60 % of a short night", () => {
    const short = nightDark("2026-10-10T23:00", "2026-10-11T01:00");
    const clearUntil = (hours: number) => modelOf(cloudyNight((hour) => (hour <= 11 + hours ? 0 : 100)));
    // Overcast an hour later: 30 % is passed 18 min after the last clear hour: 78 min of 120 are 65 %.
    expect(verdictOf([clearUntil(1)], AT, short).kind).toBe("go");
    const late = modelOf(cloudyNight((hour) => (hour <= 11 ? 0 : 100)));
    // 18 min of 120: under the 36 min that a marginal night needs.
    expect(verdictOf([late], AT, short).kind).toBe("no-go");
  });

  it("lets high thin cloud alone pass up to 50 %", () => {
    const high = (percent: number, low = 0) =>
      modelOf(
        cloudyNight(() => percent).map((hour) => ({
          ...hour,
          highCloudPercent: percent,
          lowCloudPercent: low,
        })),
      );
    expect(verdictOf([high(50)]).kind).toBe("go");
    expect(verdictOf([high(51)]).kind).toBe("no-go");
    expect(verdictOf([high(50, 20)]).kind).toBe("marginal");
  });

  it("takes unknown layers for no excuse", () => {
    const hours = cloudyNight(() => 45).map((hour) => ({ ...hour, lowCloudPercent: null }));
    expect(verdictOf([modelOf(hours)]).kind).toBe("marginal");
  });

  it.each([
    ["gusts of 40 km/h", { gustMetresPerSecond: 40 / 3.6 }, "go"],
    ["gusts of 41 km/h", { gustMetresPerSecond: 41 / 3.6 }, "no-go"],
    ["unknown gusts", { gustMetresPerSecond: null }, "go"],
    [
      "a mean wind of 45 km/h without gusts",
      { gustMetresPerSecond: null, windMetresPerSecond: 12.5 },
      "no-go",
    ],
    ["rain of 0.1 mm", { precipitationMm: 0.1 }, "go"],
    ["rain of 0.2 mm", { precipitationMm: 0.2 }, "no-go"],
    ["unknown rain", { precipitationMm: null, precipitationProbabilityPercent: null }, "go"],
    ["a chance of rain of 19 %", { precipitationProbabilityPercent: 19 }, "go"],
    ["a chance of rain of 20 %, which must stay under it", { precipitationProbabilityPercent: 20 }, "no-go"],
    ["fog", { fogPercent: 80 }, "no-go"],
    ["visibility of a kilometre", { visibilityMetres: 1000 }, "go"],
    ["visibility under a kilometre", { visibilityMetres: 900 }, "no-go"],
    ["saturated calm air", { dewPointCelsius: 9, windMetresPerSecond: 1.9 }, "marginal"],
    ["saturated air in a breeze", { dewPointCelsius: 9, windMetresPerSecond: 2 }, "go"],
    ["calm air a shade drier", { dewPointCelsius: 8.9, windMetresPerSecond: 1 }, "go"],
    ["dew, which warns and does not forbid", { dewPointCelsius: 7, windMetresPerSecond: 2.5 }, "go"],
  ] as const)("answers %s", (_, weather, kind) => {
    const hours = cloudyNight(() => 0).map((hour) => ({ ...hour, ...weather }));
    expect(verdictOf([modelOf(hours)]).kind).toBe(kind);
  });

  it("warns of dew on a go night, with its hours", () => {
    const hours = cloudyNight(() => 0).map((hour) => ({ ...hour, dewPointCelsius: 7 }));
    const verdict = verdictOf([modelOf(hours)]);
    expect(verdict.dew).toEqual([
      { kind: "dew", start: utc("2026-10-10T20:00"), end: utc("2026-10-11T04:00") },
    ]);
    expect(verdict.warnings[0]).toContain("Dew on bare optics, 20:00 to 04:00");
  });

  it("lists what spoils part of a go night as warnings", () => {
    const verdict = verdictOf([modelOf(clearBetween(7, 12))]);
    expect(verdict.kind).toBe("go");
    expect(verdict.warnings.some((warning) => warning.startsWith("Cloud averages"))).toBe(true);
  });

  it("says no-go where the Sun stays up, and why", () => {
    const bright = { ...nightDark(), workingWindows: [], darkWindows: [] };
    const verdict = verdictOf([modelOf(cloudyNight(() => 0))], AT, bright);
    expect(verdict).toMatchObject({ kind: "no-go", window: null, usableHours: 0 });
    expect(verdict.reasons[0]).toContain("−6°");
    expect(verdictOf([], AT, bright).kind).toBe("unknown");
  });
});

describe("nightVerdict, steps and gaps", () => {
  it.each([2, 3, 6])("is marginal at best with steps of %d h", (step) => {
    const hours = hoursFrom("2026-10-10T12:00", 24 / step + 1, () => ({}), step);
    const verdict = verdictOf([modelOf(hours)]);
    expect(verdict.kind).toBe("marginal");
    expect(verdict.usableHours).toBe(8);
    expect(verdict.reasons.join(" ")).toContain("too coarse for a go");
  });

  it("draws no edge inside a step over an hour", () => {
    const hours = hoursFrom("2026-10-10T12:00", 9, (index) => ({ cloudPercent: index < 5 ? 0 : 100 }), 3);
    // Clear at midnight, overcast at 3: the whole step is left out.
    expect(verdictOf([modelOf(hours)]).window).toEqual({
      start: utc("2026-10-10T20:00"),
      end: utc("2026-10-11T00:00"),
    });
  });

  it("still says go from the hourly part of a night that grows coarse", () => {
    const fine = hoursFrom("2026-10-10T12:00", 13);
    const coarse = hoursFrom("2026-10-11T06:00", 2, () => ({}), 6);
    expect(verdictOf([modelOf([...fine, ...coarse])]).kind).toBe("go");
  });

  it("joins no two hourly stretches over a longer step into a go", () => {
    // Clear and hourly for two hours, unknown for two, clear and hourly for two more, then overcast.
    const hours = cloudyNight((hour) => (hour > 10 && hour < 13 ? null : hour > 15 ? 100 : 0));
    const verdict = verdictOf([modelOf(hours)]);
    expect(verdict.kind).toBe("marginal");
    expect(verdict.window?.start).toEqual(utc("2026-10-10T20:00"));
  });

  it("bridges a null as a longer step and no further than six hours", () => {
    const gap = (from: number, to: number) =>
      verdictOf([modelOf(cloudyNight((hour) => (hour > from && hour < to ? null : 0)))]);
    expect(gap(10, 12).usableHours).toBe(8);
    expect(gap(9, 15).usableHours).toBe(8);
    // Seven hours of nothing leave one known hour of eight.
    expect(gap(8, 15).kind).toBe("unknown");
  });

  it("makes no no-go of a night it knows the smaller part of", () => {
    const until = (last: number) => modelOf(cloudyNight((hour) => (hour <= last ? 100 : null)));
    expect(verdictOf([until(11)]).kind).toBe("unknown");
    expect(verdictOf([until(12)]).kind).toBe("no-go");
  });
});

describe("nightVerdict, several models", () => {
  const clear = modelOf(cloudyNight(() => 0));
  const cloudy = modelOf(cloudyNight(() => 100));
  const middling = modelOf(cloudyNight(() => 45));

  it.each([
    ["go", [clear, clear, clear, cloudy, cloudy], 0.6],
    ["marginal", [clear, cloudy], 0],
    ["marginal", [clear, clear, cloudy, cloudy, middling], 0.2],
    ["no-go", [clear, cloudy, cloudy, cloudy, middling], 0.6],
    ["go", [clear, clear, cloudy], 2 / 3],
  ] as const)("is %s", (kind, models, agreement) => {
    const verdict = verdictOf(models);
    expect(verdict.kind).toBe(kind);
    expect(verdict.agreement).toBeCloseTo(agreement, 12);
  });

  it("gives the median's figures", () => {
    const verdict = verdictOf([10, 20, 90].map((percent) => modelOf(cloudyNight(() => percent))));
    expect(verdict.meanCloudPercent).toBeCloseTo(20, 9);
    expect(verdict.usableHours).toBe(8);
  });

  it("gives no vote to a model that knows nothing of the night", () => {
    const verdict = verdictOf([clear, modelOf([]), modelOf(cloudyNight(() => null))]);
    expect(verdict.kind).toBe("go");
    expect(verdict.agreement).toBeNull();
  });
});

describe("nightVerdict, ahead of time", () => {
  const clear = [modelOf(cloudyNight(() => 0))];
  it.each([
    [0, "go", false],
    [3, "go", false],
    [4, "go", true],
    [7, "go", true],
    [8, "unknown", false],
  ] as const)("%d nights ahead is %s, an outlook: %s", (nights, kind, outlook) => {
    const at = new Date(AT.getTime() - nights * 86_400_000);
    const verdict = verdictOf(clear, at);
    expect(verdict).toMatchObject({ kind, outlook, leadNights: nights });
  });

  it("counts a night until its sunrise", () => {
    expect(leadNights(nightDark(), utc("2026-10-10T06:01"))).toBe(0);
    expect(leadNights(nightDark(), utc("2026-10-10T05:59"))).toBe(1);
    expect(leadNights(nightDark(), utc("2026-10-11T05:59"))).toBe(0);
  });

  it("calls an old forecast old, by its age at the clock", () => {
    const issued = modelOf(
      cloudyNight(() => 0),
      { issuedAt: utc("2026-10-09T16:00") },
    );
    expect(verdictOf([issued]).warnings.join(" ")).toContain("24 h old");
  });
});

const ORDER: Readonly<Record<VerdictKind, number>> = { "no-go": 0, unknown: 0, marginal: 1, go: 2 };

describe("nightVerdict, properties", () => {
  const clouds = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 25, maxLength: 25 });

  it("never improves with more cloud", () => {
    fc.assert(
      fc.property(clouds, clouds, (base, more) => {
        const layered = (cloud: readonly number[]) => modelOf(cloudyNight((hour) => cloud[hour] ?? 0));
        const before = verdictOf([layered(base)]);
        const after = verdictOf([
          layered(base.map((value, index) => Math.min(100, value + (more[index] ?? 0)))),
        ]);
        expect(ORDER[after.kind]).toBeLessThanOrEqual(ORDER[before.kind]);
        expect(after.usableHours ?? 0).toBeLessThanOrEqual((before.usableHours ?? 0) + 1e-6);
      }),
    );
  });

  it("never improves with stronger gusts or more rain", () => {
    fc.assert(
      fc.property(clouds, clouds, fc.double({ min: 0, max: 30, noNaN: true }), (gusts, rain, more) => {
        const windy = (extra: number) =>
          modelOf(
            hoursFrom("2026-10-10T12:00", 25, (index) => ({
              gustMetresPerSecond: (gusts[index] ?? 0) / 6 + extra,
              precipitationMm: (rain[index] ?? 0) / 500 + extra / 100,
            })),
          );
        expect(ORDER[verdictOf([windy(more)]).kind]).toBeLessThanOrEqual(ORDER[verdictOf([windy(0)]).kind]);
      }),
    );
  });

  it("keeps its window and usable runs inside the darkness", () => {
    fc.assert(
      fc.property(clouds, (cloud) => {
        const verdict = verdictOf([modelOf(cloudyNight((hour) => cloud[hour] ?? 0))]);
        const spans = [...verdict.usable, ...(verdict.window === null ? [] : [verdict.window])];
        for (const span of spans) {
          expect(span.start >= utc("2026-10-10T20:00")).toBe(true);
          expect(span.end <= utc("2026-10-11T04:00")).toBe(true);
          expect(span.start < span.end).toBe(true);
        }
      }),
    );
  });

  it("agrees with an independent count of minutes", () => {
    fc.assert(
      fc.property(clouds, (cloud) => {
        const verdict = verdictOf([modelOf(cloudyNight((hour) => cloud[hour] ?? 0))]);
        let minutes = 0;
        for (let minute = 480; minute < 960; minute += 1) {
          const exact = (minute + 0.5) / 60;
          const before = Math.floor(exact);
          const first = cloud[before] ?? 0;
          if (first + ((cloud[before + 1] ?? 0) - first) * (exact - before) <= 30) minutes += 1;
        }
        // Each edge may fall half a minute away; at most sixteen edges.
        expect(Math.abs((verdict.usableHours ?? 0) * 60 - minutes)).toBeLessThanOrEqual(9);
      }),
    );
  });
});
