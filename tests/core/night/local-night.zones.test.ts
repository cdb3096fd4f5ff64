/** Nights by the site's own clock, whatever zone the machine stands in. */
import { describe, expect, it } from "vitest";
import { nightHolding, nightOn, nightsFrom } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";

const FELL = { latitudeDeg: 54.5, longitudeDeg: -2.6, elevationMetres: 250, timeZone: "Europe/London" };
const AVALON = {
  latitudeDeg: 47.56,
  longitudeDeg: -52.71,
  elevationMetres: 100,
  timeZone: "America/St_Johns",
};

describe("nightOn", () => {
  it.each([
    ["2026-11-25", "Europe/London", "2026-11-25T12:00:00.000Z", "2026-11-26T12:00:00.000Z"],
    ["2026-07-01", "Europe/London", "2026-07-01T11:00:00.000Z", "2026-07-02T11:00:00.000Z"],
    ["2026-03-28", "Europe/London", "2026-03-28T12:00:00.000Z", "2026-03-29T11:00:00.000Z"],
    ["2026-10-24", "Europe/London", "2026-10-24T11:00:00.000Z", "2026-10-25T12:00:00.000Z"],
    ["2026-03-07", "America/St_Johns", "2026-03-07T15:30:00.000Z", "2026-03-08T14:30:00.000Z"],
    ["2026-10-31", "America/St_Johns", "2026-10-31T14:30:00.000Z", "2026-11-01T15:30:00.000Z"],
    ["2026-04-04", "Australia/Lord_Howe", "2026-04-04T01:00:00.000Z", "2026-04-05T01:30:00.000Z"],
    ["2026-10-03", "Australia/Lord_Howe", "2026-10-03T01:30:00.000Z", "2026-10-04T01:00:00.000Z"],
    ["2028-02-29", "Asia/Kathmandu", "2028-02-29T06:15:00.000Z", "2028-03-01T06:15:00.000Z"],
    ["2026-12-31", "Pacific/Kiritimati", "2026-12-30T22:00:00.000Z", "2026-12-31T22:00:00.000Z"],
  ])("of %s in %s runs from %s to %s", (date, zone, noon, nextNoon) => {
    const night = nightOn(date, zone);
    expect(night).toEqual({ date, timeZone: zone, noon: new Date(noon), nextNoon: new Date(nextNoon) });
  });

  it.each(["2026-02-29", "2026-13-01", "26-01-01", "2026-01-01T12:00", ""])("refuses the date %j", (date) => {
    expect(() => nightOn(date, "UTC")).toThrow(RangeError);
  });

  it("refuses a zone nobody knows", () => {
    expect(() => nightOn("2026-01-01", "Europe/Nowhere")).toThrow(RangeError);
  });
});

describe("nightsFrom", () => {
  it("follows on without a gap through a year and both clock changes", () => {
    for (const zone of ["Europe/London", "America/St_Johns", "Australia/Lord_Howe"]) {
      const nights = nightsFrom(nightOn("2026-01-01", zone), 400);
      expect(nights).toHaveLength(400);
      for (const [index, night] of nights.entries()) {
        const next = nights[index + 1];
        if (next) expect(next.noon).toEqual(night.nextNoon);
      }
      expect(nights[399]?.date).toBe("2027-02-04");
    }
  });
});

describe("nightHolding", () => {
  it.each([
    ["2026-11-25T12:00:00Z", "2026-11-25", "at noon"],
    ["2026-11-25T22:00:00Z", "2026-11-25", "in the evening"],
    ["2026-11-26T03:00:00Z", "2026-11-25", "after midnight"],
    ["2026-11-26T07:45:00Z", "2026-11-25", "in the dawn"],
    ["2026-11-26T08:30:00Z", "2026-11-26", "once the Sun has risen"],
    ["2026-11-26T11:59:59Z", "2026-11-26", "just before noon"],
    ["2026-10-25T00:30:00Z", "2026-10-24", "in the first half past one of the night the clocks go back"],
    ["2026-10-25T01:30:00Z", "2026-10-24", "in the second"],
  ])("at %s is the night of %s: %s", (at, date) => {
    expect(nightHolding(new Date(at), FELL).date).toBe(date);
  });

  it("goes over to the coming night at sunrise to the millisecond", () => {
    const { sunrise } = nightTimes(AVALON, nightOn("2026-11-25", AVALON.timeZone));
    const at = sunrise?.getTime() ?? 0;
    expect(nightHolding(new Date(at - 1), AVALON).date).toBe("2026-11-25");
    expect(nightHolding(new Date(at), AVALON).date).toBe("2026-11-26");
  });

  it("lasts until noon under the midnight Sun and in the polar night", () => {
    const finnmark = { latitudeDeg: 70, longitudeDeg: 23.3, elevationMetres: 0, timeZone: "Europe/Oslo" };
    expect(nightHolding(new Date("2026-06-21T09:00:00Z"), finnmark).date).toBe("2026-06-20");
    expect(nightHolding(new Date("2026-06-21T10:00:00Z"), finnmark).date).toBe("2026-06-21");
    expect(nightHolding(new Date("2026-12-21T10:00:00Z"), finnmark).date).toBe("2026-12-20");
    expect(nightHolding(new Date("2026-12-21T11:00:00Z"), finnmark).date).toBe("2026-12-21");
  });
});
