/** Event and message of a public session stand or fall together, whatever dies in between. */
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { eventOf } from "../../../bot/outreach/carry-out.ts";
import { eventClaim } from "../../../bot/outreach/make-event.ts";
import { calendarOf, sessionId } from "../../../bot/outreach/session-message.ts";
import type { SessionRecord } from "../../../bot/store/outreach-book.ts";
import type { AnnounceOutcome } from "../../../commands/announcements.ts";
import { CAUTION_TEXTS } from "../../../config/caution-texts.ts";
import { LEASE_MS } from "../../../config/evening.ts";
import { buttonsOf } from "../discord/stand-in/person.ts";
import type { StoredMessage } from "../discord/stand-in/state.ts";
import { EARLY, HOUR_MS, invitation, openSessions, type SessionScene, START } from "./session-scene.ts";

const EVENTS = /\/scheduled-events$/;
const MESSAGES = /\/messages$/;

const announce = (scene: SessionScene, parts = {}) =>
  scene.announcements.announce(scene.guild.id, invitation(parts), null);

function announcedId(outcome: AnnounceOutcome): string {
  if (outcome.kind === "refused") throw new Error(outcome.reason);
  return outcome.announced.id;
}

/** What Discord shows of a message's embed. */
type Embed = {
  readonly title: string;
  readonly description: string;
  readonly fields: readonly { readonly name: string; readonly value: string }[];
};
const embedOf = (message: StoredMessage | undefined) => message?.embeds[0] as Embed;

describe("announcing", () => {
  it("makes one event and one message, each with what it needs", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    expect(scene.events()).toHaveLength(1);
    expect(scene.events()[0]).toMatchObject({
      name: "Half Moon night",
      entity_type: 3,
      privacy_level: 2,
      channel_id: null,
      entity_metadata: { location: "The field behind the hall" },
      scheduled_start_time: START.toISOString(),
      scheduled_end_time: "2026-11-17T21:00:00.000Z",
      status: 1,
    });
    const description = String(scene.events()[0]?.description);
    expect(description.startsWith(`Caution. ${CAUTION_TEXTS.children}`)).toBe(true);
    expect(description.endsWith(`Duskbell ${id}`)).toBe(true);

    const [message, ...others] = scene.messages();
    expect(others).toEqual([]);
    expect(embedOf(message).title).toBe("Half Moon night");
    expect(message?.content).toContain(CAUTION_TEXTS.children);
    expect(embedOf(message).fields).toEqual([
      { name: "When", value: `<t:${START.getTime() / 1000}:F> to <t:${START.getTime() / 1000 + 9000}:t>` },
      { name: "Who comes", value: "Coming: 0. Can't come: 0." },
    ]);
    expect(message === undefined ? [] : buttonsOf(message).map(({ label }) => label)).toEqual([
      "I'll come",
      "Can't come",
    ]);
    expect(message?.attachments.map(({ filename }) => filename)).toEqual(["outreach-2026-11-17.ics"]);
    expect(message?.pinged).toEqual([]);
  });

  it("asks nothing of the server's events where the club did not switch them on", async () => {
    const scene = await openSessions(false);
    expect((await announce(scene)).kind).toBe("done");
    expect(scene.events()).toEqual([]);
    expect(scene.standIn.rest.requests.filter(({ path }) => path.includes("scheduled-events"))).toEqual([]);
    expect(scene.messages()).toHaveLength(1);
  });

  it("puts the whole solar caution first in the event, the message and the calendar file", async () => {
    const scene = await openSessions();
    const cautions = (["sun", "children", "dark-site", "cold"] as const).map((id) => ({
      id,
      text: CAUTION_TEXTS[id],
    }));
    const outcome = await announce(scene, {
      cautions,
      session: "sun",
      name: "The Sun at noon",
      summary: "Come and look. ".repeat(60),
    });
    expect(outcome.kind).toBe("done");
    const description = String(scene.events()[0]?.description);
    expect(description.startsWith(`Caution. ${CAUTION_TEXTS.sun}`)).toBe(true);
    expect(description.length).toBeLessThanOrEqual(1000);
    expect(scene.messages()[0]?.content.startsWith(`**Caution.** ${CAUTION_TEXTS.sun}`)).toBe(true);
  });

  it("leaves nothing behind when the event is refused", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", EVENTS, { kind: "status", status: 403, code: 50_013 });
    const outcome = await announce(scene);
    expect(outcome).toMatchObject({ kind: "refused" });
    expect(outcome.kind === "refused" && outcome.reason).toMatch(/nothing was announced.*Create Events/);
    expect(scene.events()).toEqual([]);
    expect(scene.messages()).toEqual([]);
    await scene.run.tick();
    expect(scene.messages()).toEqual([]);
    expect(await scene.announcements.list(scene.guild.id)).toEqual([]);
  });

  it("takes the event back when the message is refused", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", MESSAGES, { kind: "status", status: 403, code: 50_001 });
    const outcome = await announce(scene);
    expect(outcome.kind === "refused" && outcome.reason).toMatch(/could not be sent, and no event stands/);
    expect(scene.events().map(({ status }) => status)).toEqual([4]);
    expect(scene.messages()).toEqual([]);
    await scene.run.tick();
    expect(scene.messages()).toEqual([]);
  });

  it("can be announced anew after it fell", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", EVENTS, { kind: "status", status: 403, code: 50_013 });
    await announce(scene);
    expect((await announce(scene)).kind).toBe("done");
    expect(scene.events()).toHaveLength(1);
    expect(scene.messages()).toHaveLength(1);
  });

  it("makes one event though the reply to the first attempt is lost", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", EVENTS, { kind: "lost-reply" });
    expect((await announce(scene)).kind).toBe("done");
    expect(scene.events()).toHaveLength(1);
    expect(scene.messages()).toHaveLength(1);
  });

  it("sends one message though the reply to the first attempt is lost", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", MESSAGES, { kind: "lost-reply" });
    expect((await announce(scene)).kind).toBe("done");
    expect(scene.messages()).toHaveLength(1);
  });

  it("goes on after a restart between event and message", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", MESSAGES, { kind: "lost-request" }, Number.POSITIVE_INFINITY);
    expect((await announce(scene)).kind).toBe("pending");
    expect(scene.events()).toHaveLength(1);
    expect(scene.messages()).toEqual([]);
    scene.standIn.faults.clear();
    const next = await scene.another("after the restart");
    scene.standIn.clock.advance(5 * 60_000);
    await next.run.tick();
    expect(scene.events()).toHaveLength(1);
    expect(scene.messages()).toHaveLength(1);
    expect((await next.announcements.list(scene.guild.id))[0]?.state).toBe("announced");
  });

  it("adopts the event of a process that died before it wrote the event down", async () => {
    const scene = await openSessions();
    const { world, guild } = scene;
    const record: SessionRecord = {
      club: guild.id,
      id: sessionId(guild.id, "halfmoonnight", "2026-11-17", 0),
      state: "announcing",
      revision: 0,
      channelId: scene.channel.id,
      messageId: null,
      eventWanted: true,
      eventId: null,
      invitation: invitation(),
      picture: null,
    };
    await scene.book.add(record, world.clock());
    const claim = eventClaim(guild.id, "2026-11-17", record.id);
    await world.claims.claim(claim, guild.id, "the dead process", world.clock(), LEASE_MS);
    await world.claims.beginSend(claim, "the dead process", world.clock(), 1000);
    await world.events.create(guild.id, eventOf(record), 1000);
    await scene.run.tick();
    expect(scene.messages()).toEqual([]);
    scene.standIn.clock.advance(LEASE_MS + 1);
    await scene.run.tick();
    expect(scene.events()).toHaveLength(1);
    expect(scene.messages()).toHaveLength(1);
    expect((await scene.announcements.list(guild.id))[0]?.state).toBe("announced");
  });

  it("is carried on by one of two processes, not by both", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", MESSAGES, { kind: "lost-request" }, Number.POSITIVE_INFINITY);
    await announce(scene);
    scene.standIn.faults.clear();
    scene.standIn.clock.advance(5 * 60_000);
    const others = [await scene.another("second"), await scene.another("third")];
    await Promise.all(others.map(({ run }) => run.tick()));
    scene.standIn.clock.advance(5 * 60_000);
    await Promise.all(others.map(({ run }) => run.tick()));
    expect(scene.events()).toHaveLength(1);
    expect(scene.messages()).toHaveLength(1);
  });

  it("is given up, and its event taken back, once the session has begun", async () => {
    const scene = await openSessions();
    scene.standIn.faults.add("POST", MESSAGES, { kind: "lost-request" }, Number.POSITIVE_INFINITY);
    await announce(scene);
    scene.standIn.faults.clear();
    scene.at(new Date(START.getTime() + 60_000));
    await scene.run.tick();
    expect(scene.messages()).toEqual([]);
    expect(scene.events().map(({ status }) => status)).toEqual([4]);
  });
});

describe("a change", () => {
  const later = { start: new Date(START.getTime() + HOUR_MS), end: new Date("2026-11-17T22:00:00Z") };

  it("is followed by event, message and calendar file, and sends nothing anew", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    const changed = invitation({ span: later, place: "The car park" });
    expect((await scene.announcements.change(scene.guild.id, id, changed, null)).kind).toBe("done");
    expect(scene.events()).toHaveLength(1);
    expect(scene.events()[0]).toMatchObject({
      scheduled_start_time: later.start.toISOString(),
      entity_metadata: { location: "The car park" },
      status: 1,
    });
    expect(scene.messages()).toHaveLength(1);
    expect(embedOf(scene.messages()[0]).fields[0]?.value).toContain(`<t:${later.start.getTime() / 1000}:F>`);
    expect((await scene.announcements.list(scene.guild.id))[0]?.revision).toBe(1);
  });

  it("goes on after a restart half way", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    scene.standIn.faults.add("PATCH", /\/messages\//, { kind: "lost-request" }, Number.POSITIVE_INFINITY);
    const outcome = await scene.announcements.change(scene.guild.id, id, invitation({ span: later }), null);
    expect(outcome.kind).toBe("pending");
    scene.standIn.faults.clear();
    const next = await scene.another("after the restart");
    await next.run.tick();
    expect(embedOf(scene.messages()[0]).fields[0]?.value).toContain(`<t:${later.start.getTime() / 1000}:F>`);
    expect((await next.announcements.list(scene.guild.id))[0]?.state).toBe("announced");
  });

  it("of a cancelled session is refused", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    await scene.announcements.cancel(scene.guild.id, id);
    expect(await scene.announcements.change(scene.guild.id, id, invitation(), null)).toMatchObject({
      kind: "refused",
    });
    expect(embedOf(scene.messages()[0]).title).toBe("Called off: Half Moon night");
  });
});

describe("calling off", () => {
  it("is followed by event, message and calendar file", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    expect((await scene.announcements.cancel(scene.guild.id, id)).kind).toBe("done");
    expect(scene.events().map(({ status }) => status)).toEqual([4]);
    const [message] = scene.messages();
    expect(embedOf(message).title).toBe("Called off: Half Moon night");
    expect(message?.components).toMatchObject([{ components: [{ label: "Called off", disabled: true }] }]);
    const again = await scene.announcements.cancel(scene.guild.id, id);
    expect(again).toMatchObject({ kind: "refused", reason: "That session is called off already." });
  });

  it("does not stumble over an event or a message that somebody removed", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    scene.guild.events.splice(0);
    scene.standIn.faults.add("PATCH", /\/messages\//, { kind: "status", status: 404, code: 10_008 });
    expect((await scene.announcements.cancel(scene.guild.id, id)).kind).toBe("done");
  });
});

describe("the buttons", () => {
  it("count each member once, whichever was pressed last", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    const press = (member: string, isComing: boolean) =>
      scene.door.press(scene.guild.id, { id: member, organiser: false }, { kind: "come", id, isComing });
    await press("wren", true);
    await press("hollis", true);
    await press("hollis", false);
    expect(await press("wren", true)).toMatch(/counted as coming/);
    await scene.door.settled();
    expect(embedOf(scene.messages()[0]).fields[1]?.value).toBe("Coming: 1. Can't come: 1.");
    expect(scene.messages()[0]?.attachments).toHaveLength(1);
  });

  it("say when a session is over, called off or unknown", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    const press = (which: string) =>
      scene.door.press(
        scene.guild.id,
        { id: "wren", organiser: false },
        { kind: "come", id: which, isComing: true },
      );
    expect(await press("0".repeat(24))).toMatch(/know nothing/);
    scene.at("2026-11-17T21:00:01Z");
    expect(await press(id)).toMatch(/over/);
    scene.at(EARLY);
    await scene.announcements.cancel(scene.guild.id, id);
    expect(await press(id)).toMatch(/called off/);
  });

  it("are counted for one club alone", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    const said = await scene.door.press(
      "another club",
      { id: "wren", organiser: true },
      { kind: "come", id, isComing: true },
    );
    expect(said).toMatch(/know nothing/);
    expect(await scene.book.guests(scene.guild.id, id)).toEqual({ coming: 0, notComing: 0 });
  });
});

describe("the calendar file", () => {
  it("keeps one key through changes, counts them up, and is cancelled in the end (RFC 5545)", async () => {
    const scene = await openSessions();
    const id = announcedId(await announce(scene));
    const read = async () => {
      const record = await scene.book.find(scene.guild.id, id);
      if (record === null) throw new Error("gone");
      const text = new TextDecoder().decode(calendarOf(record, new Date(EARLY)).bytes);
      const [event] = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent");
      if (event === undefined) throw new Error("no event");
      return event;
    };
    const first = await read();
    expect(first.getFirstPropertyValue("sequence")).toBe(0);
    expect(first.getFirstPropertyValue("status")).toBe("CONFIRMED");
    expect(String(first.getFirstPropertyValue("description")).startsWith(CAUTION_TEXTS.children)).toBe(true);
    await scene.announcements.change(scene.guild.id, id, invitation({ place: "Elsewhere" }), null);
    await scene.announcements.cancel(scene.guild.id, id);
    const last = await read();
    expect(last.getFirstPropertyValue("uid")).toBe(first.getFirstPropertyValue("uid"));
    expect(last.getFirstPropertyValue("sequence")).toBe(2);
    expect(last.getFirstPropertyValue("status")).toBe("CANCELLED");
    expect(last.getFirstPropertyValue("location")).toBe("Elsewhere");
    expect(JSON.stringify(last.toJSON())).not.toContain("54.5");
  });
});
