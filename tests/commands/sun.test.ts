/** `/sun`: the session, the disc, and the caution before all else. */
import { describe, expect, it } from "vitest";
import { AskError } from "../../commands/ask-error.ts";
import { sun } from "../../commands/sun.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import type { Site } from "../../core/site.ts";
import { fakeRequest } from "./fake-context.ts";
import { FELL_END, worldWith } from "./outreach-site.ts";

function ask(options: Record<string, string | number>, at = "2026-11-25T10:30:00Z", site: Site = FELL_END) {
  return sun.answer(fakeRequest("sun", options, at), worldWith(site));
}
const refusalOf = async (options: Record<string, string>, site?: Site) => {
  const refusal = await ask(options, undefined, site).catch((error: unknown) => error);
  expect(refusal).toBeInstanceOf(AskError);
  return refusal as AskError;
};
const NORTH: Site = {
  ...FELL_END,
  name: "Nordkyn",
  latitudeDeg: 70,
  longitudeDeg: 23.3,
  timeZone: "Europe/Oslo",
  skyline: [],
};

describe("/sun", () => {
  it("puts the solar caution first, whole, in the answer and over the drawing", async () => {
    const answer = await ask({});
    expect(answer.cautions[0]).toEqual({ id: "sun", text: CAUTION_TEXTS.sun });
    expect(answer.charts[0]?.cautions[0]).toBe(CAUTION_TEXTS.sun);
  });

  it("gives the session and the disc under names that explain themselves", async () => {
    const { figures } = await ask({});
    for (const name of [
      "site",
      "date",
      "sunrise",
      "sunset",
      "transit",
      "clearWindows",
      "steadyWindow",
      "disc",
      "nextEclipse",
      "nearSun",
    ]) {
      expect(figures).toHaveProperty(name);
    }
    for (const name of ["axisPositionAngleDeg", "b0Deg", "l0Deg", "parallacticAngleDeg", "diameterArcmin"]) {
      expect(figures).toHaveProperty(["disc", name]);
    }
  });

  it("draws the disc by telescope, never by finder, and warns of planets without inviting", async () => {
    const answer = await ask({});
    const [chart] = answer.charts;
    if (chart?.kind !== "sun") throw new Error("the Sun's disc is missing");
    expect(chart.views).toHaveLength(4);
    for (const { caption } of chart.views) expect(caption).not.toMatch(/finder/i);
    const near = answer.sections.find(({ heading }) => heading === "Near the Sun");
    expect(near?.lines.join(" ")).toContain("do not look for it");
  });

  it("names the next eclipse that touches the site: 2 August 2027, 32 % at 10:00 summer time", async () => {
    // Swiss Ephemeris's table has the fells' contacts of that day.
    const { nextEclipse } = (await ask({})).figures as {
      nextEclipse: { kind: string; obscuration: number; greatest: { at: string } };
    };
    expect(nextEclipse.kind).toBe("partial");
    expect(Math.abs(Date.parse(nextEclipse.greatest.at) - Date.parse("2027-08-02T09:00:15Z"))).toBeLessThan(
      60_000,
    );
  });

  it("takes tomorrow once today's Sun is down", async () => {
    expect((await ask({}, "2026-11-25T18:00:00Z")).figures.date).toBe("2026-11-26");
    expect((await ask({}, "2026-11-25T03:00:00Z")).figures.date).toBe("2026-11-25");
  });

  it("says so when the Sun comes up but never clears the skyline", async () => {
    const walled = { ...FELL_END, skyline: [{ azimuthDeg: 180, altitudeDeg: 30 }] };
    const answer = await ask({ date: "2026-12-21" }, undefined, walled);
    expect(answer.summary).toMatch(/never clears the skyline/);
    expect(answer.figures.clearWindows).toEqual([]);
    expect(answer.cautions[0]?.id).toBe("sun");
  });

  it("refuses a day without the Sun, naming the option and when it comes back", async () => {
    const refusal = await refusalOf({ date: "2026-12-10" }, NORTH);
    expect(refusal.option).toBe("date");
    expect(refusal.message).toMatch(/comes up again on 2027-01-\d\d/);
  });

  it("answers under a Sun that does not set", async () => {
    const answer = await ask({ date: "2026-06-21" }, undefined, NORTH);
    expect(answer.sections[0]?.lines[0]).toMatch(/up throughout/);
    expect(answer.figures.sunset).toBeNull();
  });

  it.each([
    [{ time: "03:00" }, "time"],
    [{ time: "noonish" }, "time"],
    [{ date: "2026-02-30" }, "date"],
    [{ date: "tomorrow" }, "date"],
    [{ site: "95,0" }, "site"],
  ])("refuses %j, naming the option", async (options, option) => {
    const refusal = await refusalOf(options as Record<string, string>);
    expect(refusal.option).toBe(option);
    expect(refusal.message).toContain(option);
  });
});
