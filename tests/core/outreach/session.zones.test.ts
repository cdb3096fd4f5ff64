/** Clock times of sessions, which must not depend on the zone the tests run in. */
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { AUDIENCES, EVENING_HOURS } from "../../../config/outreach-evenings.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import { daySession, eveningSession, neverSets, weekdayOf } from "../../../core/outreach/session.ts";
import type { Site } from "../../../core/site.ts";
import { FELL, KAROO } from "../targets/night-of-a-rig.ts";

const clockOf = (at: Date | undefined, site: Site) =>
  at === undefined ? null : DateTime.fromJSDate(at, { zone: site.timeZone }).toFormat("HH:mm");

function session(site: Site, date: string, hours: { from: string; to: string } | null) {
  const times = nightTimes(site, nightOn(date, site.timeZone));
  return { times, found: eveningSession(times, hours, AUDIENCES.families, EVENING_HOURS) };
}

describe("eveningSession", () => {
  it("takes the hours as the site's clock shows them, across midnight too", () => {
    for (const site of [FELL, KAROO]) {
      const { found } = session(site, "2026-10-03", { from: "21:30", to: "00:15" });
      expect(clockOf(found?.start, site)).toBe("21:30");
      expect(clockOf(found?.end, site)).toBe("00:15");
      expect(Number(found?.end) - Number(found?.start)).toBe(2.75 * 3_600_000);
    }
  });

  it("lasts an hour longer in the night in which the clocks go back", () => {
    // The United Kingdom's summer time ended on 25 October 2026 at 02:00.
    const { found } = session(FELL, "2026-10-24", { from: "23:00", to: "03:00" });
    expect(Number(found?.end) - Number(found?.start)).toBe(5 * 3_600_000);
  });

  it("is nothing when it ends before it begins, or begins in the morning and ends by day", () => {
    expect(session(FELL, "2026-10-03", { from: "21:00", to: "20:00" }).found).toBeNull();
    expect(session(FELL, "2026-10-03", { from: "11:00", to: "14:00" }).found).toBeNull();
  });

  it("without hours ends when families leave, and does not begin before sunset", () => {
    for (const date of ["2026-10-03", "2026-12-20", "2027-03-05"]) {
      const { times, found } = session(FELL, date, null);
      expect(clockOf(found?.end, FELL)).toBe("21:00");
      expect(Number(found?.start)).toBeGreaterThanOrEqual(Number(times.sunset));
      expect(Number(found?.end) - Number(found?.start)).toBeLessThanOrEqual(2.5 * 3_600_000);
    }
  });

  it("says how far past their hour a midsummer evening must run", () => {
    const { times, found } = session(FELL, "2026-06-21", null);
    const runs = (Number(found?.end) - Date.parse("2026-06-21T20:00:00Z")) / 3_600_000;
    expect(Number(found?.start)).toBeGreaterThanOrEqual(Number(times.sunset));
    expect(found?.pastLeaveHours).toBeGreaterThan(0);
    expect(found?.pastLeaveHours).toBeLessThanOrEqual(runs);
  });

  it("has none where the Sun does not set", () => {
    const north = { ...FELL, latitudeDeg: 70, longitudeDeg: 20, timeZone: "Europe/Oslo" };
    const { times, found } = session(north, "2026-06-21", null);
    expect(neverSets(times)).toBe(true);
    expect(found).toBeNull();
    expect(neverSets(session(north, "2026-12-21", null).times)).toBe(false);
  });
});

describe("daySession", () => {
  it("lies within one local date", () => {
    const found = daySession("2026-07-04", { from: "10:00", to: "12:30" }, FELL.timeZone);
    expect(found?.start).toEqual(new Date("2026-07-04T09:00:00Z"));
    expect(found?.end).toEqual(new Date("2026-07-04T11:30:00Z"));
    expect(daySession("2026-07-04", { from: "12:30", to: "10:00" }, FELL.timeZone)).toBeNull();
  });
});

describe("weekdayOf", () => {
  it("counts as ISO 8601 does, Monday 1 to Sunday 7", () => {
    for (let day = 0; day < 800; day += 13) {
      const date = DateTime.fromISO("1968-12-28", { zone: "utc" }).plus({ days: day * 50 });
      expect(weekdayOf(date.toFormat("yyyy-MM-dd"))).toBe(date.weekday);
    }
  });
});
