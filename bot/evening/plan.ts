/**
 * What one tick has to do: which club's night is due, which is watched.
 *
 * @packageDocumentation
 */
import type { Context } from "../../commands/context.ts";
import { ASK_AFTER_MS, ASK_UNTIL_MS, LOOK_AGAIN_MS } from "../../config/evening.ts";
import { type Dueness, dueness } from "../../core/night/dueness.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import type { ObservingLimits } from "../../core/weather/observing-limits.ts";
import type { PostingClub } from "../store/club-book.ts";
import type { Claim } from "../store/evening-claims.ts";
import type { WatchRecord } from "../store/evening-watches.ts";
import { type CandidateNight, candidateNights, clubLimits, clubSites, postRules } from "./club-night.ts";
import type { EveningWorld } from "./evening-world.ts";
import type { PostedWatch } from "./watch.ts";
import { yieldToOthers } from "./yield.ts";

/** The kind under which a night's post is claimed. */
export const POST_KIND = "evening";

/** The kind under which the question of the morning after is claimed. */
export const QUESTION_KIND = "record";

export type ClubNight = {
  readonly club: PostingClub;
  readonly context: Context;
  readonly sites: readonly Site[];
  readonly limits: ObservingLimits;
  readonly night: CandidateNight;
  readonly record: WatchRecord | null;
};

export type Task =
  /** Not posted yet, or not known to be: judge, and post if it is worth it. */
  | (ClubNight & { readonly kind: "post"; readonly state: Dueness; readonly claim: Claim | null })
  | (ClubNight & { readonly kind: "watch"; readonly posted: PostedWatch })
  /** Over: those who were out are asked how it was. */
  | (ClubNight & { readonly kind: "ask"; readonly posted: PostedWatch });

/** Every task of this moment. */
export async function planTick(
  world: EveningWorld,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<readonly Task[]> {
  const tasks: Task[] = [];
  const at = world.clock();
  for (const club of await world.clubs()) {
    await yieldToOthers();
    const context = world.contextFor(club.id);
    const sites = await clubSites(club, context);
    const home = sites[0];
    if (home === undefined) continue;
    for (const night of candidateNights(home, postRules(club), at, timesOf)) {
      const record = await world.watches.find(club.id, night.times.night.date);
      const base = { club, context, sites, limits: clubLimits(club), night, record };
      const task = await taskOf(world, base, at);
      if (task !== null) tasks.push(task);
    }
  }
  return tasks;
}

async function taskOf(world: EveningWorld, base: ClubNight, at: Date): Promise<Task | null> {
  const { club, night, record } = base;
  const posted = record?.watch.posted ?? null;
  if (posted !== null) {
    const over = at >= (posted.window?.end ?? night.post.watchUntil);
    if (over && isTimeToAsk(posted, at)) return askTask(world, base, posted);
    return posted.gone || over ? null : { ...base, kind: "watch", posted };
  }
  const state = dueness(at, night.post, record?.watch.lookedInTime ?? false);
  if (state === "early") return null;
  const claim = await world.claims.find({ club: club.id, night: night.times.night.date, kind: POST_KIND });
  if (claim?.state === "abandoned") return null;
  if (claim === null && state === "over") return null;
  const resting = record !== null && claim === null && !isTimeToLook(record.watch.lookedAt, at);
  return resting ? null : { ...base, kind: "post", state, claim };
}

/** Whether a posted night is one to ask about now: it is over, was promised or denied, and still fresh. */
export function isTimeToAsk(posted: PostedWatch, at: Date): boolean {
  const sinceMs = at.getTime() - posted.nightEnds.getTime();
  const promised = posted.verdict === "go" || posted.verdict === "no-go";
  return promised && !posted.gone && sinceMs >= ASK_AFTER_MS && sinceMs < ASK_UNTIL_MS;
}

/** The question of the morning after, unless it was settled. */
async function askTask(world: EveningWorld, base: ClubNight, posted: PostedWatch): Promise<Task | null> {
  const { club, night } = base;
  const claim = await world.claims.find({
    club: club.id,
    night: night.times.night.date,
    kind: QUESTION_KIND,
  });
  return claim === null || claim.state === "claimed" ? { ...base, kind: "ask", posted } : null;
}

/** Whether the weather was last judged long enough ago, or at a moment yet to come. */
export function isTimeToLook(lookedAt: Date, at: Date): boolean {
  return isLongAgo(lookedAt, at, LOOK_AGAIN_MS);
}

/** Whether an instant lies so far back; one in the future is from before the clock was set back. */
export function isLongAgo(instant: Date, at: Date, ms: number): boolean {
  const agoMs = at.getTime() - instant.getTime();
  return agoMs >= ms || agoMs < 0;
}
