/**
 * Many evenings by a driven clock: sites around the world, clocks that jump, restarts, outages.
 *
 * True time passes some minutes a tick. The process's own clock may stand off from
 * it for a while; Discord's does not. The weather is always clear, so that every night
 * with darkness is one to post, except while nobody has a forecast.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { type EveningRun, eveningRun } from "../../../bot/evening/tick.ts";
import { openStore } from "../../../bot/store/store.ts";
import { nightOn } from "../../../core/night/local-night.ts";
import { nightTimes } from "../../../core/night/night-times.ts";
import type { Site } from "../../../core/site.ts";
import { startStandIn } from "../discord/stand-in/stand-in.ts";
import { foundClub, MOOR, testWorld } from "./fixtures.ts";

const place = (name: string, latitudeDeg: number, longitudeDeg: number, timeZone: string): Site => ({
  ...MOOR,
  name,
  latitudeDeg,
  longitudeDeg,
  timeZone,
  elevationMetres: 0,
});

/** Both hemispheres, four continents and more, half-hour zones, a polar one. */
export const PLACES: readonly Site[] = [
  place("Fell End", 54.5, -2.6, "Europe/London"),
  place("St Johns", 47.56, -52.71, "America/St_Johns"),
  place("Lord Howe", -31.55, 159.08, "Australia/Lord_Howe"),
  place("Adelaide", -34.93, 138.6, "Australia/Adelaide"),
  place("Kathmandu", 27.72, 85.32, "Asia/Kathmandu"),
  place("Santiago", -33.45, -70.67, "America/Santiago"),
  place("Cape Town", -33.93, 18.42, "Africa/Johannesburg"),
  place("Tromso", 69.65, 18.96, "Europe/Oslo"),
];

export type Simulation = {
  readonly folder: string;
  readonly places: readonly Site[];
  /** `YYYY-MM-DD`, the first local date that is counted. */
  readonly from: string;
  readonly days: number;
  /** Jumping clocks, restarts, outages of Discord and of the weather. */
  readonly disturbed: boolean;
  readonly seed: number;
  /** Minutes between ticks; the bot's own are five apart. */
  readonly tickMinutes: number;
};

export type CountedNight = {
  readonly place: string;
  readonly night: string;
  readonly wanted: number;
  readonly posted: number;
};

const MINUTE_MS = 60_000;

/** Runs the evenings and returns every night whose posts are other than wanted, and how many nights there were. */
export async function simulateNights(
  order: Simulation,
): Promise<{ readonly nights: number; readonly posts: number; readonly wrong: readonly CountedNight[] }> {
  const standIn = await startStandIn();
  const random = seeded(order.seed);
  // A day early and a day late, so that every counted night is whole everywhere.
  const startMs = Date.parse(`${order.from}T00:00:00Z`) - 24 * 60 * MINUTE_MS;
  const endMs = startMs + (order.days + 2) * 24 * 60 * MINUTE_MS;
  let trueMs = startMs;
  let skewMs = 0;
  let forecast = true;
  standIn.clock.set(new Date(trueMs));
  const store = await openStore(order.folder, startMs);
  const clock = () => new Date(trueMs + skewMs);
  const start = (holder: string) =>
    testWorld({
      store,
      apiBase: standIn.apiBase,
      token: standIn.state.token,
      ownId: standIn.state.botUser.id,
      holder,
      clock,
      cloud: () => (forecast ? () => 0 : null),
      pause: async () => undefined,
      attemptMs: 300,
    });
  const first = start("process 0");
  const channels = new Map<
    Site,
    { readonly guild: string; readonly channel: ReturnType<typeof standIn.addChannel> }
  >();
  for (const site of order.places) {
    const guild = standIn.addGuild(site.name);
    const channel = standIn.addChannel(guild, "evenings");
    channels.set(site, { guild: guild.id, channel });
    await foundClub(first.books, guild.id, channel.id, site);
  }
  let run: EveningRun = eveningRun(first.world);
  let calmAt = 0;
  for (let tick = 0; trueMs < endMs; tick++) {
    trueMs += order.tickMinutes * MINUTE_MS;
    standIn.clock.set(new Date(trueMs));
    if (order.disturbed && trueMs >= calmAt) {
      standIn.faults.clear();
      skewMs = 0;
      forecast = true;
      const trouble = random();
      if (trouble < 0.02) skewMs = Math.round((random() - 0.5) * 180) * MINUTE_MS;
      else if (trouble < 0.03) forecast = false;
      else if (trouble < 0.035) standIn.faults.add("POST", /messages$/, { kind: "lost-reply" }, 2);
      else if (trouble < 0.04) standIn.faults.add("POST", /messages$/, { kind: "status", status: 503 }, 50);
      else if (trouble < 0.045) standIn.faults.add("POST", /messages$/, { kind: "lost-request" }, 3);
      if (trouble < 0.045) calmAt = trueMs + Math.round(random() * 90) * MINUTE_MS;
      if (random() < 0.01) run = eveningRun(start(`process ${tick}`).world);
    }
    await run.tick();
  }
  await store.close();
  await standIn.stop();
  return counted(order, channels);
}

function counted(
  order: Simulation,
  channels: ReadonlyMap<
    Site,
    { readonly channel: { readonly messages: readonly { readonly embeds: readonly unknown[] }[] } }
  >,
) {
  const wrong: CountedNight[] = [];
  let nights = 0;
  let posts = 0;
  for (const [site, { channel }] of channels) {
    const words = channel.messages.map(({ embeds }) => JSON.stringify(embeds));
    for (let day = 0; day < order.days; day++) {
      const night = DateTime.fromISO(order.from, { zone: "utc" }).plus({ days: day }).toFormat("yyyy-MM-dd");
      const dark = nightTimes(site, nightOn(night, site.timeZone)).workingWindows.length > 0;
      const posted = words.filter((text) => text.includes(night)).length;
      const wanted = dark ? 1 : 0;
      nights += 1;
      posts += posted;
      if (posted !== wanted) wrong.push({ place: site.name, night, wanted, posted });
    }
  }
  return { nights, posts, wrong };
}

/** A repeatable stream of numbers in [0, 1): a linear congruential generator (Numerical Recipes). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
