/**
 * What a member has begun: how strongly tonight prefers it, and what is left of it.
 *
 * @packageDocumentation
 */
import { BEGUN_PREFERENCE } from "../config/log-limits.ts";
import { type BegunTarget, begunTargets } from "../core/log/progress.ts";
import type { Context } from "./context.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";

/** Everything begun or wanted, the latest begun first. */
export async function begunOf(request: Request, context: Context): Promise<readonly BegunTarget[]> {
  const { log } = context.books;
  const { club, member } = request;
  return begunTargets(await log.inHand(club, member.id), await log.wanted(club, member.id));
}

/** By designation: how much more each target with hours to do counts. */
export function preferencesOf(begun: readonly BegunTarget[]): ReadonlyMap<string, number> {
  return new Map(begun.filter(isUnfinished).map(({ object }) => [object, BEGUN_PREFERENCE]));
}

/** Begun without a wish, or with hours of a wish left. */
function isUnfinished({ filters }: BegunTarget): boolean {
  const wanted = filters.filter(({ wantedHours }) => wantedHours !== null);
  return wanted.length === 0 || wanted.some(({ leftHours }) => leftHours !== null && leftHours > 0);
}

/** `Begun: 8 h 57 min left in o-iii, 4 h in h-alpha.`, or what is in hand where nothing was wanted. */
export function begunWords({ filters }: BegunTarget): string {
  const left = filters.filter(({ leftHours }) => leftHours !== null && leftHours > 0);
  const [first, ...others] = left;
  if (first !== undefined) {
    const more = others.map(({ leftHours, passband }) => `, ${durationWords(leftHours ?? 0)} in ${passband}`);
    return `Begun: ${durationWords(first.leftHours ?? 0)} left in ${first.passband}${more.join("")}.`;
  }
  const inHand = filters
    .filter(({ inHandHours }) => inHandHours > 0)
    .map(({ inHandHours, passband }) => `${durationWords(inHandHours)} in ${passband}`);
  return `In hand: ${inHand.join(", ")}.`;
}
