import { describe, expect, it } from "vitest";
import type { Answer } from "../../commands/answer.ts";
import { eveningPost } from "../../commands/evening-post.ts";
import { season } from "../../commands/season.ts";
import { tonight } from "../../commands/tonight.ts";
import { NO_FILTER } from "../core/rig/fake-rig.ts";
import { H_ALPHA, LONG_MONO } from "../core/targets/night-of-a-rig.ts";
import { hoursFrom, modelOf } from "../core/weather/sample-night.ts";
import { eveningContext } from "./evening-context.ts";
import { fakeRequest } from "./fake-context.ts";

const AT = "2026-10-10T17:00:00Z";

type TargetFigure = {
  readonly object: { readonly id: string };
  readonly filter: string;
  readonly windows: readonly { readonly start: string; readonly end: string }[];
  readonly usableHours: number;
  readonly countingHours: number;
  readonly moonCost: number | null;
  readonly fillFraction: number | null;
  readonly peakAltitudeDeg: number;
  readonly reasons: readonly string[];
};

async function ask(
  options: Record<string, string | number> = {},
  context = eveningContext(),
): Promise<Answer> {
  return tonight.answer(fakeRequest("tonight", options, AT), context);
}

const targetsOf = (answer: Answer) => answer.figures.targets as unknown as readonly TargetFigure[];

function skies(cloudPercent: number) {
  const hours = hoursFrom("2026-10-10T12:00", 48, () => ({ cloudPercent }));
  return eveningContext({ report: { models: [modelOf(hours)], credits: ["Credit."], problems: [] } });
}

describe("/tonight", () => {
  it("gives the figures of the contract", async () => {
    const answer = await ask({ filter: "656/7", limit: 7 });
    expect(answer.figures).toMatchObject({ night: "2026-10-10", verdict: null });
    expect(answer.figures.considered).toBeGreaterThanOrEqual(12_000);
    expect(targetsOf(answer)).toHaveLength(7);
    for (const row of targetsOf(answer)) {
      expect(row.countingHours).toBeGreaterThan(0);
      expect(row.countingHours).toBeLessThanOrEqual(row.usableHours * 1.05);
      expect(row.moonCost).toBeGreaterThanOrEqual(1);
      expect(row.peakAltitudeDeg).toBeGreaterThanOrEqual(30);
      expect(row.reasons.length).toBeGreaterThanOrEqual(3);
      for (const reason of row.reasons) expect(reason).toMatch(/^\S.*\.$/);
    }
  });

  it("is headed Fits tonight and shows no score", async () => {
    const answer = await ask();
    expect(answer.title).toMatch(/^Fits tonight: Fell End, Saturday 10 October/);
    expect(JSON.stringify(answer.sections)).not.toMatch(/score|\/ ?10\b|★/);
  });

  it("weighs every filter of the rig and names the one that suits each row", async () => {
    const answer = await ask(
      { limit: 20 },
      eveningContext({ rig: { ...LONG_MONO, filters: [H_ALPHA, NO_FILTER] } }),
    );
    const filters = new Set(targetsOf(answer).map(({ filter }) => filter));
    expect(filters).toEqual(new Set(["Hα", "none"]));
  });

  it("keeps to clear spans on a clear night and to the case that it clears on a cloudy one", async () => {
    const cloudy = await ask({}, skies(100));
    expect(cloudy.figures).toMatchObject({ verdict: "no-go", ifItClears: true });
    expect(cloudy.summary).toMatch(/If it clears, first choice: /);
    const clear = await ask({}, skies(0));
    expect(clear.figures).toMatchObject({ verdict: "go", ifItClears: false });
  });

  it("brings what is begun to the front and says what is left, in which filter", async () => {
    const tally = { object: "NGC 7635", passband: "Hα", night: "2026-09-12", frames: 48, rejected: 0 };
    const context = eveningContext({
      inHand: [{ ...tally, clockHours: 4, countingHours: 3.5 }],
      wanted: [
        { object: "NGC 7635", passband: "Hα", hours: 6 },
        { object: "NGC 7635", passband: "[O III]", hours: 8 },
      ],
    });
    const place = (answer: Answer) => targetsOf(answer).findIndex(({ object }) => object.id === "NGC 7635");
    const options = { filter: "656/7" };
    const [before, after] = [await ask(options), await ask(options, context)];
    expect(place(before)).toBe(-1);
    expect(place(after)).toBe(0);
    const sentences = targetsOf(after)[place(after)]?.reasons.join(" ");
    expect(sentences).toContain("Begun: 4 h in hand, still wanted 2 h of Hα and 8 h of [O III].");
  });

  it("lays out the evening by the clock, in order", async () => {
    const steps = (await ask()).figures.runCard as unknown as { at: string; step: string }[];
    expect(steps.map(({ step }) => step)).toEqual(expect.arrayContaining(["set-up", "dark", "start", "end"]));
    expect([...steps].sort((one, other) => one.at.localeCompare(other.at))).toEqual(steps);
  });

  it("answers in a northern June, when it never gets dark", async () => {
    const answer = await tonight.answer(
      fakeRequest("tonight", { site: "60, 10" }, "2026-06-20T20:00:00Z"),
      eveningContext(),
    );
    expect(answer.summary).not.toBe("");
    expect(answer.figures.targets).toBeDefined();
  });

  it.each([
    [{ limit: 0 }, "limit"],
    [{ limit: 51 }, "limit"],
    [{ site: "91, 0" }, "site"],
    [{ rig: "0mm f/5" }, "rig"],
  ])("refuses %j by its option", async (options, option) => {
    await expect(ask(options as Record<string, string>)).rejects.toMatchObject({ name: "AskError", option });
  });
});

describe("/season", () => {
  it("gives twelve months and the best weeks", async () => {
    const answer = await season.answer(fakeRequest("season", { target: "NGC 6888" }, AT), eveningContext());
    expect(answer.figures.months).toHaveLength(12);
    expect(answer.figures.best).toMatchObject({ from: expect.stringMatching(/^20\d\d-/) });
  });

  it("puts the solar text first for what stands beside the Sun by day", async () => {
    // Regulus is half a degree from the ecliptic; the Sun passes it about 23 August.
    const answer = await season.answer(
      fakeRequest("season", { target: "Regulus" }, "2026-08-20T12:00:00Z"),
      eveningContext(),
    );
    expect(answer.cautions[0]?.id).toBe("sun");
    expect(answer.charts[0]?.cautions[0]).toBe(answer.cautions[0]?.text);
  });

  it("sends a planet to its own command", async () => {
    const asked = season.answer(fakeRequest("season", { target: "Jupiter" }, AT), eveningContext());
    await expect(asked).rejects.toMatchObject({ option: "target" });
  });
});

describe("eveningPost", () => {
  const post = (context = skies(0)) => eveningPost(fakeRequest("evening", {}, AT), context);

  it("says go with its window on a clear night", async () => {
    const { answer, verdict, window, night } = await post();
    expect({ verdict, night }).toEqual({ verdict: "go", night: "2026-10-10" });
    expect(window).not.toBeNull();
    expect(answer.title).toMatch(/^Go tonight: Fell End/);
    expect(answer.credits).toEqual(["Credit."]);
  });

  it("has no verdict without a forecast, and still tells the astronomy", async () => {
    const { answer, verdict } = await post(eveningContext());
    expect(verdict).toBeNull();
    expect(answer.title).toMatch(/^No forecast/);
    expect(answer.sections.some(({ heading }) => heading.startsWith("Fits tonight"))).toBe(true);
  });
});
