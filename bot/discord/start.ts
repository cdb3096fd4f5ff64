/**
 * The bot in Discord: signs in, registers, listens, and runs the evenings.
 *
 * @packageDocumentation
 */
import { randomUUID } from "node:crypto";
import { setTimeout as sleep } from "node:timers/promises";
import { type Client, DiscordjsErrorCodes, Events, type Interaction } from "discord.js";
import { schedule } from "node-cron";
import { COMMANDS } from "../../commands/all.ts";
import { WorldError } from "../../commands/ask-error.ts";
import type { Command } from "../../commands/command.ts";
import { eveningPost } from "../../commands/evening-post.ts";
import { FILE_HOSTS } from "../../config/discord-limits.ts";
import { ATTEMPT_MS, KEEP_BUTTONS_MS, TICK_CRON } from "../../config/evening.ts";
import type { Settings } from "../../config/settings.ts";
import { drawChart } from "../charts/draw.ts";
import type { EveningWorld } from "../evening/evening-world.ts";
import { goingOut } from "../evening/going-out.ts";
import { eveningRun } from "../evening/tick.ts";
import { openAnnouncements } from "../outreach/open-announcements.ts";
import { outreachDoor } from "../outreach/outreach-door.ts";
import { outreachRun } from "../outreach/outreach-run.ts";
import type { OutreachWorld } from "../outreach/outreach-world.ts";
import { buttonBook } from "../store/answer-buttons.ts";
import { postingClubs } from "../store/club-book.ts";
import { claimBook } from "../store/evening-claims.ts";
import { peopleBook } from "../store/evening-people.ts";
import { watchBook } from "../store/evening-watches.ts";
import { listWishes } from "../store/notify-book.ts";
import { outreachBook } from "../store/outreach-book.ts";
import type { World } from "../world.ts";
import { answerCommand } from "./answer-command.ts";
import { channelTrouble, makeClient, mayReadHistory } from "./client.ts";
import { completeOption } from "./completion.ts";
import { CompletionMemory } from "./completion-memory.ts";
import type { DoorWorld } from "./door-world.ts";
import { eveningSender, singleAttemptRest } from "./evening-sender.ts";
import { pressButton } from "./press-button.ts";
import { registerCommands } from "./registration.ts";
import { eventTrouble, scheduledEvents } from "./scheduled-events.ts";
import { fetchSentFile } from "./sent-files.ts";
import { eraseLongAbsent, followServers } from "./servers.ts";

/** What a test replaces; the rest of the world is its own already. */
export type DiscordParts = {
  readonly commands?: readonly Command[];
  readonly compose?: EveningWorld["compose"];
  readonly log?: (line: string) => void;
  /** Whether the evenings run by the clock; a test ticks by itself. */
  readonly schedule?: boolean;
};

export type DiscordBot = {
  readonly client: Client;
  /** Whether the commands had to be registered. */
  readonly registered: boolean;
  /** What the evening run does every five minutes. */
  tick(): Promise<void>;
  /** Until every post shows the names of those who pressed. */
  settled(): Promise<void>;
  stop(): Promise<void>;
};

/**
 * Signs in and serves until stopped.
 *
 * @param settings - with a token
 * @throws WorldError, one sentence, when Discord refuses the token or cannot be reached
 */
export async function startDiscord(
  settings: Settings,
  world: World,
  parts: DiscordParts = {},
): Promise<DiscordBot> {
  const token = settings.discordToken;
  if (token === null) throw new WorldError("DISCORD_TOKEN is not set.");
  const log = parts.log ?? ((line: string) => process.stderr.write(`${line}\n`));
  const client = makeClient(settings.discordApiBase);
  client.on(Events.Error, (fault) => log(`Discord: ${fault.message}`));
  client.on(Events.ShardError, (fault) => log(`Discord's gateway: ${fault.message}`));
  followServers(client, world.store, world.clock, log);

  const buttons = buttonBook(world.store.db);
  const evenings = eveningWorld(settings, world, {
    client,
    token,
    log,
    compose: parts.compose ?? eveningPost,
  });
  const sessions = outreachWorld(settings, world, { client, token, evenings });
  const door = doorWorld(settings, world, {
    sessions,
    client,
    evenings,
    commands: parts.commands ?? COMMANDS,
    log,
  });
  // The catalogue is read now, so that the first completion need not wait for it.
  void world.context().catalogue;
  client.on(Events.InteractionCreate, (interaction) => void hear(interaction, door));

  const ready = new Promise<void>((resolve) => client.once(Events.ClientReady, () => resolve()));
  await signIn(client, token);
  await ready;
  const registered = await register(client, settings, door);

  const run = eveningRun(evenings);
  const outreach = outreachRun(sessions);
  const tick = async () => {
    try {
      await run.tick();
      await outreach.tick();
      await eraseLongAbsent(world.store, world.clock());
      await buttons.dropOlderThan(new Date(world.clock().getTime() - KEEP_BUTTONS_MS));
    } catch (fault) {
      log(`the evening run failed: ${String(fault)}`);
    }
  };
  const timer = parts.schedule === false ? null : schedule(TICK_CRON, tick, { timezone: "UTC" });
  return {
    client,
    registered,
    tick,
    async settled() {
      await door.goingOut.settled();
      await door.sessions.settled();
    },
    async stop() {
      await timer?.destroy();
      await client.destroy();
    },
  };
}

async function signIn(client: Client, token: string): Promise<void> {
  try {
    await client.login(token);
  } catch (fault) {
    await client.destroy();
    const code = fault instanceof Error && "code" in fault ? fault.code : null;
    if (code === DiscordjsErrorCodes.TokenInvalid) {
      throw new WorldError("Discord refused the token: copy it anew into DISCORD_TOKEN.", fault);
    }
    throw new WorldError("Discord could not be reached: check the network, then start again.", fault);
  }
}

async function register(client: Client, settings: Settings, door: DoorWorld): Promise<boolean> {
  const applicationId = client.application?.id;
  if (applicationId === undefined) throw new WorldError("Discord did not say which application this is.");
  const commands = [...door.commands.values()];
  return registerCommands(client.rest, applicationId, settings.discordGuild, commands);
}

/** Nothing an interaction brings may end the process. */
async function hear(interaction: Interaction, door: DoorWorld): Promise<void> {
  try {
    if (interaction.isAutocomplete()) await completeOption(interaction, door);
    else if (interaction.isChatInputCommand()) await answerCommand(interaction, door);
    else if (interaction.isButton()) await pressButton(interaction, door);
  } catch (fault) {
    // Too late, or answered by another process of ours: nothing more can be said here.
    door.log(`an interaction was lost: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

type EveningParts = {
  readonly client: Client;
  readonly token: string;
  readonly log: (line: string) => void;
  readonly compose: EveningWorld["compose"];
};

function eveningWorld(settings: Settings, world: World, parts: EveningParts): EveningWorld {
  const { db } = world.store;
  const { client, token, log, compose } = parts;
  return {
    claims: claimBook(db),
    watches: watchBook(db),
    people: peopleBook(db),
    channel: eveningSender({
      rest: singleAttemptRest(token, settings.discordApiBase, ATTEMPT_MS),
      buttons: buttonBook(db),
      draw: drawChart,
      clock: world.clock,
      ownId: () => client.user?.id ?? null,
      mayReadHistory: (channelId) => mayReadHistory(client, channelId),
    }),
    holder: randomUUID(),
    clubs: () => postingClubs(db),
    wishes: (club) => listWishes(db, club),
    contextFor: () => world.context(),
    compose,
    async prefetch(places, watched) {
      const { forecasts } = await world.weather();
      for (const problem of await forecasts.prefetch(places, { watched })) log(problem);
    },
    clock: world.clock,
    pause: (ms) => sleep(ms),
    log,
  };
}

type OutreachParts = Pick<EveningParts, "client" | "token"> & { readonly evenings: EveningWorld };

function outreachWorld(
  settings: Settings,
  world: World,
  { client, token, evenings }: OutreachParts,
): OutreachWorld {
  const rest = singleAttemptRest(token, settings.discordApiBase, ATTEMPT_MS);
  return {
    ...evenings,
    book: outreachBook(world.store.db),
    events: scheduledEvents(rest, () => client.user?.id ?? null),
  };
}

type DoorParts = {
  readonly sessions: OutreachWorld;
  readonly client: Client;
  readonly evenings: EveningWorld;
  readonly commands: readonly Command[];
  readonly log: (line: string) => void;
};

function doorWorld(
  settings: Settings,
  world: World,
  { client, sessions, evenings, commands, log }: DoorParts,
): DoorWorld {
  const announcements = openAnnouncements({
    world: sessions,
    draw: drawChart,
    eventTrouble: (club) => eventTrouble(client, club),
  });
  const contextFor = () =>
    Object.assign(world.context(), {
      channelTrouble: (club: string, channelId: string) => channelTrouble(client, club, channelId),
      announcements,
    });
  // Another server that speaks Discord's API keeps its members' files itself.
  const own = settings.discordApiBase === null ? [] : [new URL(settings.discordApiBase).origin];
  const hosts = [...FILE_HOSTS, ...own];
  return {
    commands: new Map(commands.map((command) => [command.definition.name, command])),
    buttons: buttonBook(world.store.db),
    completions: new CompletionMemory(contextFor, world.clock),
    goingOut: goingOut(evenings),
    sessions: outreachDoor(sessions),
    draw: drawChart,
    fetchFile: (option, file) => fetchSentFile(option, file, hosts),
    contextFor,
    clock: world.clock,
    log,
  };
}
