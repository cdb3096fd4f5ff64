import { describe, expect, it } from "vitest";
import { idleHours } from "../../../core/log/calibration-hours.ts";
import type { NightTimes } from "../../../core/night/night.ts";
import type { ForecastHour } from "../../../core/weather/forecast-hour.ts";

const at = (clock: string) => new Date(`2026-10-04T${clock}:00Z`);
const span = (start: string, end: string) => ({ start: at(start), end: at(end) });

/** Dark from 00:00 to 06:00, the Moon down until 04:00. */
const times = {
  workingWindows: [span("00:00", "06:00")],
  darkWindows: [span("00:00", "06:00")],
  moonFreeDarkWindows: [span("00:00", "04:00")],
} as unknown as NightTimes;

const hour = (clock: string, cloudPercent: number | null) =>
  ({ at: at(clock), cloudPercent }) as unknown as ForecastHour;

describe("idleHours", () => {
  it("gives the moonlit hours where no forecast is at hand", () => {
    expect(idleHours(times, [], 50)).toEqual([{ ...span("04:00", "06:00"), why: "moon" }]);
  });

  it("gives the cloudy hours too, and no hour twice", () => {
    // Cloud runs from 0 at 01:00 to 100 at 03:00 and stays until 05:00: over half from 02:00,
    // and under again from 05:30. Steps are ten minutes.
    const hours = [
      hour("00:00", 0),
      hour("01:00", 0),
      hour("03:00", 100),
      hour("05:00", 100),
      hour("06:00", 0),
    ];
    expect(idleHours(times, hours, 50)).toEqual([
      { ...span("02:10", "05:30"), why: "cloud" },
      { ...span("05:30", "06:00"), why: "moon" },
    ]);
  });

  it("takes unknown cloud for none", () => {
    expect(idleHours(times, [hour("00:00", null), hour("06:00", null)], 50)).toHaveLength(1);
  });
});
