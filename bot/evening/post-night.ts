/**
 * A night not posted yet: judged, and posted when it is worth it.
 *
 * @packageDocumentation
 */
import type { PostOn } from "../../commands/books.ts";
import { windowWorthPosting } from "../../core/night/dueness.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import type { VerdictKind } from "../../core/weather/night-judgement.ts";
import { judge, postRules } from "./club-night.ts";
import { composeNight, type JudgedSite, nightMessage, withoutFiles } from "./compose.ts";
import type { Person } from "./evening-channel.ts";
import type { EveningWorld } from "./evening-world.ts";
import { mentionNotice } from "./notices.ts";
import { POST_KIND, type Task } from "./plan.ts";
import { type PostOutcome, postOnce } from "./post-once.ts";
import { allSettled, inParts, replyToPost } from "./reply-to-post.ts";
import { markRefused, markUnreadable } from "./trouble.ts";
import { noteVerdicts } from "./verdict-record.ts";
import type { PostedWatch, Watch } from "./watch.ts";
import { membersToRing, placedWishes } from "./wishes.ts";
import { yieldToOthers } from "./yield.ts";

type PostTask = Extract<Task, { kind: "post" }>;

const BEST_FIRST: readonly VerdictKind[] = ["go", "marginal", "no-go", "unknown"];

const WANTED: Readonly<Record<PostOn, readonly VerdictKind[]>> = {
  go: ["go"],
  marginal: ["go", "marginal"],
  "every-night": ["go", "marginal", "no-go"],
};

/** Looks at the night, and posts it when its verdict is one the club wants to hear. */
export async function postNight(
  world: EveningWorld,
  task: PostTask,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<void> {
  const at = world.clock();
  const judged = await judgeSites(task, at, timesOf);
  const [lead, ...others] = judged;
  if (lead === undefined) return;
  await noteVerdicts(world, task, judged, timesOf);
  const worthIt = isWorthIt(task, lead, at);
  const turn = await rememberLook(world, task, lead.verdict.kind !== "unknown" && !worthIt, at);
  if (task.claim === null && !worthIt) return;
  const { answer, rings } = await words(world, task, lead, others, timesOf);
  const outcome = await sendNight(world, task, answer, rings, worthIt);
  await concludePost(world, task, { outcome, lead, answer, rings, turn });
}

/** The club's sites, the best verdict first; alike, in the club's own order. */
async function judgeSites(
  task: PostTask,
  at: Date,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<readonly JudgedSite[]> {
  const judged: JudgedSite[] = [];
  for (const site of task.sites) {
    await yieldToOthers();
    const times = timesOf(site, task.night.times.night.date);
    judged.push({ site, verdict: await judge(site, times, task.limits, task.context, at) });
  }
  const rank = ({ verdict }: JudgedSite) => BEST_FIRST.indexOf(verdict.kind);
  return judged.sort((one, other) => rank(one) - rank(other));
}

/**
 * Writes down that the night was looked at.
 *
 * @param rests - until the next look; a night that nobody has foretold is tried again at the
 * next tick, as is one that is about to be posted
 */
async function rememberLook(world: EveningWorld, task: PostTask, rests: boolean, at: Date): Promise<number> {
  const before = task.record;
  const watch: Watch = {
    lookedAt: rests ? at : new Date(0),
    lookedInTime: task.state === "due" || (before?.watch.lookedInTime ?? false),
    posted: null,
  };
  const { club, night } = task;
  return (await world.watches.save(club.id, night.times.night.date, watch, before?.turn ?? 0)) ?? 0;
}

function isWorthIt(task: PostTask, { verdict }: JudgedSite, at: Date): boolean {
  if (!WANTED[task.club.settings.postOn].includes(verdict.kind)) return false;
  if (verdict.kind === "no-go") return task.state === "due";
  if (verdict.window === null) return false;
  return windowWorthPosting(at, task.state, verdict.window, postRules(task.club));
}

async function words(
  world: EveningWorld,
  task: PostTask,
  lead: JudgedSite,
  others: readonly JudgedSite[],
  timesOf: (site: Site, date: string) => NightTimes,
) {
  const { club, context, limits, night } = task;
  const answer = await composeNight(world, task, lead.site, others);
  const wishes = await placedWishes(club.id, await world.wishes(club.id), context);
  const date = night.times.night.date;
  const rings = await membersToRing(wishes, date, limits, context, world.clock(), timesOf);
  return { answer, rings };
}

function sendNight(
  world: EveningWorld,
  task: PostTask,
  answer: PostedWatch["answer"],
  rings: readonly Person[],
  worthIt: boolean,
): Promise<PostOutcome> {
  const { club, night, state } = task;
  const date = night.times.night.date;
  const message = nightMessage(club.id, date, answer, inParts(rings)[0] ?? [], []);
  const sending = worthIt ? "now" : state === "over" ? "never" : "later";
  const { channelId } = club.settings;
  return postOnce({ club: club.id, night: date, kind: POST_KIND, channelId, message, sending }, world);
}

type Conclusion = {
  readonly outcome: PostOutcome;
  readonly lead: JudgedSite;
  readonly answer: PostedWatch["answer"];
  readonly rings: readonly Person[];
  readonly turn: number;
};

async function concludePost(world: EveningWorld, task: PostTask, end: Conclusion): Promise<void> {
  const night = task.night.times.night.date;
  const { outcome } = end;
  if (outcome.kind === "abandoned") {
    world.log(`the post for ${night} was given up: ${outcome.reason} ${outcome.detail}`.trim());
    if (outcome.reason === "refused") await markRefused(task, outcome.detail);
    if (outcome.reason === "unreadable") await markUnreadable(task, night);
    return;
  }
  if (outcome.kind === "held") return;
  const messageId = outcome.kind === "posted" ? outcome.messageId : outcome.claim.messageId;
  if (messageId === null) return;
  const channelId =
    outcome.kind === "posted"
      ? (task.claim?.channelId ?? task.club.settings.channelId)
      : outcome.claim.channelId;
  // Before the post is written down, so that a crash in between has them sent by the next tick.
  if (!(await ringTheRest(world, task, end, channelId, messageId))) return;
  await keepPosted(world, task, end, channelId, messageId);
}

/** @returns whether every further mention came to an end */
async function ringTheRest(
  world: EveningWorld,
  task: PostTask,
  { answer, rings }: Conclusion,
  channelId: string,
  messageId: string,
): Promise<boolean> {
  const rest = rings.slice(inParts(rings)[0]?.length ?? 0);
  const outcomes = await replyToPost(world, {
    club: task.club.id,
    night: task.night.times.night.date,
    channelId,
    replyTo: messageId,
    kind: "mentions",
    answer: mentionNotice(answer),
    rings: rest,
    worthSending: task.state !== "over",
  });
  return allSettled(outcomes);
}

async function keepPosted(
  world: EveningWorld,
  task: PostTask,
  { lead, answer, rings, turn }: Conclusion,
  channelId: string,
  messageId: string,
): Promise<void> {
  const at = world.clock();
  const night = task.night.times.night.date;
  await world.people.add(task.club.id, night, "mentioned", inParts(rings)[0] ?? [], at);
  const posted: PostedWatch = {
    verdict: lead.verdict.kind,
    window: lead.verdict.window,
    siteName: lead.site.name,
    channelId,
    messageId,
    changedAt: at,
    movedTo: null,
    changes: 0,
    answer: withoutFiles(answer),
    editOwed: false,
    noticeOwed: null,
    nightEnds: task.night.post.watchUntil,
    gone: false,
  };
  await world.watches.save(task.club.id, night, { lookedAt: at, lookedInTime: true, posted }, turn);
}
