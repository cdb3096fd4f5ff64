/**
 * The verdict on a night: go, marginal or no-go, with its window, its reasons and how sure it is.
 *
 * Each model is judged by the same rules and has one vote; the figures come from
 * the median of all. No forecast means no verdict, never a guess.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import { MS_PER_DAY } from "../sky/time.ts";
import { type DewSpan, dewHours, withDewPoint } from "./dew.ts";
import type { ForecastHour, ModelForecast } from "./forecast-hour.ts";
import { LONGEST_STEP_MS } from "./interpolate.ts";
import { meanOver } from "./mean.ts";
import { mergedHours } from "./merge.ts";
import { judgeNight, type NightJudgement, type VerdictKind } from "./night-judgement.ts";
import { type NightObjection, nightObjections } from "./night-objections.ts";
import type { ObservingLimits } from "./observing-limits.ts";
import { reasonsOf, warningsOf } from "./verdict-words.ts";

export type ModelVote = {
  readonly provider: string;
  readonly model: string;
  readonly kind: VerdictKind;
};

export type NightVerdict = {
  /** The local date on which the night begins. */
  readonly night: string;
  /** Tonight is 0. */
  readonly leadNights: number;
  readonly kind: VerdictKind;
  /** Too far ahead for a verdict: never shown without that word. */
  readonly outlook: boolean;
  /** The run the verdict stands on, else the longest usable one; `null` when there is none. */
  readonly window: Interval | null;
  /** Usable runs inside the darkness (or the deepest twilight there is), in order. */
  readonly usable: readonly Interval[];
  /** `null` when unknown, as are the other figures. */
  readonly usableHours: number | null;
  readonly darkHours: number;
  readonly meanCloudPercent: number | null;
  /** Share of the models whose own verdict is this one; `null` with one model or none. */
  readonly agreement: number | null;
  readonly votes: readonly ModelVote[];
  /** What costs darkness, the costliest first. */
  readonly objections: readonly NightObjection[];
  /** Sentences, the weightiest first: quantity, value, limit. */
  readonly reasons: readonly string[];
  /** Sentences on what does not forbid the night, listed for a go night too. */
  readonly warnings: readonly string[];
  /** Dew and frost on optics between dusk and dawn. */
  readonly dew: readonly DewSpan[];
  /** The median hours, from six hours before local noon to six after the next. */
  readonly hours: readonly ForecastHour[];
  /** Rests on invented hours: said in the title of whatever shows it. */
  readonly sample: boolean;
};

/**
 * Judges a night.
 *
 * @param times - the night
 * @param models - every model at hand; none gives `unknown`
 * @param limits - the club's
 * @param at - the clock, from which the lead and the forecast's age are counted
 *
 * @remarks
 * Go when at least `agreementShare` of the models say go, no-go when as many say
 * no-go, else marginal. A model that knows nothing of the night has no vote.
 */
export function nightVerdict(
  times: NightTimes,
  models: readonly ModelForecast[],
  limits: ObservingLimits,
  at: Date,
): NightVerdict {
  const lead = leadNights(times, at);
  const near = models.map((model) => aroundNight(model, times)).filter((model) => model.hours.length > 0);
  const votes = near.flatMap((model) => voteOf(model, times, limits));
  const hours = mergedHours(near);
  const judgement = judgeNight(times, hours, limits);
  const kind = lead > limits.outlookNights ? "unknown" : settle(votes, limits);
  const known = kind !== "unknown";
  const found = known ? nightObjections(judgement.stretches) : [];
  const dew = known ? times.workingWindows.flatMap((span) => dewHours(hours, span, limits.optics)) : [];
  const words = { times, kind, lead, judgement, votes, limits, objections: found, dew, at, models: near };
  const meanCloudPercent = known ? meanOver(hours, "cloudPercent", times.workingWindows) : null;
  return {
    night: times.night.date,
    leadNights: lead,
    kind,
    outlook: known && lead > limits.verdictNights,
    window: known ? judgement.window : null,
    usable: known ? judgement.usable : [],
    usableHours: known ? judgement.usableHours : null,
    darkHours: judgement.darkHours,
    meanCloudPercent,
    agreement: known ? agreementOf(votes, kind) : null,
    votes,
    objections: found,
    reasons: reasonsOf({ ...words, meanCloudPercent }),
    warnings: known ? warningsOf({ ...words, meanCloudPercent }) : [],
    dew,
    hours,
    sample: near.some((model) => model.sample),
  };
}

/**
 * How many nights ahead a night is; 0 for the one in progress or to come, and for any past.
 *
 * @remarks
 * A night ends at its sunrise. The sunrises before it are taken to be whole days
 * earlier, which is right to a few minutes a day.
 */
export function leadNights(times: NightTimes, at: Date): number {
  const end = times.sunrise ?? times.night.nextNoon;
  return Math.max(0, Math.ceil((end.getTime() - at.getTime()) / MS_PER_DAY) - 1);
}

function aroundNight(model: ModelForecast, times: NightTimes): ModelForecast {
  const fromMs = times.night.noon.getTime() - LONGEST_STEP_MS;
  const toMs = times.night.nextNoon.getTime() + LONGEST_STEP_MS;
  const hours = model.hours.filter((hour) => hour.at.getTime() >= fromMs && hour.at.getTime() <= toMs);
  return { ...model, hours: hours.map(withDewPoint) };
}

function voteOf(model: ModelForecast, times: NightTimes, limits: ObservingLimits): ModelVote[] {
  const { kind }: NightJudgement = judgeNight(times, model.hours, limits);
  return kind === "unknown" ? [] : [{ provider: model.provider, model: model.model, kind }];
}

/** A share of a whole number of models is compared with a little room for binary fractions. */
const ROUNDING = 1e-9;

function settle(votes: readonly ModelVote[], limits: ObservingLimits): VerdictKind {
  if (votes.length === 0) return "unknown";
  const first = votes[0];
  if (votes.length === 1 && first !== undefined) return first.kind;
  const share = (kind: VerdictKind) => votes.filter((vote) => vote.kind === kind).length / votes.length;
  if (share("go") >= limits.agreementShare - ROUNDING) return "go";
  return share("no-go") >= limits.agreementShare - ROUNDING ? "no-go" : "marginal";
}

function agreementOf(votes: readonly ModelVote[], kind: VerdictKind): number | null {
  if (votes.length < 2) return null;
  return votes.filter((vote) => vote.kind === kind).length / votes.length;
}
