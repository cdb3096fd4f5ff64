/** Public sessions through the whole of Discord's door: asked, pressed, checked for who may. */
import { describe, expect, it } from "vitest";
import { CAUTION_TEXTS } from "../../../config/caution-texts.ts";
import { MOOR } from "../evening/fixtures.ts";
import { openScene, type Scene, until } from "./door-scene.ts";
import type { AskedOption, Person } from "./stand-in/person.ts";
import { type Channel, Permission } from "./stand-in/state.ts";

const AT = new Date("2026-11-03T12:00:00Z");

type Club = Scene & { readonly office: Channel; readonly manager: Person };

async function openClub(): Promise<Club> {
  const scene = await openScene({}, AT);
  const none = { at: async () => ({ models: [], credits: [], problems: [] }) };
  const { context } = scene.world;
  Object.assign(scene.world, { context: () => Object.assign(context(), { forecasts: none }) });
  const office = scene.standIn.addChannel(scene.guild, "organisers");
  const manager = scene.person("Manager");
  manager.permissions |= Permission.manageGuild;
  await scene.world.context().books.sites.save(scene.guild.id, manager.user.id, MOOR, { shared: true });
  await new Promise((resolve) => setTimeout(resolve, 50));
  return { ...scene, office, manager };
}

const text = (name: string, value: string): AskedOption => ({ name, type: 3, value });

async function ask(
  { channel }: Club,
  who: Person,
  subcommand: string,
  options: readonly AskedOption[] = [],
): Promise<string> {
  const heard = who.command(channel, "outreach", [{ name: subcommand, type: 1, options }]);
  const reply = await until(() => (heard.interaction.thinking ? null : heard.reply()));
  expect(reply.ephemeralFor).toBe(who.user.id);
  return `${reply.content}\n${JSON.stringify(reply.embeds)}`;
}

async function set(club: Club, events: boolean): Promise<string> {
  return ask(club, club.manager, "settings", [
    { name: "channel", type: 7, value: club.channel.id },
    { name: "organisers-channel", type: 7, value: club.office.id },
    { name: "events", type: 5, value: events },
  ]);
}

describe("/outreach announce in Discord", () => {
  it("is set, announced with its event, answered by a press, changed and called off", async () => {
    const club = await openClub();
    expect(await set(club, true)).toMatch(/Sessions can be announced/);
    const said = await ask(club, club.manager, "announce", [
      text("night", "2026-11-17"),
      text("name", "Half Moon night"),
      text("audience", "families"),
    ]);
    expect(said).toMatch(/Announced: Half Moon night/);
    const [event] = club.guild.events;
    expect(event).toMatchObject({ name: "Half Moon night", status: 1 });
    expect(String(event?.image)).toMatch(/^data:image\/png;base64,iVBORw0KGgo/);
    expect(String(event?.description).startsWith(`Caution. ${CAUTION_TEXTS.children}`)).toBe(true);

    const [message] = club.standIn.publicMessages(club.channel);
    if (message === undefined) throw new Error("no message");
    expect(message.attachments.map(({ filename }) => filename)).toEqual([
      "night.png",
      "outreach-2026-11-17.ics",
    ]);
    expect(message.attachments[0]?.description).toMatch(/The heights of/);
    expect(JSON.stringify(message)).not.toContain("54.5");

    const wren = club.person("Wren");
    const pressed = wren.pressLabel(club.channel, message, "I'll come");
    expect((await until(() => pressed.reply())).content).toMatch(/counted as coming/);
    await club.bot.settled();
    expect(JSON.stringify(message.embeds)).toContain("Coming: 1.");

    expect(await ask(club, club.manager, "change", [text("hours", "19:00-21:30")])).toMatch(
      /Changed: Half Moon night/,
    );
    expect(club.guild.events).toMatchObject([{ scheduled_start_time: "2026-11-17T19:00:00.000Z" }]);
    expect(await ask(club, club.manager, "cancel")).toMatch(/Called off: Half Moon night/);
    expect(club.guild.events).toMatchObject([{ status: 4 }]);
    expect(
      await ask(club, club.manager, "change", [text("event", "Half Moon night"), text("place", "Moor")]),
    ).toMatch(/is called off and cannot be changed/);
    expect(club.standIn.publicMessages(club.channel)).toHaveLength(1);
  });

  it("puts the solar caution first in a Sun session's event and message", async () => {
    const club = await openClub();
    await set(club, true);
    const said = await ask(club, club.manager, "announce", [
      text("session", "sun"),
      text("night", "2026-11-10"),
    ]);
    expect(said.startsWith("**Caution.** The Sun blinds")).toBe(true);
    expect(String(club.guild.events[0]?.description).startsWith(`Caution. ${CAUTION_TEXTS.sun}`)).toBe(true);
    expect(
      club.standIn.publicMessages(club.channel)[0]?.content.startsWith(`**Caution.** ${CAUTION_TEXTS.sun}`),
    ).toBe(true);
  });

  it("is refused to everybody but organisers, in the bot", async () => {
    const club = await openClub();
    await set(club, false);
    const wren = club.person("Wren");
    for (const subcommand of ["announce", "change", "cancel", "settings"]) {
      expect(await ask(club, wren, subcommand)).toMatch(/Only those who may manage the server/);
    }
    expect(club.standIn.publicMessages(club.channel)).toEqual([]);
  });

  it("refuses with one sentence each, and leaves nothing half done", async () => {
    const club = await openClub();
    const refused = async (...options: AskedOption[]) => ask(club, club.manager, "announce", options);
    expect(await refused(text("night", "2026-11-17"))).toMatch(/No channel is set/);
    await set(club, false);
    expect(await refused(text("name", "@everyone come"))).toMatch(/without mentions/);
    expect(await refused(text("place", "<#123>"))).toMatch(/without mentions/);
    expect(await refused(text("night", "2020-11-17"))).toMatch(/is over/);
    expect(await refused(text("site", "54.5, -2.6"))).toMatch(/never coordinates/);
    expect(await ask(club, club.manager, "cancel")).toMatch(/no session is announced/);
    expect(club.standIn.publicMessages(club.channel)).toEqual([]);
    expect(club.guild.events).toEqual([]);
    await refused(text("night", "2026-11-17"), text("name", "Twice"));
    expect(await refused(text("night", "2026-11-17"), text("name", "twice"))).toMatch(/announced .* already/);
    expect(club.standIn.publicMessages(club.channel)).toHaveLength(1);
  });

  it("says what is missing when the bot may not create events, and announces nothing", async () => {
    const club = await openClub();
    await set(club, true);
    club.standIn.faults.add("POST", /scheduled-events$/, { kind: "status", status: 403, code: 50_013 });
    const said = await ask(club, club.manager, "announce", [text("night", "2026-11-17")]);
    expect(said).toMatch(/nothing was announced.*Create Events/);
    expect(club.standIn.publicMessages(club.channel)).toEqual([]);
    expect(club.guild.events).toEqual([]);
  });

  it("carries go or no-go to the organisers, whose press alone tells the public", async () => {
    const club = await openClub();
    await set(club, true);
    await ask(club, club.manager, "announce", [text("night", "2026-11-17")]);
    club.standIn.clock.set(new Date("2026-11-17T12:00:00Z"));
    await club.bot.tick();
    const [note] = club.standIn.publicMessages(club.office);
    if (note === undefined) throw new Error("no note");
    const wren = club.person("Wren");
    const refused = wren.pressLabel(club.office, note, "Tell the public");
    expect((await until(() => refused.reply())).content).toMatch(/Only those who may manage the server/);
    const told = club.manager.pressLabel(club.office, note, "Tell the public");
    expect((await until(() => told.reply())).content).toBe("The public is told.");
    expect(club.standIn.publicMessages(club.channel)).toHaveLength(2);
  });
});
