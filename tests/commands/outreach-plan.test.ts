import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartSvg } from "../../bot/charts/draw.ts";
import { openCatalogue } from "../../bot/library/open-catalogue.ts";
import type { Answer } from "../../commands/answer.ts";
import { AskError } from "../../commands/ask-error.ts";
import { outreach } from "../../commands/outreach.ts";
import { showablesOf } from "../../commands/showables.ts";
import { PLANET_SUN_DEPTH_DEG, SUN_DEPTH_DEG } from "../../config/outreach-evenings.ts";
import type { Site } from "../../core/site.ts";
import { FELL, KAROO } from "../core/targets/night-of-a-rig.ts";
import { eveningContext } from "./evening-context.ts";
import { fakeRequest } from "./fake-context.ts";
import { apartDeg, placeOf, profileDeg, sunAltitude } from "./outreach-sky.ts";

const AT = "2026-10-03T12:00:00Z";
const SHOWABLES = new Map(showablesOf(openCatalogue()).map((what) => [what.name, what]));

type StopFigure = {
  readonly start: string;
  readonly end: string;
  readonly what: string;
  readonly kind: string;
  readonly instrument: string;
  readonly window: { readonly start: string; readonly end: string };
  readonly ease: string;
};

type Options = Record<string, string | number | boolean>;

async function plan(options: Options = {}, site: Site = FELL, at = AT): Promise<Answer> {
  const request = { ...fakeRequest("outreach", options, at), subcommand: "plan" };
  return outreach.answer(request, eveningContext({ site }));
}

const stopsOf = (answer: Answer) => answer.figures.stops as unknown as readonly StopFigure[];
const names = (answer: Answer) => [...new Set(stopsOf(answer).map(({ what }) => what))];
const wordsOf = (answer: Answer) => answer.sections.flatMap(({ lines }) => lines).join("\n");

async function refusal(options: Options, site: Site = FELL): Promise<AskError> {
  const fault = await plan(options, site).catch((thrown: unknown) => thrown);
  if (fault instanceof AskError) return fault;
  throw new Error(`not refused: ${JSON.stringify(options)}`);
}

function depthNeeded(name: string): number {
  const what = SHOWABLES.get(name);
  if (what === undefined) throw new Error(`unknown ${name}`);
  const body = what.target.kind === "body" ? what.target.body : null;
  return (body === null ? undefined : PLANET_SUN_DEPTH_DEG[body]) ?? SUN_DEPTH_DEG[what.kind];
}

const anySite = fc
  .record({
    latitudeDeg: fc.double({ min: -60, max: 62, noNaN: true }),
    longitudeDeg: fc.double({ min: -179, max: 179, noNaN: true }),
    heights: fc.array(fc.double({ min: 0, max: 35, noNaN: true }), { minLength: 8, maxLength: 8 }),
  })
  .map(({ latitudeDeg, longitudeDeg, heights }): Site => {
    const offset = -Math.round(longitudeDeg / 15);
    return {
      ...FELL,
      latitudeDeg,
      longitudeDeg,
      timeZone: `Etc/GMT${offset > 0 ? "+" : "-"}${Math.abs(offset)}`,
      skyline: heights.map((altitudeDeg, index) => ({ azimuthDeg: 45 * index, altitudeDeg })),
    };
  });

const anyOptions = fc.record({
  night: fc
    .date({ min: new Date("2026-10-05"), max: new Date("2030-01-01"), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10)),
  audience: fc.constantFrom("families", "school", "adults", "mixed"),
  instruments: fc.constantFrom(
    "eyes",
    "1x 80mm",
    "eyes, 2x binoculars 10x50",
    "3x 60mm, 2x 120mm, 1x 400mm",
    "eyes, 2x binoculars 10x50, 1x 80mm, 1x 250mm",
  ),
  guests: fc.integer({ min: 1, max: 200 }),
  sky: fc.constantFrom("bortle 2", "bortle 5", "bortle 8", "21.6"),
});

/** Random plans; a night without a session of its own is no plan. */
async function forAnyPlan(check: (answer: Answer, site: Site) => void, numRuns = 25): Promise<void> {
  await fc.assert(
    fc.asyncProperty(anySite, anyOptions, async (site, options) => {
      const answer = await plan(options, site).catch((fault: unknown) => {
        if (fault instanceof AskError && fault.code === "no-night") return null;
        throw fault;
      });
      if (answer !== null) check(answer, site);
    }),
    { numRuns },
  );
}

describe("/outreach plan, any date, site and instruments", () => {
  // astronomy-engine by itself leaves out 20″ of aberration; edges are good to a quarter of a second.
  const SLACK_DEG = 0.02;

  it("shows nothing below the profile or under 15°, and nothing before it is dark enough for it", async () => {
    await forAnyPlan((answer, site) => {
      for (const { what, start, end } of stopsOf(answer)) {
        const target = SHOWABLES.get(what)?.target;
        if (target === undefined) throw new Error(what);
        for (const instant of [
          Date.parse(start),
          (Date.parse(start) + Date.parse(end)) / 2,
          Date.parse(end),
        ]) {
          const at = new Date(instant);
          const place = placeOf(target, site, at);
          expect(place.altitudeDeg, what).toBeGreaterThanOrEqual(15 - SLACK_DEG);
          expect(place.altitudeDeg, what).toBeGreaterThanOrEqual(
            profileDeg(site.skyline, place.azimuthDeg) - SLACK_DEG,
          );
          expect(-sunAltitude(site, at), what).toBeGreaterThanOrEqual(depthNeeded(what) - SLACK_DEG);
        }
      }
    });
  });

  it("lets nothing overlap, and shows first at each station what sets first", async () => {
    await forAnyPlan((answer) => {
      for (const station of new Set(stopsOf(answer).map(({ instrument }) => instrument))) {
        const stops = stopsOf(answer).filter(({ instrument }) => instrument === station);
        stops.forEach((earlier, index) => {
          for (const later of stops.slice(index + 1)) {
            expect(earlier.end <= later.start).toBe(true);
            const waited = later.window.start <= earlier.start;
            if (waited)
              expect(later.window.end >= earlier.window.end, `${earlier.what}, ${later.what}`).toBe(true);
          }
        });
      }
    });
  });

  it("never points within 30° of the Sun while it is up", async () => {
    await forAnyPlan((answer, site) => {
      for (const { what, start, end } of stopsOf(answer)) {
        const target = SHOWABLES.get(what)?.target;
        if (target === undefined) throw new Error(what);
        for (const at of [new Date(start), new Date(end)]) {
          if (sunAltitude(site, at) < -0.9) continue;
          const sun = placeOf({ kind: "body", body: "Sun" }, site, at);
          expect(apartDeg(placeOf(target, site, at), sun), what).toBeGreaterThan(30);
        }
      }
    }, 10);
  });

  it("says of every stop where to look, what one sees and a line to say", async () => {
    await forAnyPlan((answer) => {
      const lines = answer.sections.find(({ heading }) => heading === "By the clock")?.lines ?? [];
      expect(lines).toHaveLength(stopsOf(answer).length);
      for (const line of lines) {
        expect(line).toMatch(/^\d\d:\d\d \S.*, to \d\d:\d\d: .*(fist|sky, in the|overhead|just above)/);
        expect(line).toMatch(/Say: “[^”]{15,}\.”/);
      }
    }, 10);
  });
});

describe("/outreach plan, two evenings at one site", () => {
  const OPTIONS = { instruments: "eyes, 2x binoculars 10x50, 1x 80mm, 1x 250mm", audience: "families" };
  // First quarter was on 17 November 2026, new Moon on 9 November (any almanac; from memory).
  const quarter = () => plan({ ...OPTIONS, night: "2026-11-17" });
  const moonless = () => plan({ ...OPTIONS, night: "2026-11-09" });

  it("differ in what is shown, in its order and in the words", async () => {
    const [bright, dark] = [await quarter(), await moonless()];
    expect(names(bright)).toContain("the Moon");
    expect(names(dark)).not.toContain("the Moon");
    expect(names(bright)).not.toEqual(names(dark));
    expect(wordsOf(bright)).toMatch(/The whole disc at \d+×\. Mountains and craters/);
    expect(wordsOf(bright)).toMatch(/The Moon lights the field/);
    expect(wordsOf(dark)).not.toMatch(/The Moon lights the field|Mountains and craters/);
  });

  it("use the instruments otherwise: the Moon in the small one, what is faint in the large one", async () => {
    const shownIn = (answer: Answer, station: string) =>
      stopsOf(answer).filter(({ instrument }) => instrument === station);
    const [bright, dark] = [await quarter(), await moonless()];
    expect(shownIn(bright, "80 mm telescope").map(({ what }) => what)).toContain("the Moon");
    const faint = (answer: Answer) =>
      shownIn(answer, "250 mm telescope").filter(({ kind }) => kind.endsWith("nebula") || kind === "galaxy");
    expect(faint(dark).length).toBeGreaterThan(0);
    expect(shownIn(dark, "250 mm telescope")).not.toEqual(shownIn(bright, "250 mm telescope"));
  });

  it("name lunar features that stand on the terminator at first quarter", async () => {
    // At first quarter the terminator lies near longitude 0: the Apennines, Ptolemaeus, Walther.
    expect(wordsOf(await quarter())).toMatch(/On the line of shadow: \p{L}/u);
  });
});

describe("/outreach plan for children in a city", () => {
  it("has no faint galaxy in a small telescope", async () => {
    await fc.assert(
      fc.asyncProperty(anyOptions, async ({ night }) => {
        for (const audience of ["families", "school"]) {
          const answer = await plan({
            night,
            audience,
            instruments: "1x 80mm",
            sky: "bortle 8",
            hours: "21:30-23:30",
          }).catch((fault: unknown) => {
            if (fault instanceof AskError && fault.code === "by-day") return null;
            throw fault;
          });
          for (const { kind } of answer === null ? [] : stopsOf(answer)) expect(kind).not.toBe("galaxy");
        }
      }),
      { numRuns: 8 },
    );
  });
});

describe("/outreach plan, what goes with it", () => {
  it("carries its cautions first in the sheet and in the text file", async () => {
    const answer = await plan({ night: "2026-10-17", audience: "families" });
    expect(answer.cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["laser", "children", "mains-power", "dark-site"]),
    );
    const svg = chartSvg(answer.charts[0] as NonNullable<(typeof answer.charts)[0]>);
    const text = new TextDecoder().decode(answer.attachments?.[0]?.bytes);
    const inSvg = svg.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");
    for (const caution of answer.cautions) {
      expect(text.indexOf(caution.text)).toBeLessThan(text.indexOf(answer.title));
      expect(text).toContain(caution.text);
      for (const word of caution.text.split(" ")) expect(inSvg).toContain(word.replaceAll("'", "&#39;"));
    }
    expect(inSvg.indexOf(answer.cautions[0]?.text.split(" ")[0] ?? "?")).toBeLessThan(
      inSvg.indexOf("Public evening"),
    );
  });

  it("keeps the sheet to one page, about as tall as A4 is to its width", async () => {
    for (const audience of ["families", "adults"]) {
      const answer = await plan({ night: "2026-11-17", audience });
      const [, width, height] =
        /width="(\d+)" height="(\d+)"/.exec(chartSvg(answer.charts[0] as never)) ?? [];
      // ISO 216: 1 to √2, and a little more for the cautions.
      expect(Number(height) / Number(width)).toBeLessThan(1.7);
    }
  });

  it("puts the solar caution first while gear stands out before sunset", async () => {
    // Sunset at 54.5° north on 3 October is at 17:43 UTC, 18:43 on the clock (almanac; from memory).
    const early = await plan({ night: "2026-10-03", hours: "18:30-20:30" });
    expect(early.cautions[0]?.id).toBe("sun");
    expect(wordsOf(early)).toMatch(/Until the Sun is down every telescope/);
    const late = await plan({ night: "2026-10-03", hours: "21:00-22:30" });
    expect(late.cautions.map(({ id }) => id)).not.toContain("sun");
  });

  it("warns to cap in time when the session ends close to sunrise", async () => {
    const answer = await plan({ night: "2026-10-03", hours: "05:00-06:45", audience: "adults" });
    expect(answer.cautions.map(({ id }) => id)).toContain("cap-before-sunrise");
  });

  it("says how long each guest has, and that a crowd needs more telescopes", async () => {
    const crowd = await plan({ night: "2026-11-17", guests: 200, instruments: "1x 80mm" });
    expect(wordsOf(crowd)).toMatch(/12 s a guest for 200\. That is less than the 60 s/);
  });

  it("follows from the audience: steps for children, none for adults", async () => {
    const night = "2026-11-17";
    expect(wordsOf(await plan({ night, audience: "school" }))).toMatch(/Steps or a low stool/);
    expect(wordsOf(await plan({ night, audience: "adults" }))).not.toMatch(/Steps or a low stool/);
  });

  it("shows what is asked for before all else, or says that it cannot be", async () => {
    const answer = await plan({
      night: "2026-11-09",
      show: "M15, M104",
      audience: "adults",
      hours: "19:00-22:00",
    });
    expect(names(answer)).toContain("the globular cluster M15");
    expect(wordsOf(answer)).toMatch(/Asked for, and not in the order: the Sombrero Galaxy/);
  });

  it("holds in the south, with the sky of the south", async () => {
    const answer = await plan({ night: "2027-05-06", audience: "adults", sky: "bortle 3" }, KAROO);
    expect(names(answer)).toEqual(
      expect.arrayContaining(["the Southern Cross", "Omega Centauri (NGC 5139)"]),
    );
    expect(names(answer)).not.toContain("Polaris, the pole star");
  });
});

describe("/outreach plan refuses", () => {
  it.each([
    [{ night: "2020-01-01" }, "night", /is over/],
    [{ night: "2026-02-30" }, "night", /does not exist/],
    [{ hours: "noon" }, "hours", /two times of day/],
    [{ hours: "19:00-19:10" }, "hours", /30 minutes to 8 hours/],
    [{ hours: "15:00-16:30" }, "hours", /The Sun is up/],
    [{ hours: "11:00-14:00" }, "hours", /session sun/],
    [{ instruments: "500x 80mm" }, "instruments", /500 is out of range.*1 to 20/],
    [{ instruments: "a bucket" }, "instruments", /“a bucket”.*binoculars 10x50/],
    [{ instruments: "5mm" }, "instruments", /30 to 1000 mm/],
    [{ instruments: "solar 60mm" }, "instruments", /nothing by night/],
    [{ guests: 0 }, "guests", /1 to 500/],
    [{ show: "Sun" }, "show", /Sun session/],
    [{ show: "M300" }, "show", /nothing is called/],
    [{ show: "Mercury", hours: "18:00-20:00" }, "show", /within 30° of the Sun while it is up/],
    [{ audience: "cats" }, "audience", /families/],
    [{ session: "moon" }, "session", /night or sun/],
  ] as const)("%j", async (options, option, message) => {
    const fault = await refusal(options);
    expect(fault.option).toBe(option);
    expect(fault.message).toMatch(message);
    expect(fault.message).not.toMatch(/\n/);
  });

  it("a site where the Sun does not set", async () => {
    const north = { ...FELL, latitudeDeg: 70, longitudeDeg: 20, timeZone: "Europe/Oslo" };
    expect((await refusal({ night: "2027-06-20" }, north)).message).toMatch(/does not set/);
  });
});
