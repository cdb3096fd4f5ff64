/**
 * An evening before it is put in words: its situation, what fits the rig, the run card.
 *
 * @packageDocumentation
 */
import { NO_FILTER } from "../config/filters.ts";
import { TARGETS_LISTED, TARGETS_LISTED_UNASKED } from "../config/input-limits.ts";
import { POLAR_MOUNTS } from "../config/mount-rules.ts";
import {
  KIND_BRIGHTNESS,
  LEAST_CLEAR_HOURS,
  PREFERENCE,
  RANKING_RULES,
  VISUAL_RULES,
} from "../config/ranking.ts";
import { RUN_CARD_RULES } from "../config/run-card.ts";
import { totalHours } from "../core/interval.ts";
import { type BegunTarget, begunTargets } from "../core/log/progress.ts";
import type { Rig } from "../core/rig/rig.ts";
import { type CardTarget, type RunCard, runCard } from "../core/targets/run-card.ts";
import { type FitsTonight, type FittingTarget, fitsTonight } from "../core/targets/tonight.ts";
import { viewingCard } from "../core/targets/viewing-card.ts";
import { columnsOf } from "./catalogue-columns.ts";
import type { Context } from "./context.ts";
import { lightAssumptions } from "./light-assumptions.ts";
import { clearanceOf, rigTonight } from "./looking.ts";
import { filterIfAny } from "./read/filter.ts";
import { wholeNumberOption } from "./read/numbers.ts";
import { rigOf } from "./read/rig.ts";
import type { Request } from "./request.ts";
import { type Situation, situationOf } from "./situation.ts";
import { shortName } from "./words/target-words.ts";

/** Everything `tonight` knows before it is put in words. */
export type Evening = {
  readonly situation: Situation;
  readonly rig: Rig;
  readonly fits: FitsTonight;
  readonly card: RunCard | null;
  /** The list is made as if the night cleared: the forecast leaves no useful gap. */
  readonly ifItClears: boolean;
  /** What the member has begun or wants, by object. */
  readonly begun: ReadonlyMap<string, BegunTarget>;
};

/** Works the evening out: situation, ranking, run card. */
export async function evening(request: Request, context: Context): Promise<Evening> {
  const rig = await rigOf(request, context);
  const asked = filterIfAny(request, rig);
  const limit =
    wholeNumberOption(request, "limit", { ...TARGETS_LISTED, unit: "targets" }) ?? TARGETS_LISTED_UNASKED;
  const situation = await situationOf(request, context);
  const own = rig.kind === "camera" && rig.filters.length > 0 ? rig.filters : [NO_FILTER];
  const filters = asked === null ? own : [asked];
  const { clear, conditions } = situation;
  const begun = await begunBy(request, context);
  const lookings = filters.map((filter) => rigTonight(rig, filter, conditions, request.at));
  const ifItClears = clear !== null && totalHours(clear) < LEAST_CLEAR_HOURS;
  const fits = fitsTonight({
    columns: columnsOf(context.catalogue),
    conditions,
    times: situation.times,
    rig,
    clearance: clearanceOf(rig, situation.site),
    clear: ifItClears ? null : clear,
    lookings,
    rules: RANKING_RULES,
    visualRules: VISUAL_RULES,
    byKind: KIND_BRIGHTNESS,
    limit,
    preferred: preferenceOf(begun),
  });
  return { situation, rig, fits, card: cardOf(situation, rig, fits), ifItClears, begun };
}

/** What the member has begun or wants, by object. */
async function begunBy(request: Request, context: Context): Promise<ReadonlyMap<string, BegunTarget>> {
  const { log } = context.books;
  const [tallies, wanted] = await Promise.all([
    log.inHand(request.club, request.member.id),
    log.wanted(request.club, request.member.id),
  ]);
  return new Map(begunTargets(tallies, wanted).map((begun) => [begun.object, begun]));
}

/** What is begun comes first, what is done last. */
function preferenceOf(begun: ReadonlyMap<string, BegunTarget>): ReadonlyMap<string, number> {
  const done = ({ filters }: BegunTarget) => filters.every(({ leftHours }) => leftHours === 0);
  return new Map(
    [...begun].map(([object, target]) => [object, done(target) ? PREFERENCE.done : PREFERENCE.begun]),
  );
}

function cardOf({ times, verdict }: Situation, rig: Rig, fits: FitsTonight): RunCard | null {
  const [first, ...others] = fits.targets.map(cardTarget);
  if (first === undefined) return null;
  const polar = POLAR_MOUNTS.includes(rig.mount);
  const question = { times, first, others, dew: verdict.dew, polar };
  return rig.kind === "visual" ? viewingCard(question, RUN_CARD_RULES) : runCard(question, RUN_CARD_RULES);
}

function cardTarget({ target, night }: FittingTarget): CardTarget {
  const { usableHours, countingHours } = night.counted;
  return {
    name: shortName(target),
    windows: night.windows,
    worthOfHour: usableHours > 0 ? countingHours / usableHours : 0,
    meridianFlip: night.meridianFlip,
  };
}

/** What the list was made with for want of the member's own data. */
export function eveningAssumptions({ situation, rig, fits }: Evening): readonly string[] {
  return lightAssumptions(
    situation,
    rig,
    fits.targets.map(({ filter }) => filter),
  );
}

/** What is begun of a target; `null` of one that is not. */
export function begunOf({ begun }: Evening, { target }: FittingTarget): BegunTarget | null {
  return target.kind === "object" ? (begun.get(target.object.id) ?? null) : null;
}
