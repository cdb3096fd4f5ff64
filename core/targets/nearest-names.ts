/**
 * The names nearest to one that nobody bears.
 *
 * @packageDocumentation
 */
import { editDistance } from "./edit-distance.ts";

/** A name that may be offered: its key, and how it is written. */
export type Candidate = { readonly key: string; readonly text: string; readonly owner: unknown };

/** Nothing is further away than this many slips. */
const MOST_SLIPS = 200;

/** Only so much of a long name is compared. */
const COMPARED_LENGTH = 40;

/** Which letters and digits a key holds, one bit each. */
function letterMask(key: string): number {
  let mask = 0;
  for (let i = 0; i < key.length; i++) {
    const code = key.charCodeAt(i);
    // Letters take bits 0 to 25; digits share the six above.
    mask |= code >= 97 ? 1 << (code - 97) : 1 << (26 + (code % 6));
  }
  return mask;
}

function bitCount(mask: number): number {
  let left = mask - ((mask >>> 1) & 0x55555555);
  left = (left & 0x33333333) + ((left >>> 2) & 0x33333333);
  return (((left + (left >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}

/** Names from this many letters on are also compared with the beginnings of longer ones. */
const SHORTEST_BEGINNING = 4;

/** Names of so many letters only where the longer one begins with exactly them: `Owl`. */
const SHORTEST_EXACT_BEGINNING = 3;

/** What it costs that a name goes on after the part that was typed. */
const UNFINISHED = 1;

/** Slips between what is wanted and a key, or between it and the key's beginning. */
function slipsTo(wanted: string, key: string, worst: number): number {
  const whole = editDistance(wanted, key, worst);
  if (wanted.length === SHORTEST_EXACT_BEGINNING && key.startsWith(wanted))
    return Math.min(whole, UNFINISHED);
  if (wanted.length < SHORTEST_BEGINNING || key.length <= wanted.length) return whole;
  const left = Math.min(whole - 1, worst) - UNFINISHED;
  if (left < 0) return whole;
  return Math.min(whole, UNFINISHED + editDistance(wanted, key.slice(0, wanted.length), left));
}

/**
 * The candidates with the fewest slips between their key and the one asked for.
 *
 * A key that only begins with something near counts as one slip further away.
 *
 * @param asked - the key of what was asked for
 * @param candidates - the more likely first: of two equally near, the earlier wins
 * @param count - how many to name
 * @returns names as written, nearest first, no two of one owner
 */
export function nearestNames(
  asked: string,
  candidates: Iterable<Candidate>,
  count: number,
): readonly string[] {
  const best: { slips: number; candidate: Candidate }[] = [];
  const wanted = asked.slice(0, COMPARED_LENGTH);
  const wantedMask = letterMask(wanted);
  for (const candidate of candidates) {
    const worst = best.length < count ? MOST_SLIPS : (best[best.length - 1]?.slips ?? MOST_SLIPS) - 1;
    if (worst < 0) break;
    const { key, owner } = candidate;
    if (wanted.length - key.length > worst) continue;
    if (bitCount(wantedMask & ~letterMask(key)) > worst) continue;
    const slips = slipsTo(wanted, key, worst);
    if (slips > worst) continue;
    const known = best.findIndex((entry) => entry.candidate.owner === owner);
    if (known >= 0 && (best[known]?.slips ?? 0) <= slips) continue;
    if (known >= 0) best.splice(known, 1);
    const place = best.findIndex((entry) => entry.slips > slips);
    best.splice(place < 0 ? best.length : place, 0, { slips, candidate });
    if (best.length > count) best.pop();
  }
  return best.map((entry) => entry.candidate.text);
}
