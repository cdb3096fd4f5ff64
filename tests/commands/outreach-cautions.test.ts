/** The solar caution of public sessions: first, whole, and out of reach of every option. */
import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import type { Answer } from "../../commands/answer.ts";
import { AskError } from "../../commands/ask-error.ts";
import { outreach } from "../../commands/outreach.ts";
import { draftInvitation } from "../../commands/outreach-invitation.ts";
import type { OptionValue, Request } from "../../commands/request.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import { FELL } from "../core/targets/night-of-a-rig.ts";
import { eveningContext } from "./evening-context.ts";
import { fakeRequest } from "./fake-context.ts";
import { sunAltitude } from "./outreach-sky.ts";

const AT = "2026-10-03T12:00:00Z";
const SUN = CAUTION_TEXTS.sun;

/** Where there is no chat to announce in. */
const consoleContext = () => Object.assign(eveningContext(), { announcements: undefined });

type Options = Readonly<Record<string, OptionValue>>;

function request(subcommand: string, options: Options): Request {
  const asked = fakeRequest("outreach", options, AT);
  return { ...asked, subcommand, member: { ...asked.member, organiser: true } };
}

async function ask(subcommand: string, options: Options): Promise<Answer | null> {
  try {
    return await outreach.answer(request(subcommand, options), consoleContext());
  } catch (fault) {
    if (fault instanceof AskError) return null;
    throw fault;
  }
}

const anyNight = fc
  .date({ min: new Date("2026-10-04"), max: new Date("2028-10-01"), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

const anyOptions = fc
  .record({
    night: anyNight,
    audience: fc.option(fc.constantFrom("families", "school", "adults", "mixed"), { nil: undefined }),
    hours: fc.option(fc.constantFrom("10:00-12:00", "16:00-18:30", "19:00-21:00", "04:30-07:30"), {
      nil: undefined,
    }),
    instruments: fc.option(
      fc.constantFrom("eyes", "1x 80mm", "eyes, binoculars 10x50, 1x 250mm, solar 60mm"),
      {
        nil: undefined,
      },
    ),
    guests: fc.option(fc.integer({ min: 1, max: 100 }), { nil: undefined }),
    session: fc.option(fc.constantFrom("night", "sun"), { nil: undefined }),
  })
  .map(
    (options) =>
      Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined)) as Options,
  );

function textOf(answer: Answer, ending: string): string {
  const file = answer.attachments?.find(({ name }) => name.endsWith(ending));
  return new TextDecoder().decode(file?.bytes);
}

describe("a session of the Sun", () => {
  it("carries it first in the answer, on every chart, in the text file, whatever is asked with it", async () => {
    await fc.assert(
      fc.asyncProperty(anyOptions, async (options) => {
        for (const subcommand of ["plan", "dates"]) {
          const answer = await ask(subcommand, { ...options, session: "sun" });
          if (answer === null) continue;
          expect(answer.cautions[0]).toEqual({ id: "sun", text: SUN });
          expect(answer.charts.length).toBeGreaterThan(0);
          for (const { cautions } of answer.charts) expect(cautions[0]).toBe(SUN);
          if (subcommand === "plan") expect(textOf(answer, ".txt").startsWith(`CAUTION. ${SUN}`)).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("carries it first in the draft, the calendar file and the picture of its announcement", async () => {
    await fc.assert(
      fc.asyncProperty(anyOptions, async (options) => {
        const answer = await ask("announce", { ...options, session: "sun" });
        if (answer === null) return;
        expect(answer.cautions[0]).toEqual({ id: "sun", text: SUN });
        const [event] = new ICAL.Component(ICAL.parse(textOf(answer, ".ics"))).getAllSubcomponents("vevent");
        expect(String(event?.getFirstPropertyValue("description")).startsWith(SUN)).toBe(true);
        const asked = request("announce", { ...options, session: "sun" });
        const { invitation, chart } = await draftInvitation(asked, consoleContext(), {
          name: null,
          place: null,
        });
        expect(invitation.cautions[0]?.id).toBe("sun");
        expect(chart.cautions[0]).toBe(SUN);
      }),
      { numRuns: 20 },
    );
  });
});

describe("an evening", () => {
  it("carries it first whenever gear stands out or anybody looks while the Sun is up", async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(anyOptions, async (options) => {
        const answer = await ask("plan", { ...options, session: "night" });
        if (answer === null) return;
        const { setUp, end } = answer.figures as { readonly setUp: string; readonly end: string };
        const isUp = [setUp, end].some((at) => sunAltitude(FELL, new Date(at)) > -0.7);
        if (!isUp) return;
        seen += 1;
        expect(answer.cautions[0]?.id).toBe("sun");
        for (const { cautions } of answer.charts) expect(cautions[0]).toBe(SUN);
        expect(textOf(answer, ".txt").startsWith(`CAUTION. ${SUN}`)).toBe(true);
      }),
      { numRuns: 60 },
    );
    expect(seen).toBeGreaterThan(0);
  });
});
