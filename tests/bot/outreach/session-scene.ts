/**
 * A club that announces public sessions, over a real store and the stand-in, by a clock the test moves.
 *
 * @packageDocumentation
 */
import { onTestFinished } from "vitest";
import { singleAttemptRest } from "../../../bot/discord/evening-sender.ts";
import { scheduledEvents } from "../../../bot/discord/scheduled-events.ts";
import { openAnnouncements } from "../../../bot/outreach/open-announcements.ts";
import { type OutreachDoor, outreachDoor } from "../../../bot/outreach/outreach-door.ts";
import { type OutreachRun, outreachRun } from "../../../bot/outreach/outreach-run.ts";
import type { OutreachWorld } from "../../../bot/outreach/outreach-world.ts";
import { type OutreachBook, outreachBook } from "../../../bot/store/outreach-book.ts";
import { openStore, type Store } from "../../../bot/store/store.ts";
import type { Announcements, Invitation } from "../../../commands/announcements.ts";
import { CAUTION_TEXTS } from "../../../config/caution-texts.ts";
import { type StandIn, startStandIn } from "../discord/stand-in/stand-in.ts";
import type { Channel, Guild, StoredMessage } from "../discord/stand-in/state.ts";
import { type CloudAt, MOOR, testWorld } from "../evening/fixtures.ts";
import { temporaryFolder } from "../store/temporary-folder.ts";

export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;

/** Two weeks before the session. */
export const EARLY = "2026-11-03T12:00:00Z";
export const START = new Date("2026-11-17T18:30:00Z");

export function invitation(parts: Partial<Invitation> = {}): Invitation {
  return {
    name: "Half Moon night",
    night: "2026-11-17",
    session: "night",
    span: { start: START, end: new Date("2026-11-17T21:00:00Z") },
    site: MOOR,
    place: "The field behind the hall",
    summary: "Come and look at the Moon and Saturn with us.",
    lines: ["Dress warmly.", "It needs a clear sky."],
    cautions: [{ id: "children", text: CAUTION_TEXTS.children }],
    asked: { audience: "families" },
    ...parts,
  };
}

/** One process of the bot. */
export type Process = {
  readonly world: OutreachWorld;
  readonly announcements: Announcements;
  readonly run: OutreachRun;
  readonly door: OutreachDoor;
};

export type SessionScene = Process & {
  readonly standIn: StandIn;
  readonly guild: Guild;
  /** For everybody. */
  readonly channel: Channel;
  /** For organisers. */
  readonly office: Channel;
  readonly book: OutreachBook;
  readonly log: string[];
  /** The weather from now on; `null` is no forecast. */
  weather: CloudAt | null;
  at(instant: string | Date): void;
  messages(): readonly StoredMessage[];
  notes(): readonly StoredMessage[];
  events(): readonly Record<string, unknown>[];
  /** Another process on the same store, such as one after a restart. */
  another(holder: string): Promise<Process>;
};

/** A club with events switched on, unless told otherwise. */
export async function openSessions(scheduled = true): Promise<SessionScene> {
  const standIn = await startStandIn();
  standIn.clock.set(new Date(EARLY));
  const guild = standIn.addGuild("Fell End");
  const channel = standIn.addChannel(guild, "evenings");
  const office = standIn.addChannel(guild, "organisers");
  const folder = temporaryFolder();
  const stores: Store[] = [];
  const log: string[] = [];
  const state = { weather: (() => 0) as CloudAt | null };
  const open = async (holder: string): Promise<Process & { readonly book: OutreachBook }> => {
    const store = await openStore(folder, standIn.clock.now());
    stores.push(store);
    const { world: evening, books } = testWorld({
      store,
      apiBase: standIn.apiBase,
      token: standIn.state.token,
      ownId: standIn.state.botUser.id,
      holder,
      clock: () => new Date(standIn.clock.now()),
      cloud: () => state.weather,
      // A pause passes on the clock alone.
      pause: async (ms) => standIn.clock.advance(ms),
      attemptMs: 1000,
      log: (line) => log.push(line),
    });
    await books.clubs.change(guild.id, {
      outreach: { channelId: channel.id, organisersChannelId: office.id, scheduledEvents: scheduled },
    });
    const book = outreachBook(store.db);
    const rest = singleAttemptRest(standIn.state.token, standIn.apiBase, 1000);
    const world: OutreachWorld = {
      ...evening,
      book,
      events: scheduledEvents(rest, () => standIn.state.botUser.id),
    };
    return {
      world,
      book,
      announcements: openAnnouncements({
        world,
        draw: async () => new Uint8Array([137]),
        eventTrouble: () => null,
      }),
      run: outreachRun(world),
      door: outreachDoor(world),
    };
  };
  const made = await open("this process");
  onTestFinished(async () => {
    for (const store of stores) await store.close();
    await standIn.stop();
  });
  return Object.assign(state, made, {
    standIn,
    guild,
    channel,
    office,
    log,
    at: (instant: string | Date) => standIn.clock.set(new Date(instant)),
    messages: () => standIn.publicMessages(channel),
    notes: () => standIn.publicMessages(office),
    events: () => guild.events,
    another: open,
  });
}
