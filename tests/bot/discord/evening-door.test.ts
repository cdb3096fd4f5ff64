import { describe, expect, it } from "vitest";
import { channelTrouble, mayReadHistory } from "../../../bot/discord/client.ts";
import { composeShort, DUE, MOOR, modelHours } from "../evening/fixtures.ts";
import { openScene, type Scene, until } from "./door-scene.ts";
import { Permission } from "./stand-in/state.ts";

/** A clear sky from the store's own cache would need the services; the world's weather is replaced. */
async function openClearEvening(): Promise<Scene> {
  const scene = await openScene({ compose: composeShort }, DUE);
  const clock = () => new Date(scene.standIn.clock.now());
  const clear = {
    at: async (_: unknown, from: Date) => ({
      models: [modelHours(from, () => 0, clock())],
      credits: [],
      problems: [],
    }),
  };
  const { context } = scene.world;
  Object.assign(scene.world, {
    context: () => Object.assign(context(), { forecasts: clear }),
    weather: async () => ({ forecasts: { prefetch: async () => [] } }),
  });
  return scene;
}

describe("an evening through Discord", () => {
  it("is set by an organiser, posted, joined by a press, and left alone elsewhere", async () => {
    const { standIn, guild, channel, world, bot, person } = await openClearEvening();
    const manager = person("Manager");
    manager.permissions |= Permission.manageGuild;
    await world.context().books.sites.save(guild.id, manager.user.id, MOOR, { shared: true });
    const set = manager.command(channel, "club", [
      { name: "set", type: 1, options: [{ name: "channel", type: 7, value: channel.id }] },
    ]);
    expect(JSON.stringify((await until(() => set.reply())).embeds)).toContain(
      "The evening post goes out 3 h",
    );
    await bot.tick();
    const post = standIn.publicMessages(channel)[0];
    if (post === undefined) throw new Error("there is no post");
    const wren = person("Wren");
    const pressed = wren.pressLabel(channel, post, "I'm going out");
    const said = await until(() => pressed.reply());
    expect(said).toMatchObject({ ephemeralFor: wren.user.id });
    expect(said.content).toContain("You are down as going out");
    await bot.settled();
    expect(post.embeds).toMatchObject([{ fields: [{ name: "Going out", value: "Wren" }] }]);
    expect(standIn.publicMessages(channel)).toHaveLength(1);
  });

  it("is not set by anybody else, nor into a channel we may not write in or of another server", async () => {
    const { standIn, guild, channel, person, world } = await openClearEvening();
    const set = async (permissions: bigint, id: string) => {
      const asker = person("Asker");
      asker.permissions |= permissions;
      const heard = asker.command(channel, "club", [
        { name: "set", type: 1, options: [{ name: "channel", type: 7, value: id }] },
      ]);
      return (await until(() => heard.reply())).content;
    };
    expect(await set(0n, channel.id)).toMatch(/Only those who may manage the server/);
    const closed = standIn.addChannel(guild, "closed");
    standIn.deny(closed, Permission.sendMessages | Permission.readHistory);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await set(Permission.manageGuild, closed.id)).toBe(
      "“channel”: I need more there before the evening post can go out: Send Messages, Read Message History.",
    );
    const other = standIn.addGuild("Another club");
    const foreign = standIn.addChannel(other, "evenings");
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await set(Permission.manageGuild, foreign.id)).toMatch(/I cannot see that channel/);
    expect((await world.context().books.clubs.settings(guild.id)).channelId).toBeNull();
  });

  it("knows from the gateway alone where the history may be read", async () => {
    const { standIn, guild, channel, bot } = await openScene();
    expect(mayReadHistory(bot.client, channel.id)).toBe(true);
    expect(channelTrouble(bot.client, guild.id, channel.id)).toBeNull();
    standIn.deny(channel, Permission.readHistory);
    await until(() => mayReadHistory(bot.client, channel.id) === false);
    expect(mayReadHistory(bot.client, "123456789012345678")).toBeNull();
  });
});
