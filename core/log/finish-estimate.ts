/**
 * When a target may be finished, from what the last weeks actually gave.
 *
 * @packageDocumentation
 */
import { MS_PER_DAY } from "../sky/time.ts";

export type FinishEstimate =
  | { readonly kind: "done" }
  /** Too few nights to reckon from. */
  | { readonly kind: "unknown"; readonly nightsGiven: number; readonly nightsNeeded: number }
  | {
      readonly kind: "estimate";
      readonly hoursPerWeek: number;
      readonly nightsGiven: number;
      readonly weeks: number;
      /** One standard deviation of `weeks`. */
      readonly giveOrTakeWeeks: number;
      /** `YYYY-MM-DD`. */
      readonly earliest: string;
      readonly likely: string;
      /** `null` when it may take more than `FARTHEST_WEEKS`. */
      readonly latest: string | null;
    };

export type FinishRules = {
  /** Weeks looked back on. */
  readonly weeks: number;
  /** Nights they must have given. */
  readonly leastNights: number;
};

/** Beyond five years an estimate is none. */
const FARTHEST_WEEKS = 260;

const DAYS_PER_WEEK = 7;

/**
 * How long the hours left will take at the pace of the last weeks.
 *
 * @param leftHours - hours still wanted
 * @param nights - hours that each past night gave; earlier and later ones are left out
 * @param today - `YYYY-MM-DD`, the night that has not yet begun
 *
 * @remarks
 * Weeks are taken as independent draws of mean m and standard deviation s: R hours take
 * R/m weeks, give or take √(s²R/m³), to which the uncertainty of m itself, s/√n, adds.
 * It knows nothing of seasons, and the answer says so.
 *
 * Source: D. R. Cox 1962, Renewal Theory (the variance of the number of renewals).
 */
export function finishEstimate(
  leftHours: number,
  nights: readonly { readonly night: string; readonly hours: number }[],
  today: string,
  rules: FinishRules,
): FinishEstimate {
  if (leftHours <= 0) return { kind: "done" };
  const weekly = Array.from({ length: rules.weeks }, () => 0);
  const given = new Set<string>();
  for (const { night, hours } of nights) {
    const daysAgo = (Date.parse(today) - Date.parse(night)) / MS_PER_DAY;
    const week = Math.ceil(daysAgo / DAYS_PER_WEEK) - 1;
    if (daysAgo < 1 || week >= rules.weeks || hours <= 0) continue;
    weekly[week] = (weekly[week] ?? 0) + hours;
    given.add(night);
  }
  if (given.size < rules.leastNights) {
    return { kind: "unknown", nightsGiven: given.size, nightsNeeded: rules.leastNights };
  }
  const hoursPerWeek = weekly.reduce((sum, hours) => sum + hours, 0) / rules.weeks;
  const variance =
    weekly.reduce((sum, hours) => sum + (hours - hoursPerWeek) ** 2, 0) / Math.max(1, rules.weeks - 1);
  const weeks = leftHours / hoursPerWeek;
  const giveOrTakeWeeks = Math.sqrt(
    (variance * leftHours) / hoursPerWeek ** 3 + (weeks ** 2 * variance) / (rules.weeks * hoursPerWeek ** 2),
  );
  const latestWeeks = weeks + giveOrTakeWeeks;
  return {
    kind: "estimate",
    hoursPerWeek,
    nightsGiven: given.size,
    weeks,
    giveOrTakeWeeks,
    earliest: after(today, Math.max(0, weeks - giveOrTakeWeeks)),
    likely: after(today, Math.min(weeks, FARTHEST_WEEKS)),
    latest: latestWeeks > FARTHEST_WEEKS ? null : after(today, latestWeeks),
  };
}

function after(today: string, weeks: number): string {
  const days = Math.ceil(weeks * DAYS_PER_WEEK);
  return new Date(Date.parse(today) + days * MS_PER_DAY).toISOString().slice(0, 10);
}
