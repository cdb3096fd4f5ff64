/** `/night`: the figures of the contract, and words that follow from them. */
import { describe, expect, it } from "vitest";
import { AskError } from "../../commands/ask-error.ts";
import { night } from "../../commands/night.ts";
import { referenceNotes, referenceRows } from "../reference/reference-rows.ts";
import { fakeContext, fakeRequest } from "./fake-context.ts";

const TABLE = "swiss-ephemeris/nights.txt";

function ask(options: Record<string, string | number>, zone: string, at = "2026-11-25T13:00:00Z") {
  return night.answer(fakeRequest("night", options, at), fakeContext({ timeZoneAt: () => zone }));
}

const FELL = { site: "54.5,-2.6" };
const NAMES = [
  "sunset",
  "civilDusk",
  "nauticalDusk",
  "astronomicalDusk",
  "astronomicalDawn",
  "nauticalDawn",
  "civilDawn",
  "sunrise",
];

describe("/night", () => {
  it("gives a night's figures under the contract's names", async () => {
    const { figures } = await ask(FELL, "Europe/London");
    expect(figures).toMatchObject({
      site: { latitudeDeg: 54.5, longitudeDeg: -2.6, timeZone: "Europe/London" },
      night: "2026-11-25",
      deepestTwilight: "astronomical",
    });
    for (const name of [...NAMES, "moon", "darkWindows", "moonFreeDarkWindows"]) {
      expect(figures).toHaveProperty(name);
    }
    for (const name of ["rise", "set", "illuminatedFraction", "phaseAngleDeg"]) {
      expect(figures).toHaveProperty(["moon", name]);
    }
  });

  it("gives Swiss Ephemeris's instants to 2 s, nulls where nothing comes, at five latitudes", async () => {
    const sites = new Map(referenceNotes(TABLE, "site").map(([name = "", ...place]) => [name, place]));
    const rows = referenceRows(TABLE).filter(
      ([name, date]) =>
        date?.startsWith("2026-0") &&
        ["south-polar-coast", "lord-howe", "equator", "fells", "avalon"].includes(name ?? ""),
    );
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) {
      const [latitude = "", longitude = "", metres = "", zone = ""] = sites.get(row[0] ?? "") ?? [];
      const answer = await ask({ site: `${latitude},${longitude},${metres}`, night: row[1] ?? "" }, zone);
      for (const [index, name] of NAMES.entries()) {
        const cell = row[4 + index] ?? "";
        const given = answer.figures[name] ?? null;
        if (cell === "-") {
          expect(given).toBeNull();
          continue;
        }
        const [seconds = 0, secondsPerArcsec = 0] = cell.split("/").map(Number);
        const off = Math.abs((Date.parse(String(given)) - Date.parse(row[2] ?? "")) / 1000 - seconds);
        // Grazing is allowed what 3″ of the Sun's altitude make.
        expect(off).toBeLessThan(Math.max(2, 3 * secondsPerArcsec));
      }
    }
  });

  it("gives as many nights as asked, each of the same shape, one too", async () => {
    const one = await ask({ ...FELL, night: "2026-11-25" }, "Europe/London");
    const many = await ask({ ...FELL, night: "2026-11-25", nights: 400 }, "Europe/London");
    const nights = many.figures.nights as readonly Record<string, unknown>[];
    expect(nights).toHaveLength(400);
    expect(nights[0]).toEqual(one.figures);
    expect(nights[399]?.night).toBe("2027-12-29");
    expect((await ask({ ...FELL, nights: 1 }, "Europe/London")).figures.nights).toHaveLength(1);
    expect(many.charts).toEqual([]);
  });

  it("takes tonight for the night when none is named, the coming one once the Sun is up", async () => {
    expect((await ask(FELL, "Europe/London", "2026-11-26T03:00:00Z")).figures.night).toBe("2026-11-25");
    expect((await ask(FELL, "Europe/London", "2026-11-26T09:00:00Z")).figures.night).toBe("2026-11-26");
  });

  it("says how dark it gets and names the deepest twilight when it does not", async () => {
    const words = async (options: Record<string, string>, zone: string) => (await ask(options, zone)).summary;
    expect(await words({ ...FELL, night: "2026-12-08" }, "Europe/London")).toMatch(
      /^Dark \d\d:\d\d to \d\d:\d\d, 12 h \d+ min\. Moon 0 % lit/,
    );
    expect(await words({ ...FELL, night: "2026-06-20" }, "Europe/London")).toMatch(
      /^No true darkness: the Sun is more than 12° down/,
    );
    expect(await words({ site: "58,-4", night: "2026-06-20" }, "Europe/London")).toMatch(
      /^No true darkness: the Sun is more than 6° down/,
    );
    expect(await words({ site: "70,23.3", night: "2026-06-20" }, "Europe/Oslo")).toMatch(
      /^No darkness: the Sun does not get 6° below/,
    );
    expect(await words({ site: "-90,0", night: "2026-06-20" }, "Antarctica/McMurdo")).toMatch(
      /^Dark all night and day, 24 h\. Moon \d+ % lit/,
    );
  });

  it("draws the twilights in order, the window and the Moon, and no objects", async () => {
    const [chart] = (await ask({ ...FELL, night: "2026-12-02" }, "Europe/London")).charts;
    if (chart?.kind !== "night") throw new Error("the night chart is missing");
    expect(chart.twilights.map((step) => step.depth)).toEqual([1, 2, 3, 4, 3, 2, 1, 0]);
    const times = chart.twilights.map((step) => step.at.getTime());
    expect(times).toEqual([...times].sort((one, other) => one - other));
    expect(chart.paths).toEqual([]);
    expect(chart.window?.label).toMatch(/^1[12] h \d+ min dark$/);
    expect(chart.moon.points.length).toBeGreaterThan(90);
    expect(chart.alt).toContain("Moon");
  });

  it("asks on for the same site, with options that exist", async () => {
    const { next } = await ask({ ...FELL, night: "2026-12-02" }, "Europe/London");
    expect(next.map((one) => one.command)).toEqual(["tonight", "forecast", "night"]);
    for (const one of next) expect(one.options).toMatchObject({ night: "2026-12-02", site: "54.5,-2.6" });
  });

  it.each([
    [{ site: "91,0" }, "site"],
    [{ ...FELL, night: "2026-02-30" }, "night"],
    [{ ...FELL, night: "tomorrow" }, "night"],
    [{ ...FELL, nights: 0 }, "nights"],
    [{ ...FELL, nights: 401 }, "nights"],
  ])("refuses %j, naming the option", async (options, option) => {
    const refusal = await ask(options, "Europe/London").catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(AskError);
    expect((refusal as AskError).option).toBe(option);
    expect((refusal as AskError).message).toContain(option);
  });
});
