/**
 * Servers that come and go: each is a club, and a removed one is forgotten with everything in it.
 *
 * @packageDocumentation
 */
import { type Client, Events, type Guild } from "discord.js";
import { ERASE_ABSENT_MS } from "../../config/evening.ts";
import { eraseAbsentSince, noteAbsences } from "../store/absent-clubs.ts";
import { addClub, removeClub } from "../store/club-rows.ts";
import type { Store } from "../store/store.ts";

/** Keeps the store's clubs in step with the servers this bot is in. */
export function followServers(
  client: Client,
  { db }: Store,
  clock: () => Date,
  log: (line: string) => void,
): void {
  const tried = (work: Promise<unknown>, what: string) => {
    work.catch((fault: unknown) => log(`a server could not be ${what}: ${String(fault)}`));
  };
  const keep = ({ id, name }: Guild) => tried(addClub(db, { id, name }, clock().getTime()), "kept");
  client.on(Events.ClientReady, (ready) => {
    for (const guild of ready.guilds.cache.values()) keep(guild);
    tried(noteAbsences(db, new Set(ready.guilds.cache.keys()), clock()), "missed");
  });
  client.on(Events.GuildAvailable, keep);
  client.on(Events.GuildCreate, (guild) => {
    keep(guild);
    tried(noteAbsences(db, new Set(client.guilds.cache.keys()), clock()), "missed");
  });
  // A server that is only out of reach has an event of its own, and keeps its rows.
  client.on(Events.GuildDelete, (guild) => tried(removeClub(db, guild.id), "erased"));
}

/** Erases clubs whose servers have been gone for long enough. */
export async function eraseLongAbsent({ db }: Store, at: Date): Promise<void> {
  await eraseAbsentSince(db, new Date(at.getTime() - ERASE_ABSENT_MS));
}
