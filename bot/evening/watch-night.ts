/**
 * A posted night, looked after until its window ends: edits, notices, early warnings.
 *
 * What is owed is written down before it is done, so that a crash leaves it owed.
 *
 * @packageDocumentation
 */
import { ATTEMPT_MS, EDIT_AGAIN_MS } from "../../config/evening.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import type { NightVerdict } from "../../core/weather/verdict.ts";
import { judge } from "./club-night.ts";
import { composeNight, nightMessage, withoutFiles } from "./compose.ts";
import { earlyWarnings } from "./early-warning.ts";
import type { Person } from "./evening-channel.ts";
import type { EveningWorld } from "./evening-world.ts";
import { changeNotice, warningNotice } from "./notices.ts";
import { isLongAgo, isTimeToLook, type Task } from "./plan.ts";
import type { PostOutcome } from "./post-once.ts";
import { allSettled, replyToPost } from "./reply-to-post.ts";
import { markRefused } from "./trouble.ts";
import { type PostedWatch, type Watch, watchStep } from "./watch.ts";
import { yieldToOthers } from "./yield.ts";

type WatchTask = Extract<Task, { kind: "watch" }>;

/** A watch under way: the task, and the record as this process last wrote or read it. */
type Watching = {
  readonly world: EveningWorld;
  readonly task: WatchTask;
  readonly night: string;
  readonly site: Site;
  readonly turn: number;
  readonly watch: Watch;
  readonly posted: PostedWatch;
};

/** One look after a posted night. */
export async function watchNight(
  world: EveningWorld,
  task: WatchTask,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<void> {
  const site = task.sites.find(({ name }) => name === task.posted.siteName) ?? task.sites[0];
  if (site === undefined || task.record === null) return;
  const night = task.night.times.night.date;
  const { turn, watch } = task.record;
  let now: Watching | null = { world, task, night, site, turn, watch, posted: task.posted };
  const goers = await world.people.list(task.club.id, night, "out");
  const look = isTimeToLook(watch.lookedAt, world.clock());
  const verdict = look || goers.length > 0 ? await lookAt(now, timesOf) : null;
  if (look && verdict !== null) now = await rememberLook(now, verdict);
  if (now?.posted.editOwed) now = await payEdit(now);
  if (now?.posted.noticeOwed) now = await payNotice(now, goers);
  if (now !== null && !now.posted.gone && verdict !== null) await warn(now, verdict, goers);
}

async function lookAt(
  { world, task, site, night }: Watching,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<NightVerdict> {
  await yieldToOthers();
  return judge(site, timesOf(site, night), task.limits, task.context, world.clock());
}

/** Writes the change; `null` when another process wrote first: it does the rest. */
async function write(
  now: Watching,
  posted: PostedWatch,
  lookedAt: Date = now.watch.lookedAt,
): Promise<Watching | null> {
  const watch: Watch = { ...now.watch, lookedAt, posted };
  const turn = await now.world.watches.save(now.task.club.id, now.night, watch, now.turn);
  return turn === null ? null : { ...now, turn, watch, posted };
}

async function rememberLook(now: Watching, verdict: NightVerdict): Promise<Watching | null> {
  const { posted, world, site } = now;
  const seen = { verdict: verdict.kind, window: verdict.window };
  const step = watchStep(posted, seen, posted.movedTo);
  const at = world.clock();
  if (step.kind === "leave") return write(now, { ...posted, movedTo: step.movedTo }, at);
  // Too soon for another edit: the next tick looks again.
  if (!isLongAgo(posted.changedAt, at, EDIT_AGAIN_MS)) return now;
  const notice = changeNotice(posted, seen, site.name, site.timeZone, posted.answer);
  const changed: PostedWatch = {
    ...posted,
    ...seen,
    changedAt: at,
    movedTo: null,
    changes: posted.changes + 1,
    editOwed: true,
    noticeOwed: notice,
  };
  return write(now, changed, at);
}

async function payEdit(now: Watching): Promise<Watching | null> {
  const { world, task, night, posted, site } = now;
  const answer = await composeNight(world, task, site, []);
  const rings = await world.people.list(task.club.id, night, "mentioned");
  const goers = await world.people.list(task.club.id, night, "out");
  const message = nightMessage(task.club.id, night, answer, rings, goers);
  const files = "replaced";
  const outcome = await world.channel.edit(posted.channelId, posted.messageId, message, files, ATTEMPT_MS);
  switch (outcome.kind) {
    case "sent":
      return write(now, { ...posted, answer: withoutFiles(answer), editOwed: false });
    case "deleted":
      return write(now, { ...posted, editOwed: false, noticeOwed: null, gone: true });
    case "refused":
      await markRefused(task, outcome.reason);
      return write(now, { ...posted, editOwed: false, noticeOwed: null, gone: true });
    case "invalid":
      world.log(`an edit of the post for ${night} was found wrong: ${outcome.reason}`);
      return write(now, { ...posted, editOwed: false });
    case "unclear":
      return now;
  }
}

async function payNotice(now: Watching, goers: readonly Person[]): Promise<Watching | null> {
  const { world, task, night, posted } = now;
  if (posted.gone || posted.noticeOwed === null) return now;
  const outcomes = await replyToPost(world, {
    club: task.club.id,
    night,
    channelId: posted.channelId,
    replyTo: posted.messageId,
    kind: `change-${posted.changes}`,
    answer: posted.noticeOwed,
    rings: goers,
    worthSending: true,
  });
  if (await closedToUs(now, outcomes)) return write(now, { ...posted, noticeOwed: null, gone: true });
  return allSettled(outcomes) ? write(now, { ...posted, noticeOwed: null }) : now;
}

async function warn(now: Watching, verdict: NightVerdict, goers: readonly Person[]): Promise<void> {
  if (goers.length === 0) return;
  const { world, task, night, posted, site } = now;
  for (const warning of earlyWarnings(verdict, task.limits, world.clock())) {
    const outcomes = await replyToPost(world, {
      club: task.club.id,
      night,
      channelId: posted.channelId,
      replyTo: posted.messageId,
      kind: warning.kind === "cloud" ? "warning-cloud" : "warning-dew",
      answer: warningNotice(warning, site.name, site.timeZone, posted.answer),
      rings: goers,
      worthSending: true,
    });
    if (await closedToUs(now, outcomes)) return;
  }
}

/** Whether the channel refused a reply; it is marked so. */
async function closedToUs({ task }: Watching, outcomes: readonly PostOutcome[]): Promise<boolean> {
  for (const outcome of outcomes) {
    if (outcome.kind !== "abandoned" || outcome.reason !== "refused") continue;
    await markRefused(task, outcome.detail);
    return true;
  }
  return false;
}
