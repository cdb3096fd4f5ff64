import { type APIApplicationCommandOption, ApplicationCommandOptionType } from "discord-api-types/v10";
import { describe, expect, it } from "vitest";
import { COMMANDS } from "../../../commands/all.ts";
import { parseRigDescription } from "../../../commands/read/rig-description.ts";
import { MOOR } from "../evening/fixtures.ts";
import { openScene, until } from "./door-scene.ts";
import { type AskedOption, buttonsOf } from "./stand-in/person.ts";
import { Permission } from "./stand-in/state.ts";

const SECRET = "Zugspitze";

/** Values that suit most options; a refusal is an answer too. */
function valueFor(option: APIApplicationCommandOption): AskedOption {
  const base = { name: option.name, type: option.type };
  switch (option.type) {
    case ApplicationCommandOptionType.Boolean:
      return { ...base, value: true };
    case ApplicationCommandOptionType.Integer:
    case ApplicationCommandOptionType.Number:
      return { ...base, value: 3 };
    case ApplicationCommandOptionType.String:
      return { ...base, value: option.name === "target" ? "M33" : SECRET };
    default:
      return { ...base, value: "123456789012345678" };
  }
}

/** Every way of asking a command: each subcommand, with what it requires. */
function questions(): readonly { readonly name: string; readonly options: readonly AskedOption[] }[] {
  return COMMANDS.flatMap(({ definition: { name, options } }) => {
    const subcommands = options.flatMap((option) =>
      option.type === ApplicationCommandOptionType.Subcommand ? [option] : [],
    );
    const required = (list: readonly APIApplicationCommandOption[]) =>
      list.filter((option) => option.required === true).map(valueFor);
    if (subcommands.length === 0) return [{ name, options: required(options) }];
    return subcommands.map((one) => ({
      name,
      options: [{ name: one.name, type: 1 as const, options: required(one.options ?? []) }],
    }));
  });
}

describe("two clubs in one bot", () => {
  it("never see each other's rows, by any command, completion or button", { timeout: 60_000 }, async () => {
    const { standIn, guild, channel, world, person } = await openScene();
    const there = standIn.addGuild("The other club");
    const otherChannel = standIn.addChannel(there, "evenings");
    const wren = person("Wren");
    wren.permissions |= Permission.manageGuild;
    const { books } = world.context();
    const rig = { ...parseRigDescription("rig", "400mm f/5.6, 23.5x15.7mm, 3.76um"), name: `${SECRET} rig` };
    await books.sites.save(guild.id, wren.user.id, { ...MOOR, name: `${SECRET} site` }, { shared: true });
    await books.rigs.save(guild.id, wren.user.id, rig);
    await books.notify.set(guild.id, wren.user.id, { siteName: `${SECRET} site`, leastHours: 7 });
    await books.clubs.change(guild.id, { rig: `${SECRET} outfit`, trouble: `${SECRET} trouble` });

    // Seen where it belongs, so that the test can fail.
    const own = wren.command(channel, "site", [{ name: "list", type: 1, options: [] }]);
    const ownReply = await until(() => own.reply());
    expect(JSON.stringify(ownReply)).toContain(`${SECRET} site`);

    for (const { name, options } of questions()) {
      const heard = wren.command(otherChannel, name, options);
      await until(() => heard.reply() ?? heard.followUps()[0]);
    }
    for (const name of ["site", "rig", "filter"]) {
      const heard = wren.type(otherChannel, "tonight", [{ name, type: 3, value: "", focused: true }]);
      const choices = await until(() => heard.interaction.choices);
      expect(JSON.stringify(choices)).not.toContain(SECRET);
    }
    // A refusal repeats the asker's own word; nothing else may say it.
    const seen = JSON.stringify(otherChannel.messages).replaceAll(`“${SECRET}”`, "");
    expect(seen).not.toMatch(new RegExp(`${SECRET} (site|rig|outfit|trouble)`));

    const asked = wren.command(channel, "night", [{ name: "site", type: 3, value: `${SECRET} site` }]);
    const answer = await until(() => asked.reply());
    const button = buttonsOf(answer)[0];
    if (button === undefined) throw new Error("the night's answer has no button");
    const pressed = wren.press(otherChannel, answer, button.custom_id);
    const refusal = await until(() => pressed.reply());
    expect(refusal.content).toMatch(/has had its time/);
    expect(refusal.embeds).toEqual([]);
  });
});
