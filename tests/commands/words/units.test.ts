import { describe, expect, it } from "vitest";
import { imperial } from "../../../commands/words/units.ts";

// A mile is 1.609344 km and an inch 25.4 mm exactly; °F = 9/5 °C + 32.
describe("imperial", () => {
  it.each([
    [
      "Gusts reach 64 km/h from 22:00; the limit is 40 km/h.",
      "Gusts reach 40 mph from 22:00; the limit is 25 mph.",
    ],
    [
      "Stars: steady, by 18 m/s of wind near 250 hPa (rough).",
      "Stars: steady, by 40 mph of wind near 250 hPa (rough).",
    ],
    ["Coldest in the dark: −5 °C.", "Coldest in the dark: 23 °F."],
    ["Coldest in the dark: 10 °C.", "Coldest in the dark: 50 °F."],
  ])("turns “%s” round", (metric, turned) => {
    expect(imperial(metric)).toBe(turned);
  });

  it("turns a difference of temperatures without its zero", () => {
    expect(imperial("they cool up to 3.5 °C below the air")).toBe("they cool up to 6.3 °F below the air");
    expect(imperial("the air comes within 1 °C of its dew point")).toBe(
      "the air comes within 1.8 °F of its dew point",
    );
  });

  it("gives rain in inches and leaves optics in millimetres", () => {
    expect(imperial("Rain or snow of up to 5 mm at a time; the limit is 0.1 mm")).toBe(
      "Rain or snow of up to 0.2 in at a time; the limit is 0.004 in",
    );
    expect(imperial("rain 2.5 mm or a chance of 20 %")).toBe("rain 0.1 in or a chance of 20 %");
    expect(imperial("400mm f/5.6, 800 mm f/4")).toBe("400mm f/5.6, 800 mm f/4");
  });

  it("leaves what a sensor is cooled to", () => {
    const line = "The sensor is taken as cooled to −10 °C.";
    expect(imperial(line)).toBe(line);
  });
});
