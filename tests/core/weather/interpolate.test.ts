/**
 * The weather between instants: what runs linearly, and what belongs to the time before.
 *
 * @packageDocumentation
 */
import { describe, expect, it } from "vitest";
import { weatherAt } from "../../../core/weather/interpolate.ts";
import { hoursFrom, utc } from "./sample-night.ts";

describe("weatherAt", () => {
  const hours = hoursFrom("2026-10-10T20:00", 3, (index) => ({
    cloudPercent: index * 40,
    temperatureCelsius: 10 - index,
    gustMetresPerSecond: index,
    precipitationMm: index,
  }));

  it("runs cloud and temperature linearly", () => {
    expect(weatherAt(hours, utc("2026-10-10T20:15"))).toMatchObject({
      cloudPercent: 10,
      temperatureCelsius: 9.75,
    });
  });

  it("gives gusts and rain to the hour before their instant", () => {
    expect(weatherAt(hours, utc("2026-10-10T20:01"))).toMatchObject({
      gustMetresPerSecond: 1,
      precipitationMm: 1,
    });
    expect(weatherAt(hours, utc("2026-10-10T21:00"))).toMatchObject({
      gustMetresPerSecond: 1,
      precipitationMm: 1,
    });
    expect(weatherAt(hours, utc("2026-10-10T21:01"))).toMatchObject({
      gustMetresPerSecond: 2,
      precipitationMm: 2,
    });
  });

  it("knows nothing before the first hour's own hour, nor after the last", () => {
    expect(weatherAt(hours, utc("2026-10-10T18:59"))).toBeNull();
    expect(weatherAt(hours, utc("2026-10-10T22:01"))).toBeNull();
    expect(weatherAt([], utc("2026-10-10T22:01"))).toBeNull();
  });

  it("bridges six hours and no more", () => {
    const apart = (step: number) =>
      hoursFrom("2026-10-10T12:00", 2, (index) => ({ cloudPercent: index * 60 }), step);
    expect(weatherAt(apart(6), utc("2026-10-10T15:00"))?.cloudPercent).toBe(30);
    expect(weatherAt(apart(7), utc("2026-10-10T15:00"))).toBeNull();
  });
});
