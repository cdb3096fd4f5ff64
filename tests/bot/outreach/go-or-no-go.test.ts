/** What organisers are told before a session, and what they release to the public. */
import { describe, expect, it } from "vitest";
import { noteDue } from "../../../bot/outreach/go-or-no-go.ts";
import { buttonsOf } from "../discord/stand-in/person.ts";
import type { StoredMessage } from "../discord/stand-in/state.ts";
import { HOUR_MS, invitation, MINUTE_MS, openSessions, type SessionScene, START } from "./session-scene.ts";

const hoursBefore = (hours: number) => new Date(START.getTime() - hours * HOUR_MS);
type Embed = { readonly title: string; readonly description: string };
const embedOf = (message: StoredMessage | undefined) => message?.embeds[0] as Embed;

async function announced(): Promise<SessionScene & { readonly id: string }> {
  const scene = await openSessions();
  const outcome = await scene.announcements.announce(scene.guild.id, invitation(), null);
  if (outcome.kind !== "done") throw new Error(outcome.kind);
  return Object.assign(scene, { id: outcome.announced.id });
}

async function release(
  scene: SessionScene,
  note: StoredMessage | undefined,
  organiser = true,
): Promise<string> {
  const [button] = note === undefined ? [] : buttonsOf(note);
  const parts = button?.custom_id.split(":") ?? [];
  expect(button?.label).toBe("Tell the public");
  return scene.door.press(
    scene.guild.id,
    { id: "someone", organiser },
    { kind: "word", note: parts[1] ?? "", id: parts[2] ?? "" },
  );
}

describe("noteDue", () => {
  it.each([
    [25, null],
    [24, "day-before"],
    [3.01, "day-before"],
    [3, "three-hours"],
    [0.01, "three-hours"],
    [0, null],
    [-1, null],
  ])("%d hours before is %s", (hours, kind) => {
    expect(noteDue(START, hoursBefore(hours))).toBe(kind);
  });
});

describe("go or no-go", () => {
  it("goes to the organisers the day before and three hours before, once each, and to nobody else", async () => {
    const scene = await announced();
    const other = await scene.another("another process");
    for (let hours = 30; hours > -2; hours -= 0.25) {
      scene.at(hoursBefore(hours));
      await scene.run.tick();
      await other.run.tick();
    }
    expect(scene.notes()).toHaveLength(2);
    expect(scene.messages()).toHaveLength(1);
    for (const note of scene.notes()) {
      expect(embedOf(note).title).toBe("Go: Half Moon night");
      expect(embedOf(note).description).toMatch(
        /Forecast for the session: go, 2 h 30 min of 2 h 30 min usable/,
      );
      expect(embedOf(note).description).toMatch(/It is on: Half Moon night/);
      expect(note.pinged).toEqual([]);
    }
  });

  it("goes out late when the bot was down at the hour, and not after the beginning", async () => {
    const scene = await announced();
    scene.at(hoursBefore(1));
    await scene.run.tick();
    expect(scene.notes()).toHaveLength(1);
    const late = await announced();
    late.at(hoursBefore(-0.1));
    await late.run.tick();
    expect(late.notes()).toEqual([]);
  });

  it("says so when there is no forecast", async () => {
    const scene = await announced();
    scene.weather = null;
    scene.at(hoursBefore(20));
    await scene.run.tick();
    expect(embedOf(scene.notes()[0]).title).toBe("No verdict: Half Moon night");
    expect(embedOf(scene.notes()[0]).description).toMatch(/No forecast is at hand/);
  });

  it("is sent again for a session moved to another day, and not for one called off", async () => {
    const scene = await announced();
    scene.at(hoursBefore(20));
    await scene.run.tick();
    const dayLater = { start: hoursBefore(-24), end: hoursBefore(-26.5) };
    await scene.announcements.change(
      scene.guild.id,
      scene.id,
      invitation({ night: "2026-11-18", span: dayLater }),
      null,
    );
    await scene.run.tick();
    expect(scene.notes()).toHaveLength(1);
    scene.at(hoursBefore(0));
    await scene.run.tick();
    expect(scene.notes()).toHaveLength(2);
    await scene.announcements.cancel(scene.guild.id, scene.id);
    scene.at(hoursBefore(-22));
    await scene.run.tick();
    expect(scene.notes()).toHaveLength(2);
  });
});

describe("the words for the public", () => {
  it("go out once, as a reply to the invitation, when an organiser releases them", async () => {
    const scene = await announced();
    scene.at(hoursBefore(20));
    await scene.run.tick();
    expect(scene.messages()).toHaveLength(1);
    const [note] = scene.notes();
    expect(await release(scene, note)).toBe("The public is told.");
    expect(await release(scene, note)).toBe("The public was told before.");
    const [invited, word, ...more] = scene.messages();
    expect(more).toEqual([]);
    expect(embedOf(word).title).toBe("It is on: Half Moon night");
    expect(word?.replyTo).toBe(invited?.id);
    expect(word === undefined ? [] : buttonsOf(word).map(({ label }) => label)).toEqual([
      "I'll come",
      "Can't come",
    ]);
  });

  it("are released by nobody else", async () => {
    const scene = await announced();
    scene.at(hoursBefore(20));
    await scene.run.tick();
    expect(await release(scene, scene.notes()[0], false)).toMatch(/Only those who may manage the server/);
    expect(scene.messages()).toHaveLength(1);
  });

  it("of a no-go call the session off: event, message and all", async () => {
    const scene = await announced();
    scene.weather = () => 100;
    scene.at(hoursBefore(2.5));
    await scene.run.tick();
    const [note] = scene.notes();
    expect(embedOf(note).title).toBe("No-go: Half Moon night");
    expect(embedOf(note).description).toMatch(/also calls the session off/);
    expect(scene.events().map(({ status }) => status)).toEqual([1]);
    expect(await release(scene, note)).toBe("The public is told, and the session is called off.");
    expect(scene.events().map(({ status }) => status)).toEqual([4]);
    expect(scene.messages().map((message) => embedOf(message).title)).toEqual([
      "Called off: Half Moon night",
      "Called off: Half Moon night",
    ]);
  });

  it("go out after a restart when Discord did not answer at first", async () => {
    const scene = await announced();
    scene.at(hoursBefore(20));
    await scene.run.tick();
    scene.standIn.faults.add("POST", /\/messages$/, { kind: "lost-request" }, Number.POSITIVE_INFINITY);
    expect(await release(scene, scene.notes()[0])).toMatch(/I go on trying/);
    scene.standIn.faults.clear();
    const next = await scene.another("after the restart");
    scene.standIn.clock.advance(5 * MINUTE_MS);
    await next.run.tick();
    expect(scene.messages().map((message) => embedOf(message).title)).toEqual([
      "Half Moon night",
      "It is on: Half Moon night",
    ]);
  });

  it("of a session moved since are not released", async () => {
    const scene = await announced();
    scene.at(hoursBefore(20));
    await scene.run.tick();
    const dayLater = { start: hoursBefore(-24), end: hoursBefore(-26.5) };
    await scene.announcements.change(
      scene.guild.id,
      scene.id,
      invitation({ night: "2026-11-18", span: dayLater }),
      null,
    );
    expect(await release(scene, scene.notes()[0])).toMatch(/over, or was changed since/);
    expect(scene.messages()).toHaveLength(1);
  });
});
