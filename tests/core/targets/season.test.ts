import { describe, expect, it } from "vitest";
import { totalHours } from "../../../core/interval.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { fixedTrack } from "../../../core/targets/placer.ts";
import { bestWeeks, neverClears, seasonMonths, seasonNights } from "../../../core/targets/season.ts";
import { middleOf } from "../../../core/targets/target-night.ts";
import { visibleIntervals } from "../../../core/targets/visibility.ts";
import { FELL, KAROO } from "./night-of-a-rig.ts";

const CRESCENT = { raDeg: 303.03, decDeg: 38.35 };
const HORSEHEAD = { raDeg: 85.25, decDeg: -2.46 };
const CLEARANCE = { skyline: [], leastAltitudeDeg: 30 };

describe("seasonNights", () => {
  // The night's own search finds crossings to a second; the season's steps are to give a tenth of an hour,
  // and the Moon's rise at an airless level horizon comes some minutes from the almanac's.
  it.each([FELL, KAROO])("agrees with the night's own windows at $name, to 0.15 h", (site) => {
    const season = seasonNights(site, HORSEHEAD, CLEARANCE, "2026-11-01", 365);
    for (const { date, darkHours, moonFreeHours } of season.filter((_, index) => index % 13 === 0)) {
      const times = nightTimes(site, nightOn(date, site.timeZone));
      const track = fixedTrack(site, HORSEHEAD, middleOf(times.night));
      const hours = (spans: typeof times.darkWindows) =>
        totalHours(visibleIntervals((at) => track(at.getTime()), CLEARANCE, spans));
      expect(Math.abs(darkHours - hours(times.darkWindows)), date).toBeLessThan(0.1);
      expect(Math.abs(moonFreeHours - hours(times.moonFreeDarkWindows)), date).toBeLessThan(0.15);
    }
  });

  it("never gives more Moon-free hours than dark ones", () => {
    for (const night of seasonNights(FELL, CRESCENT, CLEARANCE, "2026-01-01", 365)) {
      expect(night.moonFreeHours).toBeLessThanOrEqual(night.darkHours + 1e-9);
    }
  });
});

describe("bestWeeks", () => {
  it("brackets late summer and autumn for the Crescent at 54° north (common practice)", () => {
    const best = bestWeeks(seasonNights(FELL, CRESCENT, CLEARANCE, "2026-01-01", 365));
    expect(best?.from.slice(5, 7)).toMatch(/08|09/);
    expect(best?.to.slice(5, 7)).toMatch(/10|11/);
  });

  it("brackets southern summer for the Horsehead at 34° south (common practice)", () => {
    const best = bestWeeks(seasonNights(KAROO, HORSEHEAD, CLEARANCE, "2026-07-01", 365));
    expect(best?.from.slice(5, 7)).toMatch(/11|12/);
    expect(best?.to.slice(5, 7)).toMatch(/12|01|02/);
  });

  it("gives one season whichever month the year is begun in", () => {
    const asked = (first: string) => bestWeeks(seasonNights(FELL, CRESCENT, CLEARANCE, first, 365));
    const [summer, autumn] = [asked("2026-05-01"), asked("2026-09-01")];
    if (summer === null || autumn === null) throw new Error("no season");
    const days = (one: string, other: string) => Math.abs(Date.parse(one) - Date.parse(other)) / 86_400_000;
    expect(days(summer.from, autumn.from)).toBeLessThanOrEqual(4);
    expect(days(summer.to, autumn.to)).toBeLessThanOrEqual(4);
  });

  it("is none for what never rises", () => {
    expect(
      bestWeeks(seasonNights(FELL, { raDeg: 100, decDeg: -70 }, CLEARANCE, "2026-01-01", 365)),
    ).toBeNull();
  });
});

describe("seasonMonths", () => {
  it("means the nights of each calendar month", () => {
    const night = (date: string, darkHours: number) => ({ date, darkHours, moonFreeHours: darkHours / 2 });
    expect(seasonMonths([night("2026-01-01", 4), night("2026-01-03", 6), night("2026-02-02", 2)])).toEqual([
      { month: "2026-01", darkHours: 5, moonFreeHours: 2.5 },
      { month: "2026-02", darkHours: 2, moonFreeHours: 1 },
    ]);
  });
});

describe("neverClears", () => {
  const at = new Date("2026-10-10T00:00:00Z");

  it("knows what culminates too low", () => {
    expect(neverClears(FELL, { raDeg: 0, decDeg: -6 }, CLEARANCE, at)).toBe(true);
    expect(neverClears(FELL, { raDeg: 0, decDeg: -5 }, CLEARANCE, at)).toBe(false);
  });

  it("knows what a wall hides at every hour", () => {
    const walled = { skyline: [{ azimuthDeg: 0, altitudeDeg: 80 }], leastAltitudeDeg: 0 };
    expect(neverClears(FELL, { raDeg: 0, decDeg: 20 }, walled, at)).toBe(true);
  });
});
