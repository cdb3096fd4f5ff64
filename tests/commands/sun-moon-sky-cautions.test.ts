/**
 * The solar caution over `sun`, `moon`, `planets` and `events`: first whenever the answer bears on the
 * Sun, whatever the instant, the site and the options; and first again on every drawing and calendar.
 */
import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import type { Answer } from "../../commands/answer.ts";
import { AskError } from "../../commands/ask-error.ts";
import type { Command } from "../../commands/command.ts";
import { events } from "../../commands/events.ts";
import { moon } from "../../commands/moon.ts";
import { planets } from "../../commands/planets.ts";
import { bareSite } from "../../commands/read/site.ts";
import { sun } from "../../commands/sun.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";
import { angleBetweenDeg } from "../../core/sky/angles.ts";
import { horizonDirection } from "../../core/targets/observing-conditions.ts";
import { targetTrack } from "../../core/targets/placer.ts";
import type { BodyName } from "../../core/targets/sky-object.ts";
import { fakeRequest } from "./fake-context.ts";
import { worldWith } from "./outreach-site.ts";

const place = fc.record({
  latitudeDeg: fc.double({ min: -75, max: 75, noNaN: true }),
  longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
  skylineDeg: fc.integer({ min: 0, max: 25 }),
  minutes: fc.integer({ min: 0, max: 4 * 365 * 1440 }),
});
type Place = {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly skylineDeg: number;
  readonly minutes: number;
};

const siteOf = ({ latitudeDeg, longitudeDeg, skylineDeg }: Place) => ({
  ...bareSite({ name: "here", latitudeDeg, longitudeDeg, elevationMetres: 0, timeZone: "UTC" }),
  skyline: [{ azimuthDeg: 0, altitudeDeg: skylineDeg }],
});
const instantOf = ({ minutes }: Place) => new Date(Date.UTC(2025, 0, 1) + minutes * 60_000);

/** The answer, or `null` where the question was refused. */
async function ask(
  command: Command,
  where: Place,
  options: Record<string, string | number>,
): Promise<Answer | null> {
  const request = fakeRequest(command.definition.name, options, instantOf(where).toISOString());
  try {
    return await command.answer(request, worldWith(siteOf(where)));
  } catch (refusal) {
    expect(refusal).toBeInstanceOf(AskError);
    return null;
  }
}

/** Whether, somewhere in a span, a body stands within 30° of a Sun whose limb shows. */
function isNearRisenSun(where: Place, body: BodyName, at: Date): boolean {
  const site = siteOf(where);
  const seen = targetTrack(site, { kind: "body", body }, at)(at.getTime());
  const sunSeen = targetTrack(site, { kind: "body", body: "Sun" }, at)(at.getTime());
  const apart = angleBetweenDeg(horizonDirection(seen), horizonDirection(sunSeen));
  return apart <= 30 && sunSeen.altitudeDeg > -0.83;
}

/** The caution stands first in the answer, whole, and over each of its drawings. */
function expectSunFirst(answer: Answer) {
  expect(answer.cautions[0]).toEqual({ id: "sun", text: CAUTION_TEXTS.sun });
  for (const chart of answer.charts) expect(chart.cautions[0]).toBe(CAUTION_TEXTS.sun);
}

describe("the solar caution", () => {
  it("comes first in every answer of `sun`, whatever is asked", async () => {
    const options = fc.record(
      {
        date: fc.constantFrom("2026-06-21", "2026-12-21", "2027-03-20"),
        time: fc.constantFrom("11:00", "23:00"),
      },
      { requiredKeys: [] },
    );
    await fc.assert(
      fc.asyncProperty(place, options, async (where, asked) => {
        const answer = await ask(sun, where, asked as Record<string, string>);
        if (answer !== null) expectSunFirst(answer);
      }),
      { numRuns: 40 },
    );
  });

  it("comes first in `moon` whenever the Moon stands near a risen Sun at an instant the answer names", async () => {
    const options = fc.record(
      {
        feature: fc.constantFrom("Copernicus", "Langrenus", "Grimaldi"),
        nights: fc.integer({ min: 1, max: 10 }),
      },
      { requiredKeys: [] },
    );
    let near = 0;
    await fc.assert(
      fc.asyncProperty(place, options, async (where, asked) => {
        const answer = await ask(moon, where, asked as Record<string, string | number>);
        if (answer === null) return;
        const { disc } = answer.figures as { disc: { at: string } };
        const named = [instantOf(where), new Date(disc.at)];
        if (named.some((at) => isNearRisenSun(where, "Moon", at))) {
          near++;
          expectSunFirst(answer);
        }
      }),
      { numRuns: 120 },
    );
    expect(near).toBeGreaterThan(0);
  });

  it("comes first in `planets` whenever one of them stands near a risen Sun at an instant the answer names", async () => {
    let near = 0;
    await fc.assert(
      fc.asyncProperty(place, async (where) => {
        const answer = await ask(planets, where, {});
        if (answer === null) return;
        const { planets: found } = answer.figures as unknown as {
          planets: { name: BodyName; windows: { start: string; end: string }[] }[];
        };
        const isNear = found.some(({ name, windows }) =>
          [instantOf(where), ...windows.flatMap(({ start, end }) => [new Date(start), new Date(end)])].some(
            (at) => isNearRisenSun(where, name, at),
          ),
        );
        if (isNear) {
          near++;
          expectSunFirst(answer);
        }
        // And no window of a planet lies under a risen Sun at all.
        for (const { name, windows } of found) {
          for (const { start, end } of windows) {
            expect(isNearRisenSun(where, name, new Date(start))).toBe(false);
            expect(isNearRisenSun(where, name, new Date(end))).toBe(false);
          }
        }
      }),
      { numRuns: 40 },
    );
    expect(near).toBeGreaterThan(0);
  });

  it("comes first in `events`, and in the calendar's entry, whenever an eclipse of the Sun or a body within 30° of it is listed", async () => {
    const options = fc.record(
      {
        kind: fc.constantFrom("eclipses", "planets", "conjunctions", "moon"),
        nights: fc.integer({ min: 1, max: 200 }),
      },
      { requiredKeys: [] },
    );
    let solar = 0;
    await fc.assert(
      fc.asyncProperty(place, options, async (where, asked) => {
        const answer = await ask(events, where, asked as Record<string, string | number>);
        if (answer === null) return;
        const { events: found } = answer.figures as unknown as {
          events: { type: string; elongationDeg?: number }[];
        };
        const [file] = answer.attachments ?? [];
        const entries =
          file === undefined
            ? []
            : new ICAL.Component(ICAL.parse(new TextDecoder().decode(file.bytes))).getAllSubcomponents(
                "vevent",
              );
        found.forEach(({ type, elongationDeg }, i) => {
          if (type !== "solar-eclipse" && (elongationDeg ?? 180) > 30) return;
          solar++;
          expectSunFirst(answer);
          const description = String(entries[i]?.getFirstPropertyValue("description") ?? "");
          expect(description.startsWith(CAUTION_TEXTS.sun)).toBe(true);
        });
      }),
      { numRuns: 40 },
    );
    expect(solar).toBeGreaterThan(0);
  });
});
