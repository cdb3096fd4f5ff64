/**
 * One club's evening over a real store and the stand-in, by a clock the test moves.
 *
 * @packageDocumentation
 */
import { onTestFinished } from "vitest";
import { type GoingOut, goingOut } from "../../../bot/evening/going-out.ts";
import { type EveningRun, eveningRun } from "../../../bot/evening/tick.ts";
import { openStore, type Store } from "../../../bot/store/store.ts";
import type { Site } from "../../../core/site.ts";
import { type StandIn, startStandIn } from "../discord/stand-in/stand-in.ts";
import type { Channel, Guild, StoredMessage } from "../discord/stand-in/state.ts";
import { temporaryFolder } from "../store/temporary-folder.ts";
import {
  type CloudAt,
  DUE,
  foundClub,
  MOOR,
  type TestWorld,
  testWorld,
  type WorldParts,
} from "./fixtures.ts";

export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;

/** Clear all night; overcast all night. */
export const CLEAR: CloudAt = () => 0;
export const OVERCAST: CloudAt = () => 100;

/** Clear before an instant, overcast from then on. */
export function clearUntil(iso: string): CloudAt {
  const end = Date.parse(iso);
  return (at) => (at.getTime() <= end ? 0 : 100);
}

/** Overcast until an instant, clear from then on. */
export function clearFrom(iso: string): CloudAt {
  const start = Date.parse(iso);
  return (at) => (at.getTime() >= start ? 0 : 100);
}

export type EveningScene = TestWorld & {
  readonly standIn: StandIn;
  readonly guild: Guild;
  readonly channel: Channel;
  readonly folder: string;
  readonly run: EveningRun;
  readonly goingOut: GoingOut;
  readonly log: string[];
  /** The weather from now on; `null` is no forecast. */
  weather: CloudAt | null;
  mayReadHistory: boolean | null;
  /** Moves the clock to an instant. */
  at(iso: string): void;
  /** Moves the clock on and ticks every five minutes. */
  pass(minutes: number): Promise<void>;
  messages(): readonly StoredMessage[];
  /** Requests that wanted a new message in the channel. */
  attempts(): number;
  /** Another process on the same store: its own connection and run. */
  another(holder: string): Promise<EveningScene["run"]>;
};

/** A club two hours before sunset on a clear night. */
export async function openEvening(
  site: Site = MOOR,
  start: Date = DUE,
  parts: Partial<WorldParts> = {},
): Promise<EveningScene> {
  const standIn = await startStandIn();
  standIn.clock.set(start);
  const guild = standIn.addGuild("Fell End");
  const channel = standIn.addChannel(guild, "evenings");
  const folder = temporaryFolder();
  const stores: Store[] = [];
  const log: string[] = [];
  const open = async (holder: string): Promise<TestWorld> => {
    const store = await openStore(folder, standIn.clock.now());
    stores.push(store);
    return testWorld({
      store,
      apiBase: standIn.apiBase,
      token: standIn.state.token,
      ownId: standIn.state.botUser.id,
      holder,
      clock: () => new Date(standIn.clock.now()),
      cloud: () => scene.weather,
      mayReadHistory: () => scene.mayReadHistory,
      // A pause passes on the clock alone.
      pause: async (ms) => standIn.clock.advance(ms),
      attemptMs: 1000,
      log: (line) => log.push(line),
      ...parts,
    });
  };
  const made = await open("this process");
  const run = eveningRun(made.world);
  const scene: EveningScene = {
    ...made,
    standIn,
    guild,
    channel,
    folder,
    run,
    goingOut: goingOut(made.world),
    log,
    weather: CLEAR,
    mayReadHistory: true,
    at: (iso) => standIn.clock.set(new Date(iso)),
    async pass(minutes) {
      for (let passed = 0; passed < minutes; passed += 5) {
        standIn.clock.advance(5 * MINUTE_MS);
        await run.tick();
      }
    },
    messages: () => standIn.publicMessages(channel),
    attempts: () =>
      standIn.rest.requests.filter(({ method, path }) => method === "POST" && /\/messages$/.test(path))
        .length,
    another: async (holder) => eveningRun((await open(holder)).world),
  };
  await foundClub(made.books, guild.id, channel.id, site);
  onTestFinished(async () => {
    for (const store of stores) await store.close();
    await standIn.stop();
  });
  return scene;
}
