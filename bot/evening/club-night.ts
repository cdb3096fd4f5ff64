/**
 * A club's sites and the night at hand at one of them: its times and its weather.
 *
 * @packageDocumentation
 */

import { DateTime } from "luxon";
import type { Context } from "../../commands/context.ts";
import { matchKey } from "../../commands/read/names.ts";
import { LEAST_LEFT_HOURS, USEFUL_AFTER_DUSK_HOURS } from "../../config/evening.ts";
import { OBSERVING_LIMITS } from "../../config/observing-limits.ts";
import { type PostRules, type PostTimes, postTimes } from "../../core/night/dueness.ts";
import { nightOn } from "../../core/night/local-night.ts";
import type { NightTimes } from "../../core/night/night.ts";
import { nightTimes } from "../../core/night/night-times.ts";
import type { Site } from "../../core/site.ts";
import type { ModelForecast } from "../../core/weather/forecast-hour.ts";
import type { ObservingLimits } from "../../core/weather/observing-limits.ts";
import { type NightVerdict, nightVerdict } from "../../core/weather/verdict.ts";
import type { PostingClub } from "../store/club-book.ts";

/** Asks as the club itself: it owns no site, and sees those that are shared. */
export const CLUB_ITSELF = { id: "club", name: "the club", organiser: false } as const;

/** The sites a club's post speaks of, home first; the first shared one when none was named. */
export async function clubSites(club: PostingClub, context: Context): Promise<readonly Site[]> {
  const shared = (await context.books.sites.list(club.id, CLUB_ITSELF.id)).map(({ site }) => site);
  if (club.settings.sites.length === 0) return shared.slice(0, 1);
  return club.settings.sites.flatMap(
    (name) => shared.find((site) => matchKey(site.name) === matchKey(name)) ?? [],
  );
}

export function clubLimits(club: PostingClub): ObservingLimits {
  return { ...OBSERVING_LIMITS, ...club.settings.limits };
}

export function postRules(club: PostingClub): PostRules {
  return {
    hoursBeforeSunset: club.settings.hoursBeforeSunset,
    usefulAfterDuskHours: USEFUL_AFTER_DUSK_HOURS,
    leastLeftHours: LEAST_LEFT_HOURS,
  };
}

/** A night that a post could be about, at the club's home site. */
export type CandidateNight = { readonly times: NightTimes; readonly post: PostTimes };

/**
 * The nights that could be due or under way: the one of the local date, and the one before.
 *
 * @param timesOf - a night's times, remembered between ticks
 */
export function candidateNights(
  home: Site,
  rules: PostRules,
  at: Date,
  timesOf: (site: Site, date: string) => NightTimes,
): readonly CandidateNight[] {
  const today = DateTime.fromJSDate(at, { zone: home.timeZone });
  return [today.minus({ days: 1 }), today].flatMap((day) => {
    const times = timesOf(home, day.toFormat("yyyy-MM-dd"));
    const post = postTimes(times, rules);
    return post === null ? [] : [{ times, post }];
  });
}

/** Night times by place and date, computed once while they are asked for. */
export function rememberedTimes(most = 4000): (site: Site, date: string) => NightTimes {
  const known = new Map<string, NightTimes>();
  return (site, date) => {
    const key = `${site.latitudeDeg} ${site.longitudeDeg} ${site.elevationMetres} ${site.timeZone} ${date}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    if (known.size >= most) known.clear();
    const times = nightTimes(site, nightOn(date, site.timeZone));
    known.set(key, times);
    return times;
  };
}

const MS_PER_HOUR = 3_600_000;

/**
 * The weather's verdict at a site; `unknown` as well when nothing fresh is at hand.
 */
export async function judge(
  site: Site,
  times: NightTimes,
  limits: ObservingLimits,
  context: Context,
  at: Date,
): Promise<NightVerdict> {
  const { models } = await context.forecasts.at(site, times.night.noon);
  return nightVerdict(
    times,
    models.filter((model) => isFresh(model, limits, at)),
    limits,
    at,
  );
}

function isFresh(model: ModelForecast, limits: ObservingLimits, at: Date): boolean {
  const from = model.fetchedAt ?? model.issuedAt;
  return from === null || at.getTime() - from.getTime() <= limits.oldAfterHours * MS_PER_HOUR;
}
