/**
 * Servers that come and go: each is a club, and a removed one is forgotten with everything in it.
 *
 * @packageDocumentation
 */
import { type Client, Events, type Guild } from "discord.js";
import { addClub, removeClub } from "../store/club-rows.ts";
import type { Store } from "../store/store.ts";

/** Keeps the store's clubs in step with the servers this bot is in. */
export function followServers(
  client: Client,
  store: Store,
  clock: () => Date,
  log: (line: string) => void,
): void {
  const keep = ({ id, name }: Guild) =>
    addClub(store.db, { id, name }, clock().getTime()).catch((fault: unknown) =>
      log(`a server could not be kept: ${String(fault)}`),
    );
  client.on(Events.ClientReady, (ready) => {
    for (const guild of ready.guilds.cache.values()) void keep(guild);
  });
  client.on(Events.GuildAvailable, keep);
  client.on(Events.GuildCreate, keep);
  // A server that is only out of reach has an event of its own, and keeps its rows.
  client.on(Events.GuildDelete, (guild) => {
    removeClub(store.db, guild.id).catch((fault: unknown) =>
      log(`a server could not be erased: ${String(fault)}`),
    );
  });
}
