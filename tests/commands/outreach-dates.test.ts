import { describe, expect, it } from "vitest";
import { chartSvg } from "../../bot/charts/draw.ts";
import type { Answer } from "../../commands/answer.ts";
import { AskError } from "../../commands/ask-error.ts";
import type { ForecastReport } from "../../commands/context.ts";
import { outreach } from "../../commands/outreach.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import type { Site } from "../../core/site.ts";
import { FELL } from "../core/targets/night-of-a-rig.ts";
import { hoursFrom, modelOf } from "../core/weather/sample-night.ts";
import { eveningContext } from "./evening-context.ts";
import { fakeRequest } from "./fake-context.ts";
import { placeOf, sunAltitude } from "./outreach-sky.ts";

const AT = "2026-10-03T12:00:00Z";

type EveningFigure = {
  readonly night: string;
  readonly place: number | null;
  readonly start: string;
  readonly end: string;
  readonly darkFrom: string | null;
  readonly darkHours: number;
  readonly moonIlluminatedFraction: number;
  readonly moon: { readonly start: string; readonly end: string; readonly altitudeDeg: number } | null;
  readonly planets: readonly { readonly body: string; readonly start: string; readonly end: string }[];
  readonly events: readonly { readonly kind: string; readonly at: string }[];
  readonly verdict: string | null;
  readonly rainDate: string | null;
};

type Options = Record<string, string | number | boolean>;
type Given = { readonly site?: Site; readonly report?: ForecastReport; readonly at?: string };

async function dates(options: Options = {}, { at = AT, ...world }: Given = {}): Promise<Answer> {
  const request = { ...fakeRequest("outreach", options, at), subcommand: "dates" };
  return outreach.answer(request, eveningContext(world));
}

const evenings = (answer: Answer) => answer.figures.evenings as unknown as readonly EveningFigure[];
const told = (answer: Answer) =>
  evenings(answer)
    .filter(({ place }) => place !== null)
    .sort((one, other) => (one.place ?? 0) - (other.place ?? 0));
const wordsOf = (answer: Answer) => answer.sections.flatMap(({ lines }) => lines).join("\n");

async function refusal(options: Options, given: Given = {}): Promise<AskError> {
  const fault = await dates(options, given).catch((thrown: unknown) => thrown);
  if (fault instanceof AskError) return fault;
  throw new Error(`not refused: ${JSON.stringify(options)}`);
}

describe("/outreach dates", () => {
  it("looks at every evening of the span and tells the best apart from each other", async () => {
    const answer = await dates({ audience: "families", nights: 60 });
    expect(evenings(answer)).toHaveLength(60);
    const nights = told(answer).map(({ night }) => Date.parse(night) / 86_400_000);
    expect(nights).toHaveLength(5);
    for (const one of nights) {
      for (const other of nights) if (one !== other) expect(Math.abs(one - other)).toBeGreaterThanOrEqual(4);
    }
  });

  it("finds Moon and planets in reach where an independent library has them high enough and the Sun down", async () => {
    const answer = await dates({ audience: "adults", nights: 120 });
    const seen = new Set<string>();
    for (const { moon, planets } of evenings(answer)) {
      const reached = [...planets, ...(moon === null ? [] : [{ ...moon, body: "Moon" }])];
      for (const { body, start, end } of reached) {
        seen.add(body);
        for (const at of [new Date(start), new Date(end)]) {
          const target = { kind: "body", body: body as "Moon" } as const;
          expect(placeOf(target, FELL, at).altitudeDeg, body).toBeGreaterThanOrEqual(14.98);
          expect(sunAltitude(FELL, at)).toBeLessThan(-0.84);
        }
      }
    }
    expect([...seen]).toEqual(expect.arrayContaining(["Moon", "Saturn"]));
  });

  it("counts an evening as dark when the Sun is 12° down, as the almanacs' nautical dusk", async () => {
    for (const { darkFrom } of evenings(await dates({ audience: "adults", nights: 30 }))) {
      expect(sunAltitude(FELL, new Date(darkFrom ?? 0))).toBeCloseTo(-12, 1);
    }
  });

  it("takes a rain date soon after, among the days asked for", async () => {
    const answer = await dates({ weekdays: "fri, sat", nights: 90 });
    for (const { night, rainDate } of told(answer).slice(0, 3)) {
      const gap = (Date.parse(rainDate ?? "") - Date.parse(night)) / 86_400_000;
      expect(gap).toBeGreaterThanOrEqual(1);
      expect(gap).toBeLessThanOrEqual(16);
    }
    for (const { night } of evenings(answer)) {
      expect([5, 6]).toContain(new Date(`${night}T12:00:00Z`).getUTCDay());
    }
  });

  it("gives reasons, never a score", async () => {
    const answer = await dates({ audience: "families" });
    for (const { heading, lines } of answer.sections.filter(({ heading: each }) => each !== "")) {
      expect(heading).toMatch(/^[1-5]\. \p{L}+ \d+ \p{L}+, \d\d:\d\d to \d\d:\d\d$/u);
      expect(lines.length).toBeGreaterThanOrEqual(3);
      expect(lines.at(-1)).toMatch(/^Rain date: |^No rain date/);
    }
    expect(wordsOf(answer)).not.toMatch(/score|points|\/ ?10\b|★|%\s*match/i);
  });

  it("says the Moon is an attraction when half lit and in reach, and no help when full", async () => {
    // New Moon was on 9 November, first quarter on the 17th, full Moon on the 24th (any almanac; from memory).
    const half = await dates({ night: "2026-11-17", nights: 1 });
    expect(wordsOf(half)).toMatch(/A half-lit Moon \(5\d %\), \d+° high in the south.*long shadows/);
    const full = await dates({ night: "2026-11-24", nights: 1 });
    expect(wordsOf(full)).toMatch(/A full Moon \(100 %\).*drowns what is faint/);
    expect(wordsOf(await dates({ night: "2026-11-09", nights: 1 }))).toMatch(/No Moon in reach/);
  });

  it("puts the evening of an eclipse of the Moon first", async () => {
    // Total lunar eclipse of 31 December 2028, greatest 16:52 UT (NASA's catalogue; from memory).
    const answer = await dates(
      { night: "2028-12-20", nights: 20, hours: "16:30-19:00" },
      { at: "2028-12-01T12:00:00Z" },
    );
    expect(told(answer)[0]?.night).toBe("2028-12-31");
    expect(wordsOf(answer)).toMatch(/Total eclipse of the Moon, deepest at 16:5\d/);
  });

  it("tells of a strong shower near, and not of weak ones", async () => {
    // The Geminids peak at a solar longitude of 262.2° (International Meteor Organization), 14 December 2026.
    const near = await dates({ night: "2026-12-14", nights: 1, audience: "adults" });
    expect(evenings(near)[0]?.events).toMatchObject([{ kind: "shower" }]);
    expect(wordsOf(near)).toMatch(/Geminids at or near their peak/);
    expect(evenings(await dates({ night: "2026-12-05", nights: 1 }))[0]?.events).toEqual([]);
  });

  it("speaks of weather only as far as a forecast is worth anything, and says so", async () => {
    const hours = hoursFrom("2026-10-03T12:00", 16 * 24, () => ({ cloudPercent: 5 }));
    const report = { models: [modelOf(hours)], credits: ["Credit."], problems: [] };
    const answer = await dates({ nights: 20 }, { report });
    const foretold = evenings(answer).filter(({ verdict }) => verdict !== null);
    expect(foretold.map(({ night }) => night)).toEqual(
      Array.from({ length: 8 }, (_, day) => `2026-10-${String(3 + day).padStart(2, "0")}`),
    );
    expect(answer.credits).toEqual(["Credit."]);
    const far = await dates({ night: "2026-12-01", nights: 5 }, { report });
    expect(wordsOf(far)).toMatch(/No forecast is worth anything \d+ nights ahead/);
    expect(far.credits).toEqual([]);
  });

  it("lets a clear forecast win over a cloudy one", async () => {
    const clearNight = "2026-10-06";
    const hours = hoursFrom("2026-10-03T12:00", 8 * 24, (hour) => ({
      cloudPercent: Math.floor((hour + 12) / 24) === 3 ? 0 : 100,
    }));
    const report = { models: [modelOf(hours)], credits: [], problems: [] };
    const answer = await dates({ nights: 7, hours: "20:00-22:00" }, { report });
    expect(told(answer)[0]?.night).toBe(clearNight);
  });

  it("draws the strip, with weather only where it is known and the three best numbered", async () => {
    const answer = await dates({ nights: 30 });
    const [chart] = answer.charts;
    if (chart?.kind !== "outreach-strip") throw new Error("no strip");
    expect(chart.evenings).toHaveLength(30);
    expect(chart.evenings.filter(({ rank }) => rank !== null)).toHaveLength(3);
    expect(chart.evenings.every(({ verdict }) => verdict === null)).toBe(true);
    expect(chartSvg(chart)).toContain("<svg");
  });

  it("skips evenings with the Sun up through the hours, and refuses when all are", async () => {
    const spring = await dates({ night: "2027-04-01", nights: 100, hours: "19:00-20:30" });
    expect(evenings(spring).length).toBeGreaterThan(0);
    expect(evenings(spring).length).toBeLessThan(100);
    expect((await refusal({ night: "2027-06-10", nights: 10, hours: "18:00-20:30" })).message).toMatch(
      /Sun is up/,
    );
  });
});

describe("/outreach dates refuses", () => {
  const north = { ...FELL, latitudeDeg: 70, longitudeDeg: 20, timeZone: "Europe/Oslo" };

  it.each([
    [{ nights: 3650 }, "nights", /1 to 400 nights/],
    [{ nights: 1.5 }, "nights", /whole number/],
    [{ night: "2025-10-01" }, "night", /still to come/],
    [{ weekdays: "funday" }, "weekdays", /fri, sat/],
    [{ hours: "21:00-20:00" }, "hours", /end after they begin/],
    [{ hours: "25:00-26:00" }, "hours", /two times of day/],
  ] as const)("%j", async (options, option, message) => {
    const fault = await refusal(options);
    expect(fault.option).toBe(option);
    expect(fault.message).toMatch(message);
  });

  it("a site where the Sun does not set", async () => {
    expect((await refusal({ night: "2027-06-10", nights: 10 }, { site: north })).message).toMatch(
      /Sun is up/,
    );
  });
});

describe("/outreach dates for the Sun", () => {
  it("carries the solar caution first, in the strip as well", async () => {
    const answer = await dates({ session: "sun", audience: "school" });
    expect(answer.cautions[0]).toEqual({ id: "sun", text: CAUTION_TEXTS.sun });
    expect(answer.charts[0]?.cautions[0]).toBe(CAUTION_TEXTS.sun);
  });

  it("proposes only hours with the Sun over 5° and in them alone", async () => {
    for (const { start, end } of evenings(await dates({ session: "sun", hours: "13:00-15:00" }))) {
      for (const at of [new Date(start), new Date(end)]) {
        expect(sunAltitude(FELL, at)).toBeGreaterThanOrEqual(4.98);
      }
      expect(Date.parse(end) - Date.parse(start)).toBeLessThanOrEqual(2 * 3_600_000);
    }
  });

  it("puts a solar eclipse first, at its own hours, without a rain date", async () => {
    // Partial in upland England on 12 August 2026, greatest about 18:10 UT (from memory).
    const answer = await dates(
      { session: "sun", night: "2026-08-01", nights: 30 },
      { at: "2026-07-20T12:00:00Z" },
    );
    const [first] = told(answer);
    expect(first?.night).toBe("2026-08-12");
    expect(first?.events[0]?.kind).toBe("solar-eclipse");
    expect(
      Math.abs(Date.parse(first?.events[0]?.at ?? "") - Date.parse("2026-08-12T18:10:00Z")),
    ).toBeLessThan(10 * 60_000);
    expect(wordsOf(answer)).toMatch(/An eclipse does not wait/);
  });

  it("refuses where the Sun does not come up", async () => {
    const north = { ...FELL, latitudeDeg: 75, longitudeDeg: 20, timeZone: "Europe/Oslo" };
    const fault = await refusal({ session: "sun", night: "2026-12-15", nights: 5 }, { site: north });
    expect(fault.message).toMatch(/does not clear the skyline/);
  });
});

describe("/outreach plan for the Sun", () => {
  const plan = (options: Options = {}, given: Given = {}) =>
    outreach.answer(
      {
        ...fakeRequest("outreach", { session: "sun", ...options }, given.at ?? "2026-07-03T09:00:00Z"),
        subcommand: "plan",
      },
      eveningContext(given),
    );

  it("carries the whole solar caution first: in the answer, on the sheet, in the text", async () => {
    for (const options of [{}, { instruments: "eyes" }, { instruments: "1x 80mm" }, { audience: "adults" }]) {
      const answer = await plan(options);
      expect(answer.cautions[0]).toEqual({ id: "sun", text: CAUTION_TEXTS.sun });
      expect(answer.charts.every(({ cautions }) => cautions[0] === CAUTION_TEXTS.sun)).toBe(true);
      const text = new TextDecoder().decode(answer.attachments?.[0]?.bytes);
      expect(text.startsWith(`CAUTION. ${CAUTION_TEXTS.sun}`)).toBe(true);
    }
  });

  it("never speaks of a finder but to cap it, and leaves binoculars packed", async () => {
    const words = wordsOf(await plan({ instruments: "eyes, binoculars 10x50, 2x 80mm, solar 60mm" }));
    for (const [, sentence] of words.matchAll(/([^.\n]*[Ff]inder[^.\n]*)/g)) {
      expect(sentence).toMatch(/off|capped|removed/);
    }
    expect(words).toMatch(/Binoculars 10×50: they stay in their cases/);
    expect(words).toMatch(/full-aperture filter over the FRONT/);
  });

  it("takes today while it lasts, then tomorrow", async () => {
    expect((await plan()).figures.night).toBe("2026-07-03");
    expect((await plan({}, { at: "2026-07-03T20:00:00Z" })).figures.night).toBe("2026-07-04");
  });

  it("refuses a day that is over, hours without Sun, and anything else to point at", async () => {
    const refused = async (options: Options) => {
      const fault = await plan(options).catch((thrown: unknown) => thrown);
      if (!(fault instanceof AskError)) throw new Error(`not refused: ${JSON.stringify(options)}`);
      return fault;
    };
    expect((await refused({ night: "2026-07-01" })).message).toMatch(/is over/);
    expect((await refused({ hours: "22:30-23:30" })).message).toMatch(/does not clear the skyline/);
    expect((await refused({ show: "Venus" })).option).toBe("show");
    expect((await refused({ hours: "14:00-11:00" })).option).toBe("hours");
  });
});
