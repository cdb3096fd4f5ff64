import { describe, expect, it } from "vitest";
import { clockHours, clockSpan, durationWords } from "../../../commands/words/clock.ts";

describe("clockHours", () => {
  it("agrees with the minutes that stand beside it", () => {
    // 6 h 15 min 40 s, which the clock shows as from 21:43 to 03:58.
    const span = { start: new Date("2026-09-12T20:42:40Z"), end: new Date("2026-09-13T02:58:20Z") };
    expect(clockSpan(span, "Europe/London")).toBe("21:43 to 03:58");
    expect(durationWords(clockHours([span]))).toBe("6 h 15 min");
  });

  it("adds up what several spans show, and is nothing for none", () => {
    const span = { start: new Date("2026-09-12T20:00:20Z"), end: new Date("2026-09-12T20:10:40Z") };
    expect(durationWords(clockHours([span, span]))).toBe("22 min");
    expect(clockHours([])).toBe(0);
  });
});
