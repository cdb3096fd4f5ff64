import { ApplicationCommandOptionType } from "discord-api-types/v10";
import { describe, expect, it } from "vitest";
import { asDiscordTakes } from "../../../bot/discord/completion.ts";
import { MOOR } from "../evening/fixtures.ts";
import { commandOf, openScene, plainAnswer, until } from "./door-scene.ts";

const focused = (name: string, value: string) => [{ name, type: 3, value, focused: true }];

describe("completion", () => {
  it("knows objects by name, and the member's own sites and filters", async () => {
    const { person, channel, guild, world } = await openScene();
    const wren = person("Wren");
    await world.context().books.sites.save(guild.id, wren.user.id, { ...MOOR, name: "Old Quarry" });
    const ask = (name: string, value: string) => {
      const heard = wren.type(channel, "tonight", focused(name, value));
      return until(() => heard.interaction.choices);
    };
    expect(await ask("site", "old")).toEqual([{ name: "Old Quarry", value: "Old Quarry" }]);
    expect(await ask("site", "nothing like it")).toEqual([]);
    expect(await ask("filter", "h-a")).toMatchObject([{ value: "h-alpha" }]);
    const heard = wren.type(channel, "target", focused("target", "ngc 688"));
    expect(JSON.stringify(await until(() => heard.interaction.choices))).toContain("6888");
  });

  it("lets a command complete its own options", async () => {
    const { person, channel } = await openScene({
      commands: [
        commandOf("own", async () => plainAnswer(), {
          options: [
            {
              type: ApplicationCommandOptionType.String,
              name: "word",
              description: "A word",
              autocomplete: true,
            },
          ],
          complete: async (option, typed) => [{ name: `${option} ${typed}`, value: typed }],
        }),
      ],
    });
    const heard = person("Wren").type(channel, "own", focused("word", "abc"));
    expect(await until(() => heard.interaction.choices)).toEqual([{ name: "word abc", value: "abc" }]);
  });

  it("shows no choices when completing fails, and logs why", async () => {
    const { person, channel, log } = await openScene({
      commands: [
        commandOf("own", async () => plainAnswer(), {
          complete: async () => {
            throw new Error("the list is gone");
          },
        }),
      ],
    });
    const heard = person("Wren").type(channel, "own", focused("word", "abc"));
    expect(await until(() => heard.interaction.choices)).toEqual([]);
    expect(log.join()).toContain("the list is gone");
  });

  it("never offers more or longer than Discord takes", () => {
    const many = Array.from({ length: 60 }, (_, index) => ({
      name: `n${index}`.repeat(60),
      value: `v${index}`,
    }));
    const taken = asDiscordTakes([
      { name: "long", value: "x".repeat(101) },
      { name: "", value: "x" },
      ...many,
    ]);
    expect(taken).toHaveLength(25);
    expect(taken.every(({ name, value }) => name.length <= 100 && value.length <= 100)).toBe(true);
  });
});
