/**
 * A bot signed in to a stand-in, with a club, a channel and people who ask.
 *
 * @packageDocumentation
 */
import { onTestFinished } from "vitest";
import { type DiscordBot, type DiscordParts, startDiscord } from "../../../bot/discord/start.ts";
import { openWorld, type World } from "../../../bot/world.ts";
import type { Answer } from "../../../commands/answer.ts";
import type { Command } from "../../../commands/command.ts";
import type { Settings } from "../../../config/settings.ts";
import { temporaryFolder } from "../store/temporary-folder.ts";
import { Person } from "./stand-in/person.ts";
import { type StandIn, startStandIn } from "./stand-in/stand-in.ts";
import type { Channel, Guild } from "./stand-in/state.ts";

/** Nothing listens there: what asks the weather's services fails at once. */
const NOWHERE = "http://127.0.0.1:9";

export function settingsFor(standIn: StandIn, folder: string): Settings {
  return {
    dataFolder: folder,
    discordToken: standIn.state.token,
    discordGuild: null,
    discordApiBase: standIn.apiBase,
    contact: null,
    hosts: {
      openMeteo: NOWHERE,
      airQuality: NOWHERE,
      geocoding: NOWHERE,
      metNorway: NOWHERE,
      skySurvey: NOWHERE,
    },
  };
}

export type Scene = {
  readonly standIn: StandIn;
  readonly guild: Guild;
  readonly channel: Channel;
  readonly settings: Settings;
  readonly world: World;
  readonly bot: DiscordBot;
  readonly log: string[];
  person(name: string): Person;
  /** Signs in once more, as after a restart. */
  again(): Promise<DiscordBot>;
};

/** Everything running; the test's end stops it. */
export async function openScene(parts: DiscordParts = {}, at?: Date): Promise<Scene> {
  const standIn = await startStandIn();
  if (at !== undefined) standIn.clock.set(at);
  const guild = standIn.addGuild("Fell End Astronomy Circle");
  const channel = standIn.addChannel(guild, "evenings");
  const settings = settingsFor(standIn, temporaryFolder());
  const world = await openWorld(settings, { clock: () => new Date(standIn.clock.now()) });
  const log: string[] = [];
  const bots: DiscordBot[] = [];
  const again = async () => {
    const bot = await startDiscord(settings, world, {
      schedule: false,
      log: (line) => log.push(line),
      ...parts,
    });
    bots.push(bot);
    return bot;
  };
  const bot = await again();
  onTestFinished(async () => {
    for (const one of bots) await one.stop();
    await world.close();
    await standIn.stop();
  });
  return {
    standIn,
    guild,
    channel,
    settings,
    world,
    bot,
    log,
    person: (name) => new Person(standIn, name),
    again,
  };
}

/** Waits until something holds; fails after five seconds. */
export async function until<Value>(
  look: () => Value | null | undefined | false | Promise<Value | null | undefined | false>,
): Promise<Value> {
  const giveUp = Date.now() + 5000;
  for (;;) {
    const value = await look();
    if (value !== null && value !== undefined && value !== false) return value;
    if (Date.now() > giveUp) throw new Error("it never came to be");
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

export function plainAnswer(parts: Partial<Answer> = {}): Answer {
  return {
    title: "A title",
    summary: "A summary.",
    sections: [],
    charts: [],
    cautions: [],
    next: [],
    figures: {},
    credits: [],
    ...parts,
  };
}

/** A command that answers as told. */
export function commandOf(
  name: string,
  answer: Command["answer"],
  parts: Partial<Command> & { readonly options?: Command["definition"]["options"] } = {},
): Command {
  const { options = [], ...rest } = parts;
  return { definition: { name, description: "For a test", options }, audience: "member", answer, ...rest };
}
