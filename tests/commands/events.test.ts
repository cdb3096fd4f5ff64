/** `/events`: by date, for the site, in its zone, and as a calendar that an independent parser reads. */
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { AskError } from "../../commands/ask-error.ts";
import { events } from "../../commands/events.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import { fakeRequest } from "./fake-context.ts";
import { FELL_END, worldWith } from "./outreach-site.ts";

const world = worldWith(FELL_END);
const ask = (options: Record<string, string | number>, at = "2026-11-25T20:30:00Z") =>
  events.answer(fakeRequest("events", options, at), world);

type EventFigures = {
  kind: string;
  type: string;
  title: string;
  at: string;
  seenFromSite: boolean | null;
  solarCaution: boolean;
};
const eventsOf = (figures: unknown) => (figures as { events: EventFigures[] }).events;
const COMET = "C/2023 A3, q 0.3914, e 1.0001, i 139.11, peri 308.49, node 21.56, T 2024-09-27.74, H 4.5, n 4";

function calendarOf(answer: Awaited<ReturnType<typeof ask>>) {
  const [file] = answer.attachments ?? [];
  if (file === undefined) throw new Error("the calendar is missing");
  const calendar = new ICAL.Component(ICAL.parse(new TextDecoder().decode(file.bytes)));
  return calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
}

describe("/events", () => {
  it("lists by date what lies in the span, every kind of it", async () => {
    const found = eventsOf((await ask({ from: "2026-08-01", to: "2027-03-01" })).figures);
    const times = found.map(({ at }) => Date.parse(at));
    expect(times).toEqual([...times].sort((a, b) => a - b));
    for (const at of times) {
      expect(at).toBeGreaterThanOrEqual(Date.parse("2026-07-31T23:00:00Z"));
      expect(at).toBeLessThan(Date.parse("2027-03-02T00:00:00Z"));
    }
    expect(new Set(found.map(({ type }) => type))).toEqual(
      new Set([
        "solar-eclipse",
        "lunar-eclipse",
        "meteor-shower",
        "close-approach",
        "planet",
        "moon-phase",
        "season",
      ]),
    );
  });

  it("calls the eclipse of 12 August 2026 partial at the fells, total elsewhere, filters on throughout", async () => {
    const answer = await ask({ from: "2026-08-12", nights: 1, kind: "eclipses" });
    expect(eventsOf(answer.figures)[0]?.title).toBe("Partial eclipse of the Sun (total elsewhere)");
    const words = answer.sections.flatMap(({ lines }) => lines).join(" ");
    expect(words).toContain("never total here");
    expect(words).toContain("12 August 2026");
  });

  it("puts the whole solar caution first in every solar entry of the calendar, and in no other", async () => {
    const answer = await ask({ from: "2026-08-01", nights: 60 });
    const entries = calendarOf(answer);
    const found = eventsOf(answer.figures);
    expect(entries).toHaveLength(found.length);
    found.forEach(({ solarCaution }, i) => {
      const description = entries[i]?.description ?? "";
      expect(description.startsWith(CAUTION_TEXTS.sun)).toBe(solarCaution);
    });
    expect(found.some(({ solarCaution }) => solarCaution)).toBe(true);
  });

  it("gives the calendar the contacts in UTC and keys that stay the same", async () => {
    const keys = async (at: string) =>
      calendarOf(await ask({ from: "2026-08-01", nights: 30 }, at)).map(({ uid }) => uid);
    expect(await keys("2026-01-01T00:00:00Z")).toEqual(await keys("2026-07-01T00:00:00Z"));
    const eclipse = calendarOf(await ask({ from: "2026-08-12", nights: 1, kind: "eclipses" }))[0];
    expect(eclipse?.startDate.zone.tzid).toBe("UTC");
    // Swiss Ephemeris's table of solar eclipses, first contact at the fells.
    expect(
      Math.abs((eclipse?.startDate.toJSDate().getTime() ?? 0) - Date.parse("2026-08-12T17:11:31Z")),
    ).toBeLessThan(15_000);
    expect(new Set(await keys("2026-01-01T00:00:00Z")).size).toBe(
      (await keys("2026-01-01T00:00:00Z")).length,
    );
  });

  it("takes an instant for the local day it falls on", async () => {
    const { from } = (await ask({ from: "2026-08-12T23:30Z", nights: 1 })).figures;
    expect(from).toBe("2026-08-12T23:00:00.000Z");
  });

  it("never writes coordinates into the calendar", async () => {
    const [file] = (await ask({})).attachments ?? [];
    expect(new TextDecoder().decode(file?.bytes)).not.toMatch(/54\.5|GEO|-2\.6/);
  });

  it("places a comet of typed elements night by night, and names what it leaves out", async () => {
    const answer = await ask({ from: "2024-10-12", nights: 16, kind: "comets", comet: COMET });
    const { comet } = answer.figures as {
      comet: { nights: { night: string; elongationDeg: number; magnitude: number; best: object | null }[] };
    };
    expect(comet.nights).toHaveLength(8);
    // It came out of the evening twilight in the days after 12 October 2024 (from memory).
    expect(comet.nights[0]?.elongationDeg).toBeLessThan(35);
    expect(comet.nights.at(-1)?.elongationDeg).toBeGreaterThan(50);
    expect(answer.cautions[0]?.id).toBe("sun");
    expect(answer.sections.flatMap(({ lines }) => lines).join(" ")).toContain("no planet's pull");
  });

  it("says honestly that no comet is known without elements", async () => {
    expect((await ask({ kind: "comets" })).summary).toMatch(/No comet's orbit is kept/);
    expect((await ask({})).sections.flatMap(({ lines }) => lines).join(" ")).toContain(
      "Comets are not listed",
    );
  });

  it.each([
    [{ from: "2026-12-01", to: "2026-11-01" }, "to"],
    [{ to: "2036-11-25" }, "to"],
    [{ nights: 401 }, "nights"],
    [{ nights: 3, to: "2026-12-01" }, "nights"],
    [{ night: "2026-12-01", from: "2026-12-01" }, "night"],
    [{ from: "2026-02-30" }, "from"],
    [{ kind: "ufos" }, "kind"],
    [{ comet: "Halley" }, "comet"],
    [{ comet: "X, q 0.5 e 1 i 10 peri 20 T 2026-01-01.5" }, "comet"],
    [{ comet: "X, q -0.5 e 1 i 10 peri 20 node 3 T 2026-01-01.5" }, "comet"],
    [{ comet: "X, q 0.5 q 0.6 e 1 i 10 peri 20 node 3 T 2026-01-01.5" }, "comet"],
    [{ comet: "X, q 0.5 e 1 i 10 peri 20 node 3 T 2026-02-31.5" }, "comet"],
    [{ comet: "X, q 0.5 zz 1 e 1 i 10 peri 20 node 3 T 2026-02-01.5" }, "comet"],
  ])("refuses %j, naming the option", async (options, option) => {
    const refusal = await ask(options as Record<string, string>).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(AskError);
    expect((refusal as AskError).option).toBe(option);
    expect((refusal as AskError).message).toContain(option);
  });
});
