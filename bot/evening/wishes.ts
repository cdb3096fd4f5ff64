/**
 * Whom a post mentions: members who asked, when the night suits their own site and hours.
 *
 * @packageDocumentation
 */
import type { Context } from "../../commands/context.ts";
import { matchKey } from "../../commands/read/names.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import type { ObservingLimits } from "../../core/weather/observing-limits.ts";
import type { MemberWish } from "../store/notify-book.ts";
import { judge } from "./club-night.ts";
import type { Person } from "./evening-channel.ts";
import { yieldToOthers } from "./yield.ts";

/** A wish and the site it is about. */
export type PlacedWish = MemberWish & { readonly site: Site };

/** So many are looked up before others have a turn. */
const WISHES_AT_A_TIME = 10;

/** Wishes with their sites; one whose site is gone is left out. */
export async function placedWishes(
  club: string,
  wishes: readonly MemberWish[],
  context: Context,
): Promise<readonly PlacedWish[]> {
  const placed: PlacedWish[] = [];
  for (const [index, one] of wishes.entries()) {
    if (index % WISHES_AT_A_TIME === 0) await yieldToOthers();
    const saved = await context.books.sites.list(club, one.member);
    const { siteName } = one.wish;
    const own = saved.filter(({ ownerId }) => ownerId === one.member);
    const chosen =
      siteName === null
        ? (own.find(({ isDefault }) => isDefault) ?? own[0] ?? saved[0])
        : saved.find(({ site }) => matchKey(site.name) === matchKey(siteName));
    if (chosen !== undefined) placed.push({ ...one, site: chosen.site });
  }
  return placed;
}

/** Those whose own night is at least marginal and long enough. */
export async function membersToRing(
  wishes: readonly PlacedWish[],
  date: string,
  limits: ObservingLimits,
  context: Context,
  at: Date,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<readonly Person[]> {
  const ringing: Person[] = [];
  const judged = new Map<string, number>();
  for (const { member, wish, site } of wishes) {
    const key = `${site.latitudeDeg} ${site.longitudeDeg} ${site.elevationMetres} ${site.timeZone}`;
    const hours = judged.get(key) ?? (await usableHours(site, date, limits, context, at, timesOf));
    judged.set(key, hours);
    if (hours >= wish.leastHours) ringing.push({ id: member, name: "" });
  }
  return ringing;
}

async function usableHours(
  site: Site,
  date: string,
  limits: ObservingLimits,
  context: Context,
  at: Date,
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<number> {
  await yieldToOthers();
  const verdict = await judge(site, timesOf(site, date), limits, context, at);
  const good = verdict.kind === "go" || verdict.kind === "marginal";
  return good ? (verdict.usableHours ?? 0) : 0;
}
