/**
 * One tick of the evening run: plan, ask for the weather once for all, then club by club.
 *
 * @packageDocumentation
 */
import { KEEP_CLAIMS_MS, KEEP_PEOPLE_MS, TIDY_EVERY_MS } from "../../config/evening.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import { rememberedTimes } from "./club-night.ts";
import type { EveningWorld } from "./evening-world.ts";
import { askAfter } from "./morning-question.ts";
import { isLongAgo, planTick, type Task } from "./plan.ts";
import { postNight } from "./post-night.ts";
import { watchNight } from "./watch-night.ts";
import { placedWishes } from "./wishes.ts";
import { yieldToOthers } from "./yield.ts";

export type EveningRun = {
  /** Does what is to be done now; a tick that comes while one is under way does nothing. */
  tick(): Promise<void>;
};

export function eveningRun(world: EveningWorld): EveningRun {
  const timesOf = rememberedTimes();
  let underWay: Promise<void> | null = null;
  let tidiedAt = new Date(0);
  const whole = async () => {
    await oneTick(world, timesOf);
    if (!isLongAgo(tidiedAt, world.clock(), TIDY_EVERY_MS)) return;
    tidiedAt = world.clock();
    await tidy(world);
  };
  return {
    tick() {
      underWay ??= whole().finally(() => {
        underWay = null;
      });
      return underWay;
    },
  };
}

async function oneTick(
  world: EveningWorld,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<void> {
  const tasks = await planTick(world, timesOf);
  const withWeather = tasks.filter(({ kind }) => kind !== "ask");
  if (withWeather.length > 0) await askForWeather(world, withWeather);
  for (const task of tasks) {
    await yieldToOthers();
    try {
      if (task.kind === "post") await postNight(world, task, timesOf);
      else if (task.kind === "watch") await watchNight(world, task, timesOf);
      else await askAfter(world, task);
    } catch (fault) {
      // One club's fault is not another's: the rest go on, and this one is tried again next tick.
      world.log(`the evening run failed for one club: ${String(fault)}`);
    }
  }
}

/** Every place of this tick in as few calls as there can be. */
async function askForWeather(world: EveningWorld, tasks: readonly Task[]): Promise<void> {
  const due = new Map<string, Site>();
  const watched = new Map<string, Site>();
  for (const task of tasks) {
    await yieldToOthers();
    const wishes = task.kind === "post" ? await world.wishes(task.club.id) : [];
    const placed = await placedWishes(task.club.id, wishes, task.context);
    const places = task.kind === "post" ? due : watched;
    for (const site of [...task.sites, ...placed.map((one) => one.site)]) {
      places.set(`${site.latitudeDeg} ${site.longitudeDeg} ${site.elevationMetres}`, site);
    }
  }
  if (due.size > 0) await world.prefetch([...due.values()], false);
  if (watched.size > 0) await world.prefetch([...watched.values()], true);
}

/** Forgets what is kept for a time alone. */
async function tidy(world: EveningWorld): Promise<void> {
  const ago = (ms: number) => new Date(world.clock().getTime() - ms);
  await world.claims.dropOlderThan(ago(KEEP_CLAIMS_MS));
  await world.people.dropOlderThan(ago(KEEP_PEOPLE_MS));
  await world.watches.dropBefore(ago(KEEP_CLAIMS_MS).toISOString().slice(0, 10));
}
