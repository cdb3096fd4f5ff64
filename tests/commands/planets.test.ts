/** `/planets`: which, when, where, and Jupiter's moons for the hour. */
import { describe, expect, it } from "vitest";
import { AskError } from "../../commands/ask-error.ts";
import { planets } from "../../commands/planets.ts";
import { fakeRequest } from "./fake-context.ts";
import { FELL_END, worldWith } from "./outreach-site.ts";

const world = worldWith(FELL_END);
const ask = (options: Record<string, string>, at = "2026-11-25T20:30:00Z") =>
  planets.answer(fakeRequest("planets", options, at), world);

type Look = { altitudeDeg: number; elongationDeg: number; ring: { tiltDeg: number } | null };
type PlanetFigures = { name: string; windows: { start: string; end: string }[]; look: Look };
const planetsOf = (figures: unknown) => (figures as { planets: PlanetFigures[] }).planets;

describe("/planets", () => {
  it("lists the seven with their figures, Saturn's ring with its sign", async () => {
    const { figures } = await ask({});
    const found = planetsOf(figures);
    expect(found.map(({ name }) => name)).toEqual([
      "Mercury",
      "Venus",
      "Mars",
      "Jupiter",
      "Saturn",
      "Uranus",
      "Neptune",
    ]);
    // After the ring's edge-on passage of 2025 its southern side faces us (from memory).
    expect(found[4]?.look.ring?.tiltDeg).toBeLessThan(0);
  });

  it("draws Jupiter's moons as each kind of view shows them", async () => {
    const chartOf = async (view: string) => {
      const [chart] = (await ask({ view, time: "01:00" })).charts;
      if (chart?.kind !== "jupiter") throw new Error("Jupiter is missing");
      return chart;
    };
    const [upright, inverted, mirrored] = await Promise.all(["upright", "inverted", "mirrored"].map(chartOf));
    expect(upright?.moons.map(({ numeral }) => numeral)).toEqual(["I", "II", "III", "IV"]);
    expect((inverted?.turnDeg ?? 0) - (upright?.turnDeg ?? 0)).toBe(180);
    expect(upright?.mirrored).toBe(false);
    expect(mirrored?.mirrored).toBe(true);
  });

  it("says what happens: I and its shadow cross the disc in the night of 25 November 2026", async () => {
    const answer = await ask({ planet: "Jupiter" });
    const section = answer.sections.find(({ heading }) => heading.startsWith("Jupiter's moons"));
    expect(section?.lines.join(" ")).toMatch(/The shadow of I crosses the disc 23:10 to 01:28\./);
    expect(section?.lines.join(" ")).toMatch(/I crosses the disc 00:2\d to 02:4\d\./);
  });

  it("never invites to a planet within 30° of the Sun without the solar caution before sunrise", async () => {
    const answer = await ask({ planet: "Mercury" });
    expect(planetsOf(answer.figures)[0]?.windows.length).toBe(1);
    expect(answer.cautions[0]?.id).toBe("sun");
  });

  it("offers no time for a planet behind the Sun", async () => {
    // Mercury's superior conjunction of 2027 January 1.
    const answer = await ask({ planet: "Mercury", night: "2027-01-01" });
    expect(planetsOf(answer.figures)[0]?.windows).toEqual([]);
    expect(answer.summary).toMatch(/not to be seen/);
  });

  it("stays quiet about Saturn in the evening", async () => {
    expect((await ask({ planet: "Saturn" })).cautions).toEqual([]);
  });

  it.each([
    [{ planet: "Pluto" }, "planet"],
    [{ view: "sideways" }, "view"],
    [{ time: "9" }, "time"],
    [{ night: "soon" }, "night"],
  ])("refuses %j, naming the option", async (options, option) => {
    const refusal = await ask(options as Record<string, string>).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(AskError);
    expect((refusal as AskError).option).toBe(option);
    expect((refusal as AskError).message).toContain(option);
  });
});
