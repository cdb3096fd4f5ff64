/**
 * Which night it is: from local noon to local noon, named by the date it begins on.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { bodyCrossings } from "../sky/crossings.ts";
import type { GroundPosition } from "../sky/frame.ts";
import type { Night } from "./night.ts";

/**
 * The night that begins on a local date.
 *
 * @param date - `YYYY-MM-DD`
 * @param timeZone - IANA name
 * @throws RangeError when there is no such date or zone (a command checks both first)
 */
export function nightOn(date: string, timeZone: string): Night {
  const day = DateTime.fromISO(date, { zone: "utc" });
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || !day.isValid) throw new RangeError(`no such date: ${date}`);
  return {
    date,
    timeZone,
    noon: noonOf(day, timeZone),
    nextNoon: noonOf(day.plus({ days: 1 }), timeZone),
  };
}

/** Local noon of a calendar day, whatever the clocks did in the night before. */
function noonOf(day: DateTime, timeZone: string): Date {
  const noon = DateTime.fromObject(
    { year: day.year, month: day.month, day: day.day, hour: 12 },
    { zone: timeZone },
  );
  if (!noon.isValid) throw new RangeError(`no such time zone: ${timeZone}`);
  return noon.toJSDate();
}

/**
 * Tonight: the night that holds an instant, or the coming one once the Sun has risen.
 *
 * Where the Sun neither rises nor sets, the night lasts until noon.
 */
export function nightHolding(at: Date, site: GroundPosition & { readonly timeZone: string }): Night {
  const local = DateTime.fromJSDate(at, { zone: site.timeZone });
  if (!local.isValid) throw new RangeError(`no such instant or time zone: ${site.timeZone}`);
  const begun = local.hour >= 12 ? local : local.minus({ days: 1 });
  const night = nightOn(begun.toFormat("yyyy-MM-dd"), site.timeZone);
  const passages = bodyCrossings("Sun", site, { kind: "rise-set" }, night.noon, night.nextNoon);
  const sunset = passages.find((passage) => !passage.rising);
  const sunrise = passages.find(
    (passage) => passage.rising && sunset !== undefined && passage.at > sunset.at,
  );
  return sunrise !== undefined && at >= sunrise.at ? nightAfter(night) : night;
}

/** The night after a night: its noon is where the other ends. */
function nightAfter(night: Night): Night {
  const day = DateTime.fromISO(night.date, { zone: "utc" }).plus({ days: 1 });
  return {
    date: day.toFormat("yyyy-MM-dd"),
    timeZone: night.timeZone,
    noon: night.nextNoon,
    nextNoon: noonOf(day.plus({ days: 1 }), night.timeZone),
  };
}

/** A night and those that follow, `count` in all. */
export function nightsFrom(night: Night, count: number): Night[] {
  const nights: Night[] = [];
  for (let next = night; nights.length < count; next = nightAfter(next)) nights.push(next);
  return nights;
}
