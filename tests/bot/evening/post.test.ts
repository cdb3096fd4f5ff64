import { describe, expect, it } from "vitest";
import { buttonsOf } from "../discord/stand-in/person.ts";
import { Permission } from "../discord/stand-in/state.ts";
import { CLEAR, clearFrom, clearUntil, HOUR_MS, OVERCAST, openEvening } from "./evening-scene.ts";

// At the moor on 3 October 2026 the Sun sets near 17:40 UTC and true darkness lasts from
// about 19:35 to 04:20 UTC; the club's post is due three hours before sunset.
const MESSAGES = /\/channels\/\d+\/messages$/;

describe("the evening post", () => {
  it("goes out once when it is due, with its key on it", async () => {
    const scene = await openEvening();
    scene.at("2026-10-03T13:00:00Z");
    await scene.run.tick();
    expect(scene.messages()).toHaveLength(0);
    scene.at("2026-10-03T14:45:00Z");
    await scene.run.tick();
    await scene.pass(60);
    const [message, ...more] = scene.messages();
    expect(more).toEqual([]);
    const key = String(message?.nonce);
    expect(key).toMatch(/^[0-9a-f]{24}$/);
    expect(message && buttonsOf(message)).toMatchObject([
      { label: "I'm going out", custom_id: `out:2026-10-03:${key}` },
    ]);
    expect(message?.pinged).toEqual([]);
  });

  it("begins with the cautions, whole", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    expect(scene.messages()[0]?.content).toBe("**Caution.** It will be cold: gloves, hat, a warm drink.");
  });

  it.each([
    ["the request is lost", { kind: "lost-request" }, 1],
    ["the reply is lost", { kind: "lost-reply" }, 1],
    ["the reply is lost three times", { kind: "lost-reply" }, 3],
    ["the server fails twice", { kind: "status", status: 503 }, 2],
    ["the limit asks for a short pause", { kind: "rate-limit", retryAfterSeconds: 4 }, 1],
    ["the limit asks for ten minutes", { kind: "rate-limit", retryAfterSeconds: 600 }, 1],
    ["the whole lease goes by in failures", { kind: "status", status: 502 }, 4],
  ] as const)("goes out once although %s", async (_, fault, times) => {
    const scene = await openEvening();
    scene.standIn.faults.add("POST", MESSAGES, fault, times);
    await scene.run.tick();
    await scene.pass(30);
    expect(scene.messages()).toHaveLength(1);
  });

  it.each([
    ["lets us see it no more", 403, 50_001],
    ["lets us write no more", 403, 50_013],
    ["is gone", 404, 10_003],
  ])("leaves a channel alone that %s, and has the organisers told", async (_, status, code) => {
    const scene = await openEvening();
    scene.standIn.faults.add("POST", MESSAGES, { kind: "status", status, code }, Number.POSITIVE_INFINITY);
    await scene.run.tick();
    await scene.pass(60);
    expect(scene.attempts()).toBe(1);
    expect(scene.standIn.rest.invalidRequests).toBeLessThanOrEqual(1);
    const settings = await scene.books.clubs.settings(scene.guild.id);
    expect(settings).toMatchObject({ channelId: null, troubleTold: false });
    expect(settings.trouble).toContain("I may not write in the channel of the evening post");
  });

  it("is never made again when it was deleted before we heard that it had arrived", async () => {
    const scene = await openEvening();
    let letGo = () => {};
    const release = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    const held = new Promise<void>((onHeld) => {
      scene.standIn.faults.add("POST", MESSAGES, { kind: "held-reply", release, onHeld });
    });
    const ticking = scene.run.tick();
    await held;
    scene.channel.messages.length = 0;
    // The first attempt's own time-out ends it; the next learns that the message is gone.
    await ticking;
    letGo();
    await scene.pass(60);
    expect(scene.messages()).toEqual([]);
  });

  it("is sent late while it helps, and not later", async () => {
    const late = await openEvening();
    late.at("2026-10-03T20:20:00Z");
    await late.run.tick();
    expect(late.messages()).toHaveLength(1);
    const tooLate = await openEvening();
    tooLate.at("2026-10-03T20:50:00Z");
    await tooLate.run.tick();
    expect(tooLate.messages()).toHaveLength(0);
  });

  it("waits for a forecast, and goes out at the tick that has one", async () => {
    const scene = await openEvening();
    scene.weather = null;
    await scene.run.tick();
    await scene.pass(20);
    expect(scene.messages()).toHaveLength(0);
    scene.weather = CLEAR;
    await scene.pass(5);
    expect(scene.messages()).toHaveLength(1);
  });

  it("goes out in the night when an overcast sky turns good with two hours of its window left", async () => {
    const scene = await openEvening();
    scene.weather = OVERCAST;
    await scene.run.tick();
    scene.at("2026-10-03T23:00:00Z");
    await scene.run.tick();
    expect(scene.messages()).toHaveLength(0);
    scene.weather = clearFrom("2026-10-03T23:00:00Z");
    await scene.pass(20);
    expect(scene.messages()).toHaveLength(1);
  });

  it("stays away when less than two hours of the window are left", async () => {
    const scene = await openEvening();
    scene.weather = OVERCAST;
    await scene.run.tick();
    scene.weather = clearUntil("2026-10-04T00:30:00Z");
    scene.at("2026-10-03T23:00:00Z");
    await scene.pass(60);
    expect(scene.messages()).toHaveLength(0);
  });

  it("goes out on the nights the club wants to hear of", async () => {
    const scene = await openEvening();
    // Two clear hours of nine: not a go, which needs two and a half.
    scene.weather = clearUntil("2026-10-03T21:30:00Z");
    await scene.run.tick();
    expect(scene.messages()).toHaveLength(0);
    await scene.books.clubs.change(scene.guild.id, { postOn: "marginal" });
    await scene.pass(20);
    expect(scene.messages()).toHaveLength(1);
    const gloomy = await openEvening();
    gloomy.weather = OVERCAST;
    await gloomy.books.clubs.change(gloomy.guild.id, { postOn: "every-night" });
    await gloomy.run.tick();
    expect(gloomy.messages()).toHaveLength(1);
  });

  it("goes out once from two processes on one store", async () => {
    const scene = await openEvening();
    const other = await scene.another("another process");
    await Promise.all([scene.run.tick(), other.tick()]);
    await Promise.all([scene.pass(15), other.tick()]);
    expect(scene.messages()).toHaveLength(1);
    expect(scene.attempts()).toBe(1);
  });

  it("does not go out again when the clock is set back", async () => {
    const scene = await openEvening();
    await scene.run.tick();
    scene.standIn.clock.advance(-1 * HOUR_MS);
    await scene.pass(120);
    scene.standIn.clock.advance(-48 * HOUR_MS);
    await scene.pass(30);
    const nights = scene.messages().map(({ embeds }) => JSON.stringify(embeds));
    expect(new Set(nights).size).toBe(nights.length);
  });

  it("is not sent when it may have arrived and nobody can look", async () => {
    const scene = await openEvening();
    const key = { club: scene.guild.id, night: "2026-10-03", kind: "evening" };
    const at = scene.world.clock();
    await scene.world.claims.claim(key, scene.channel.id, "a dead process", at, 120_000);
    await scene.world.claims.beginSend(key, "a dead process", at, 0);
    scene.mayReadHistory = false;
    scene.standIn.deny(scene.channel, Permission.readHistory);
    await scene.pass(60);
    expect(scene.attempts()).toBe(0);
    expect((await scene.world.claims.find(key))?.state).toBe("abandoned");
    expect((await scene.books.clubs.settings(scene.guild.id)).trouble).toContain("Read Message History");
  });

  it("waits while the history cannot be read just now, and looks again", async () => {
    const scene = await openEvening();
    const key = { club: scene.guild.id, night: "2026-10-03", kind: "evening" };
    const at = scene.world.clock();
    await scene.world.claims.claim(key, scene.channel.id, "a dead process", at, 120_000);
    await scene.world.claims.beginSend(key, "a dead process", at, 0);
    scene.standIn.faults.add("GET", MESSAGES, { kind: "status", status: 503 }, 2);
    await scene.pass(10);
    expect(scene.attempts()).toBe(0);
    await scene.pass(10);
    expect(scene.messages()).toHaveLength(1);
  });

  it("is settled, not sent, when an interrupted one is found after it helps", async () => {
    const scene = await openEvening();
    const key = { club: scene.guild.id, night: "2026-10-03", kind: "evening" };
    const at = scene.world.clock();
    await scene.world.claims.claim(key, scene.channel.id, "a dead process", at, 120_000);
    await scene.world.claims.beginSend(key, "a dead process", at, 0);
    scene.at("2026-10-04T03:00:00Z");
    await scene.run.tick();
    expect(scene.attempts()).toBe(0);
    expect((await scene.world.claims.find(key))?.state).toBe("abandoned");
  });

  it("keeps clubs apart: each has its own, in its own channel", async () => {
    const scene = await openEvening();
    const guild = scene.standIn.addGuild("Another circle");
    const channel = scene.standIn.addChannel(guild, "evenings");
    await scene.books.sites.save(
      guild.id,
      "somebody",
      { ...(await moor(scene)), name: "Low Field" },
      { shared: true },
    );
    await scene.books.clubs.change(guild.id, { channelId: channel.id });
    await scene.run.tick();
    expect(JSON.stringify(scene.messages())).toContain("High Moor");
    expect(JSON.stringify(scene.messages())).not.toContain("Low Field");
    expect(JSON.stringify(channel.messages)).toContain("Low Field");
    expect(channel.messages).toHaveLength(1);
    expect(scene.messages()).toHaveLength(1);
  });
});

async function moor({ books, guild }: Awaited<ReturnType<typeof openEvening>>) {
  const [saved] = await books.sites.list(guild.id, "a-member");
  if (saved === undefined) throw new Error("the moor is not kept");
  return saved.site;
}
