import { ApplicationCommandOptionType } from "discord-api-types/v10";
import { describe, expect, it } from "vitest";
import { startDiscord } from "../../../bot/discord/start.ts";
import { listClubs } from "../../../bot/store/club-rows.ts";
import { COMMANDS } from "../../../commands/all.ts";
import { AskError, WorldError } from "../../../commands/ask-error.ts";
import type { Request } from "../../../commands/request.ts";
import { commandOf, openScene, plainAnswer, until } from "./door-scene.ts";
import { buttonsOf } from "./stand-in/person.ts";
import { Permission } from "./stand-in/state.ts";

const puts = (requests: readonly { readonly method: string; readonly path: string }[]) =>
  requests.filter(({ method, path }) => method === "PUT" && path.includes("/commands"));

describe("signing in", () => {
  it("asks for the Guilds intent alone", async () => {
    const { standIn } = await openScene();
    expect(standIn.gateway.intents).toBe(1);
  });

  it("registers every command once, and nothing at a restart", async () => {
    const { standIn, bot, again } = await openScene();
    expect(bot.registered).toBe(true);
    expect(standIn.state.commands.get("global")).toHaveLength(COMMANDS.length);
    expect((await again()).registered).toBe(false);
    expect(puts(standIn.rest.requests)).toHaveLength(1);
  });

  it("registers anew when a word of one command differs", async () => {
    const { standIn, again } = await openScene();
    const kept = standIn.state.commands.get("global")?.[0] ?? {};
    kept.description = "Another word";
    expect((await again()).registered).toBe(true);
    expect(puts(standIn.rest.requests)).toHaveLength(2);
  });

  it("registers to one server alone when told to", async () => {
    const { standIn, guild, settings, world } = await openScene();
    const bot = await startDiscord({ ...settings, discordGuild: guild.id }, world, { schedule: false });
    expect(standIn.state.commands.get(guild.id)).toHaveLength(COMMANDS.length);
    await bot.stop();
  });

  it("says in one sentence that the token was refused", async () => {
    const { settings, world } = await openScene();
    const refused = startDiscord({ ...settings, discordToken: "another.token.altogether" }, world, {
      schedule: false,
    });
    await expect(refused).rejects.toThrow(WorldError);
    await expect(refused).rejects.toThrow(/refused the token/);
  });

  it("takes up the session again after the gateway broke off, and hears what came meanwhile", async () => {
    const { standIn, person, channel } = await openScene({
      commands: [commandOf("here", async () => plainAnswer())],
    });
    standIn.gateway.drop();
    const heard = person("Wren").command(channel, "here");
    const reply = await until(() => heard.reply());
    expect(reply.embeds).toMatchObject([{ title: "A title" }]);
    expect(standIn.gateway.resumes).toBe(1);
    expect(standIn.gateway.identifies).toBe(1);
  });
});

describe("a command", () => {
  it("is acknowledged at once and answered to the asker alone", async () => {
    const { person, channel, standIn } = await openScene({
      commands: [
        commandOf("slow", async () => {
          await new Promise((resolve) => setTimeout(resolve, 300));
          return plainAnswer({ title: "At last" });
        }),
      ],
    });
    const wren = person("Wren");
    const heard = wren.command(channel, "slow");
    await until(() => heard.interaction.acknowledgedMs);
    expect(heard.reply()).toBeNull();
    const reply = await until(() => heard.reply());
    expect(reply.ephemeralFor).toBe(wren.user.id);
    expect(standIn.publicMessages(channel)).toEqual([]);
  });

  it("answers everyone where its audience is the channel, and refuses the asker alone", async () => {
    let refuse = false;
    const { person, channel, standIn } = await openScene({
      commands: [
        commandOf(
          "aloud",
          async () => {
            if (refuse) throw new AskError("no", "night", "“night” must be a date.");
            return plainAnswer();
          },
          { audience: "channel" },
        ),
      ],
    });
    const wren = person("Wren");
    const first = wren.command(channel, "aloud");
    await until(() => first.reply());
    await until(() => standIn.publicMessages(channel)[0]);
    refuse = true;
    const heard = wren.command(channel, "aloud");
    const refusal = await until(() => heard.followUps()[0]);
    expect(refusal).toMatchObject({ content: "“night” must be a date.", ephemeralFor: wren.user.id });
    expect(standIn.publicMessages(channel)).toHaveLength(1);
  });

  it("hands its options over as its definition types them", async () => {
    let asked: Request | null = null;
    const { person, channel } = await openScene({
      commands: [
        commandOf(
          "typed",
          async (request) => {
            asked = request;
            return plainAnswer();
          },
          {
            options: [
              {
                type: ApplicationCommandOptionType.Subcommand,
                name: "one",
                description: "One of them",
                options: [
                  { type: ApplicationCommandOptionType.String, name: "site", description: "Where" },
                  { type: ApplicationCommandOptionType.Number, name: "hours", description: "How long" },
                  { type: ApplicationCommandOptionType.Boolean, name: "default", description: "Whether" },
                ],
              },
            ],
          },
        ),
      ],
    });
    const wren = person("Wren");
    const options = [
      { name: "site", type: 3, value: "High Moor" },
      { name: "hours", type: 10, value: 2.5 },
      { name: "default", type: 5, value: true },
    ];
    const heard = wren.command(channel, "typed", [{ name: "one", type: 1, options }]);
    await until(() => heard.reply());
    expect(asked).toMatchObject({
      command: "typed",
      subcommand: "one",
      options: { site: "High Moor", hours: 2.5, default: true },
      member: { id: wren.user.id, name: "Wren", organiser: false },
      club: channel.guildId,
    });
  });

  it.each([
    [
      "too many words",
      { name: "word", type: 3, value: "x".repeat(7000) },
      "“word” has 7000 characters: it may have 0 to 6000.",
    ],
    ["nothing", { name: "word", type: 3, value: "  " }, "“word” is empty: it needs a value."],
    ["a number out of range", { name: "count", type: 4, value: 9 }, "“count” must be from 1 to 5."],
    ["what is no choice", { name: "pick", type: 3, value: "c" }, "“pick” must be one of: a, b."],
    ["an option it does not have", { name: "other", type: 3, value: "c" }, /I do not know “other” here/],
  ])("refuses %s in one sentence", async (_, option, sentence) => {
    const { person, channel } = await openScene({
      commands: [
        commandOf("strict", async () => plainAnswer(), {
          options: [
            { type: ApplicationCommandOptionType.String, name: "word", description: "A word" },
            {
              type: ApplicationCommandOptionType.Integer,
              name: "count",
              description: "A number",
              min_value: 1,
              max_value: 5,
            },
            {
              type: ApplicationCommandOptionType.String,
              name: "pick",
              description: "One of two",
              choices: [
                { name: "a", value: "a" },
                { name: "b", value: "b" },
              ],
            },
          ],
        }),
      ],
    });
    const heard = person("Wren").command(channel, "strict", [option]);
    const reply = await until(() => heard.reply());
    if (typeof sentence === "string") expect(reply.content).toBe(sentence);
    else expect(reply.content).toMatch(sentence);
  });

  it("names a fault of ours by an incident number and keeps it whole in the log", async () => {
    const { person, channel, log } = await openScene({
      commands: [
        commandOf("broken", async () => {
          throw new Error("a table is missing");
        }),
      ],
    });
    const heard = person("Wren").command(channel, "broken");
    const reply = await until(() => heard.reply());
    const incident = /incident ([0-9a-f]{6})/.exec(reply.content)?.[1];
    expect(incident).toBeDefined();
    expect(reply.content).not.toContain("table");
    expect(log.some((line) => line.includes(incident ?? "?") && line.includes("a table is missing"))).toBe(
      true,
    );
  });

  it("is answered once when two processes hear it", async () => {
    let answered = 0;
    const { person, channel, again, standIn } = await openScene({
      commands: [
        commandOf(
          "once",
          async () => {
            answered += 1;
            return plainAnswer();
          },
          { audience: "channel" },
        ),
      ],
    });
    await again();
    const heard = person("Wren").command(channel, "once");
    await until(() => heard.reply());
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(answered).toBe(1);
    expect(standIn.publicMessages(channel)).toHaveLength(1);
  });

  it("rings nobody, whatever its words say", async () => {
    const { person, channel, standIn } = await openScene({
      commands: [
        commandOf("loud", async () => plainAnswer({ summary: "@everyone <@123456789012345678>" }), {
          audience: "channel",
        }),
      ],
    });
    person("Wren").command(channel, "loud");
    const message = await until(() => standIn.publicMessages(channel)[0]);
    expect(message.pinged).toEqual([]);
    expect(JSON.stringify(message.embeds)).toContain("\\\\@everyone");
  });

  it("makes somebody an organiser by permission or role, never otherwise", async () => {
    const seen: boolean[] = [];
    const { person, channel, guild, standIn, world } = await openScene({
      commands: [
        commandOf("who", async ({ member }) => {
          seen.push(member.organiser);
          return plainAnswer();
        }),
      ],
    });
    const role = standIn.addRole(guild, "Organisers");
    await world.context().books.clubs.change(guild.id, { organiserRoleId: role });
    const asks = [person("Plain"), person("Manager"), person("With role"), person("With another role")];
    const [, manager, holder, other] = asks;
    if (manager) manager.permissions |= Permission.manageGuild;
    if (holder) holder.roles = [role];
    if (other) other.roles = [standIn.clock.snowflake()];
    for (const one of asks) {
      const heard = one.command(channel, "who");
      await until(() => heard.reply());
    }
    expect(seen).toEqual([false, true, true, false]);
  });

  it("tells an organiser once what is wrong with the evening post", async () => {
    const { person, channel, guild, world } = await openScene({
      commands: [commandOf("here", async () => plainAnswer())],
    });
    await world.context().books.clubs.change(guild.id, { trouble: "The channel is closed to me." });
    const plain = person("Plain").command(channel, "here");
    await until(() => plain.reply());
    const manager = person("Manager");
    manager.permissions |= Permission.manageGuild;
    const told = manager.command(channel, "here");
    const notice = await until(() => told.followUps()[0]);
    expect(notice).toMatchObject({
      content: "The channel is closed to me.",
      ephemeralFor: manager.user.id,
    });
    expect(plain.followUps()).toEqual([]);
    await until(() =>
      world
        .context()
        .books.clubs.settings(guild.id)
        .then(({ troubleTold }) => troubleTold),
    );
    const again = manager.command(channel, "here");
    await until(() => again.reply());
    expect(again.followUps()).toEqual([]);
  });
});

describe("a server", () => {
  it("is kept as a club, and erased with everything in it when the bot is removed", async () => {
    const { standIn, guild, world } = await openScene();
    const { books } = world.context();
    await books.notify.set(guild.id, "wren", { siteName: null, leastHours: 2 });
    standIn.removeGuild(guild, true);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await books.notify.get(guild.id, "wren")).not.toBeNull();
    standIn.removeGuild(guild, false);
    await until(() => listClubs(world.store.db).then((clubs) => clubs.length === 0));
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await listClubs(world.store.db)).toEqual([]);
    expect(await books.notify.get(guild.id, "wren")).toBeNull();
  });

  it("that removed the bot while it was off is erased a week later, not at once", async () => {
    const { standIn, guild, world, bot, again } = await openScene();
    await bot.stop();
    standIn.state.guilds.delete(guild.id);
    const back = await again();
    await new Promise((resolve) => setTimeout(resolve, 100));
    await back.tick();
    expect(await listClubs(world.store.db)).toHaveLength(1);
    standIn.clock.advance(8 * 86_400_000);
    await back.tick();
    expect(await listClubs(world.store.db)).toEqual([]);
  });
});

describe("buttons under an answer", () => {
  const night = commandOf(
    "night",
    async ({ options }) =>
      plainAnswer({
        title: `Asked ${JSON.stringify(options)}`,
        sections: [{ heading: "Where", lines: ["High Moor, 54.50° N, 2.60° W"] }],
        figures: { site: { name: "High Moor", latitudeDeg: 54.5, longitudeDeg: -2.6 } },
        next: [{ label: "The next night", command: "night", options: { night: "2026-10-04" } }],
        cautions: [{ id: "cold", text: "It will be cold." }],
      }),
    { options: [{ type: ApplicationCommandOptionType.String, name: "night", description: "When" }] },
  );

  it("ask their question again, through a restart", async () => {
    const { person, channel, again, bot } = await openScene({ commands: [night] });
    const wren = person("Wren");
    const heard = wren.command(channel, "night");
    const reply = await until(() => heard.reply());
    await bot.stop();
    await again();
    const pressed = wren.pressLabel(channel, reply, "The next night");
    const next = await until(() => pressed.reply());
    expect(next.embeds).toMatchObject([{ title: expect.stringContaining("2026-10-04") }]);
    expect(next.ephemeralFor).toBe(wren.user.id);
  });

  it("say one clear sentence to somebody else, and after thirty days", async () => {
    const { person, channel, standIn, bot } = await openScene({ commands: [night] });
    const wren = person("Wren");
    const heard = wren.command(channel, "night");
    const reply = await until(() => heard.reply());
    const other = person("Other").pressLabel(channel, reply, "The next night");
    expect((await until(() => other.reply())).content).toBe(
      "That button belongs to whoever asked: ask for yourself with /night.",
    );
    standIn.clock.advance(31 * 86_400_000);
    await bot.tick();
    const late = wren.pressLabel(channel, reply, "The next night");
    expect((await until(() => late.reply())).content).toBe(
      "That button has had its time (30 days): ask again with /night.",
    );
  });

  it("show an answer to everyone once, though the reply to it is lost", async () => {
    const { person, channel, standIn } = await openScene({ commands: [night] });
    const wren = person("Wren");
    const heard = wren.command(channel, "night");
    const reply = await until(() => heard.reply());
    standIn.faults.add("PATCH", /@original$/, { kind: "lost-reply" }, 1);
    wren.pressLabel(channel, reply, "Show it to everyone here");
    await until(() => standIn.publicMessages(channel)[0]?.edits);
    expect(standIn.publicMessages(channel)).toHaveLength(1);
  });

  it("show nothing to anybody when somebody else presses that one", async () => {
    const { person, channel, standIn } = await openScene({ commands: [night] });
    const heard = person("Wren").command(channel, "night");
    const reply = await until(() => heard.reply());
    const other = person("Other").pressLabel(channel, reply, "Show it to everyone here");
    const refusal = await until(() => other.followUps()[0]);
    expect(refusal).toMatchObject({ ephemeralFor: other.interaction.user.id });
    expect(refusal.content).toContain("belongs to whoever asked");
    expect(standIn.publicMessages(channel)).toEqual([]);
  });

  it("show an answer to everyone without where the site lies, its cautions first", async () => {
    const { person, channel, standIn } = await openScene({ commands: [night] });
    const wren = person("Wren");
    const heard = wren.command(channel, "night");
    const reply = await until(() => heard.reply());
    expect(JSON.stringify(reply.embeds)).toContain("54.50°");
    wren.pressLabel(channel, reply, "Show it to everyone here");
    const shared = await until(() => standIn.publicMessages(channel)[0]);
    const words = JSON.stringify(shared);
    expect(words).not.toMatch(/54\.5|2\.6/);
    expect(words).toContain("High Moor");
    expect(words).toContain("Shown by Wren");
    expect(shared.content).toBe("**Caution.** It will be cold.");
    expect(buttonsOf(shared)).toEqual([]);
  });
});
