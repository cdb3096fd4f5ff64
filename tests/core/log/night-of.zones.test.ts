import { describe, expect, it } from "vitest";
import { instantInNight, nightOfInstant, nightsBefore } from "../../../core/log/night-of.ts";

describe("nightOfInstant", () => {
  it("changes at local noon", () => {
    expect(nightOfInstant(new Date("2026-10-04T10:59:59Z"), "Europe/London")).toBe("2026-10-03");
    expect(nightOfInstant(new Date("2026-10-04T11:00:00Z"), "Europe/London")).toBe("2026-10-04");
  });

  it("holds through both changes of the clock and in half-hour zones", () => {
    expect(nightOfInstant(new Date("2026-10-25T01:30:00Z"), "Europe/London")).toBe("2026-10-24");
    expect(nightOfInstant(new Date("2026-03-29T02:30:00Z"), "Europe/London")).toBe("2026-03-28");
    expect(nightOfInstant(new Date("2026-10-03T15:00:00Z"), "America/St_Johns")).toBe("2026-10-03");
    expect(nightOfInstant(new Date("2026-10-03T14:00:00Z"), "America/St_Johns")).toBe("2026-10-02");
  });
});

describe("instantInNight", () => {
  it("finds the evening on the date and the small hours on the next", () => {
    expect(instantInNight("2026-10-03", "22:40", "Europe/London")).toEqual(new Date("2026-10-03T21:40:00Z"));
    expect(instantInNight("2026-10-03", "2:05", "Europe/London")).toEqual(new Date("2026-10-04T01:05:00Z"));
    expect(instantInNight("2026-10-24", "05:00", "Europe/London")).toEqual(new Date("2026-10-25T05:00:00Z"));
  });

  it("knows no such time", () => {
    expect(instantInNight("2026-10-03", "26:40", "Europe/London")).toBeNull();
    expect(instantInNight("2026-02-30", "22:40", "Europe/London")).toBeNull();
  });
});

describe("nightsBefore", () => {
  it("counts back over the turn of a month", () => {
    expect(nightsBefore("2026-03-01", 1)).toBe("2026-02-28");
    expect(nightsBefore("2026-03-01", 0)).toBe("2026-03-01");
  });
});
