import { describe, expect, it, onTestFinished } from "vitest";
import { Person } from "./stand-in/person.ts";
import { type StandIn, startStandIn } from "./stand-in/stand-in.ts";
import { Permission } from "./stand-in/state.ts";

// The limits are those of Discord's developer documentation; see stand-in/ASSUMPTIONS.md for the rest.

async function open() {
  const standIn = await startStandIn();
  onTestFinished(() => standIn.stop());
  const channel = standIn.addChannel(standIn.addGuild("Fell End"), "evenings");
  return { standIn, channel };
}

async function ask(
  standIn: StandIn,
  method: string,
  path: string,
  body?: unknown,
  token = standIn.state.token,
) {
  const response = await fetch(`${standIn.apiBase}/v10${path}`, {
    method,
    headers: {
      authorization: `Bot ${token}`,
      "user-agent": "DiscordBot (https://example.org, 1)",
      "content-type": "application/json",
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const text = await response.text();
  return { status: response.status, body: text === "" ? null : JSON.parse(text) };
}

describe("the stand-in", () => {
  it.each([
    ["text over 2000 characters", { content: "x".repeat(2001) }],
    ["an embed's title over 256", { embeds: [{ title: "x".repeat(257) }] }],
    [
      "embeds over 6000 in all",
      { embeds: [{ description: "x".repeat(3500) }, { description: "x".repeat(3500) }] },
    ],
    ["a nonce over 25", { content: "x", nonce: "n".repeat(26) }],
    ["two buttons of one id", { content: "x", components: [row("a"), row("a")] }],
    ["an id over 100", { content: "x", components: [row("i".repeat(101))] }],
    ["six rows", { content: "x", components: ["a", "b", "c", "d", "e", "f"].map(row) }],
    ["an empty message", { content: "" }],
  ])("refuses %s", async (_, body) => {
    const { standIn, channel } = await open();
    const reply = await ask(standIn, "POST", `/channels/${channel.id}/messages`, body);
    expect(reply.status).toBe(400);
    expect(channel.messages).toEqual([]);
  });

  it("remembers an enforced nonce for two minutes and then forgets it", async () => {
    const { standIn, channel } = await open();
    const body = { content: "x", nonce: "abc", enforce_nonce: true };
    const send = () => ask(standIn, "POST", `/channels/${channel.id}/messages`, body);
    const first = await send();
    standIn.clock.advance(119_000);
    expect((await send()).body.id).toBe(first.body.id);
    standIn.clock.advance(2000);
    expect((await send()).body.id).not.toBe(first.body.id);
    expect(channel.messages).toHaveLength(2);
  });

  it("shows an empty history where it may not be read", async () => {
    const { standIn, channel } = await open();
    await ask(standIn, "POST", `/channels/${channel.id}/messages`, { content: "x" });
    standIn.deny(channel, Permission.readHistory);
    expect(await ask(standIn, "GET", `/channels/${channel.id}/messages`)).toEqual({ status: 200, body: [] });
  });

  it("forgets an interaction after three seconds, and takes one acknowledgement", async () => {
    const { standIn, channel } = await open();
    const wren = new Person(standIn, "Wren");
    const acknowledge = ({ interaction }: ReturnType<Person["command"]>) =>
      ask(standIn, "POST", `/interactions/${interaction.id}/${interaction.token}/callback`, { type: 5 });
    const quick = wren.command(channel, "night");
    expect((await acknowledge(quick)).status).toBe(204);
    expect((await acknowledge(quick)).body.code).toBe(40_060);
    const late = wren.command(channel, "night");
    standIn.clock.advance(3001);
    expect((await acknowledge(late)).body.code).toBe(10_062);
  });

  it("counts what Discord would count as invalid, and limits each route", async () => {
    const { standIn, channel } = await open();
    await ask(standIn, "GET", "/users/@me", undefined, "wrong");
    const statuses: number[] = [];
    for (let sent = 0; sent < 6; sent++) {
      const reply = await ask(standIn, "POST", `/channels/${channel.id}/messages`, { content: "x" });
      statuses.push(reply.status);
    }
    expect(statuses).toEqual([200, 200, 200, 200, 200, 429]);
    expect(standIn.rest.invalidRequests).toBe(2);
  });

  it.each([
    ["an event in the past", { scheduled_start_time: "2020-01-01T20:00:00Z" }],
    ["an event without a place", { entity_metadata: {} }],
    ["an event without an end", { scheduled_end_time: undefined }],
  ])("refuses %s", async (_, wrong) => {
    const { standIn, channel } = await open();
    standIn.clock.set(new Date("2026-10-01T12:00:00Z"));
    const event = {
      name: "Public evening",
      privacy_level: 2,
      entity_type: 3,
      channel_id: null,
      entity_metadata: { location: "Fell End" },
      scheduled_start_time: "2026-10-10T19:00:00Z",
      scheduled_end_time: "2026-10-10T21:00:00Z",
    };
    const path = `/guilds/${channel.guildId}/scheduled-events`;
    expect((await ask(standIn, "POST", path, event)).status).toBe(200);
    expect((await ask(standIn, "POST", path, { ...event, ...wrong })).status).toBe(400);
  });
});

function row(id: string): object {
  return { type: 1, components: [{ type: 2, style: 2, label: "Go", custom_id: id }] };
}
