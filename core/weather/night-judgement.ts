/**
 * One model's word on one night: its usable runs inside the darkness, and what they come to.
 *
 * @packageDocumentation
 */
import { type Interval, intervalHours, longestInterval, totalHours } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import type { ForecastHour } from "./forecast-hour.ts";
import type { Grade } from "./objections.ts";
import type { ObservingLimits } from "./observing-limits.ts";
import { type Stretch, stretchesOf } from "./stretches.ts";

/** `unknown` is not a bad night: nobody has said. */
export type VerdictKind = "go" | "marginal" | "no-go" | "unknown";

export type NightJudgement = {
  readonly kind: VerdictKind;
  /** The run the verdict stands on, else the longest usable one; `null` when there is none. */
  readonly window: Interval | null;
  /** Usable runs inside the darkness, in order. */
  readonly usable: readonly Interval[];
  readonly usableHours: number;
  readonly darkHours: number;
  /** How much of the darkness the model speaks of. */
  readonly knownHours: number;
  /** The run that a go needs. */
  readonly neededHours: number;
  /** Inside the darkness, by the club's own limits. */
  readonly stretches: readonly Stretch[];
  /** A step over an hour lies in the darkness. */
  readonly coarse: boolean;
};

/** A usable run; `fineHours` is its longest part without a step over an hour. */
type Run = Interval & { readonly fineHours: number };

/** Instants are whole milliseconds: less than this apart is alike. */
const SAME_HOURS = 1e-6;

function reaches(hours: number, neededHours: number): boolean {
  return hours >= neededHours - SAME_HOURS;
}

/**
 * Judges one night by one model's hours (or by the median of all).
 *
 * @param times - the night; its working windows are the darkness, or the deepest twilight there is
 * @param hours - in order of time, dew points filled
 *
 * @remarks
 * Go: one run of at least `goHours`, or of `goDarknessShare` of the darkness if that
 * is shorter. Marginal: `marginalShare` of that, or all of it at the poorer limit.
 * Steps over an hour carry no go.
 */
export function judgeNight(
  times: NightTimes,
  hours: readonly ForecastHour[],
  limits: ObservingLimits,
): NightJudgement {
  const darkness = times.workingWindows;
  const darkHours = totalHours(darkness);
  const neededHours = Math.min(limits.goHours, limits.goDarknessShare * darkHours);
  const graded = (grade: Grade) => stretchesOf(hours, darkness, limits, grade);
  const stretches = graded("usable");
  const runs = runsOf(stretches);
  const knownHours = totalHours(stretches);
  const known = { runs, poorRuns: () => runsOf(graded("poor")), knownHours, darkHours, neededHours };
  return {
    ...decide(known, hasNightHours(times, hours), limits),
    usable: runs.map(({ start, end }) => ({ start, end })),
    usableHours: totalHours(runs),
    darkHours,
    knownHours,
    neededHours,
    stretches,
    coarse: stretches.some((stretch) => stretch.coarse),
  };
}

type Known = {
  readonly runs: readonly Run[];
  /** By the poorer limit; asked for only when the club's own give no verdict. */
  readonly poorRuns: () => readonly Run[];
  readonly knownHours: number;
  readonly darkHours: number;
  readonly neededHours: number;
};

function decide(
  known: Known,
  speaksOfTheNight: boolean,
  limits: ObservingLimits,
): Pick<NightJudgement, "kind" | "window"> {
  const { runs, poorRuns, knownHours, darkHours, neededHours } = known;
  if (darkHours === 0) return { kind: speaksOfTheNight ? "no-go" : "unknown", window: null };
  if (knownHours === 0) return { kind: "unknown", window: null };
  const finest = runs.reduce<Run | null>(
    (best, run) => (best === null || run.fineHours > best.fineHours ? run : best),
    null,
  );
  if (finest !== null && reaches(finest.fineHours, neededHours)) {
    return { kind: "go", window: { start: finest.start, end: finest.end } };
  }
  const longest = spanOf(longestInterval(runs));
  if (longest !== null && reaches(intervalHours(longest), neededHours * limits.marginalShare)) {
    return { kind: "marginal", window: longest };
  }
  const longestPoor = spanOf(longestInterval(poorRuns()));
  if (longestPoor !== null && reaches(intervalHours(longestPoor), neededHours)) {
    return { kind: "marginal", window: longestPoor };
  }
  const enough = knownHours >= limits.knownShare * darkHours - SAME_HOURS;
  return { kind: enough ? "no-go" : "unknown", window: longest };
}

function spanOf(interval: Interval | null): Interval | null {
  return interval === null ? null : { start: interval.start, end: interval.end };
}

function hasNightHours(times: NightTimes, hours: readonly ForecastHour[]): boolean {
  const { noon, nextNoon } = times.night;
  return hours.some((hour) => hour.cloudPercent !== null && hour.at >= noon && hour.at <= nextNoon);
}

function runsOf(stretches: readonly Stretch[]): Run[] {
  const runs: Run[] = [];
  let fineHours = 0;
  for (const stretch of stretches) {
    if (stretch.objections.length > 0) continue;
    const last = runs.at(-1);
    const joins = last !== undefined && last.end.getTime() === stretch.start.getTime();
    if (!joins || stretch.coarse) fineHours = 0;
    if (!stretch.coarse) fineHours += intervalHours(stretch);
    if (joins) runs.pop();
    runs.push({
      start: joins ? last.start : stretch.start,
      end: stretch.end,
      fineHours: Math.max(joins ? last.fineHours : 0, fineHours),
    });
  }
  return runs;
}
