/**
 * Meteor showers as events at a site.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import { METEOR_SHOWERS } from "../config/meteor-showers.ts";
import { METEORS_WORTH_A_LOOK } from "../config/outreach.ts";
import { nightOfInstant } from "../core/log/night-of.ts";
import { nightOn } from "../core/night/local-night.ts";
import type { NightTimes } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import {
  type ShowerNight,
  type ShowerPeak,
  showerNight,
  showerPeaks,
} from "../core/outreach/meteor-showers.ts";
import type { Site } from "../core/site.ts";
import type { ObservingConditions } from "../core/targets/observing-conditions.ts";
import { type EventSpan, minutesAfter, type SkyEvent, utcDate } from "./sky-event.ts";
import { clockTime } from "./words/clock.ts";
import { shortDayWords } from "./words/day-words.ts";
import { compassWords } from "./words/sky.ts";

/** Peaks within a span, each with its night at the site. */
export function showerEvents(
  site: Site,
  conditions: ObservingConditions,
  { from, to }: EventSpan,
): SkyEvent[] {
  return showerPeaks(METEOR_SHOWERS, from, to).map((peak) => {
    const night = nightOn(nightOfInstant(peak.at, site.timeZone), site.timeZone);
    const times = nightTimes(site, night);
    return showerEvent(site, peak, times, showerNight(peak, times, conditions));
  });
}

function showerEvent(
  site: Site,
  { shower, at }: ShowerPeak,
  times: NightTimes,
  night: ShowerNight | null,
): SkyEvent {
  const moonLit = times.moon.illuminatedFraction;
  const unseen =
    times.workingWindows.length === 0
      ? "not here: it does not get dark that night"
      : "not here: the radiant stays down in the dark";
  return {
    key: `shower-${shower.code}-${utcDate(at)}`,
    kind: "meteors",
    at,
    start: night === null ? at : minutesAfter(night.best, -60),
    end: night === null ? minutesAfter(at, 1) : minutesAfter(night.best, 60),
    title: `${shower.name} at their peak`,
    fromHere: night === null ? unseen : sightWords(site, night, moonLit),
    lines:
      night === null
        ? []
        : [
            `Radiant ${Math.round(night.radiantAltitudeDeg)}° in the ${compassWords(night.radiantAzimuthDeg)}, meteors ${shower.speedKmPerSecond} km/s; active ${dayOfYear(shower.activeFrom)} to ${dayOfYear(shower.activeTo)}; zenithal rate ${shower.zhr ?? "that varies"}.`,
          ],
    seen: night !== null,
    notable: (night?.ratePerHour ?? 0) >= METEORS_WORTH_A_LOOK,
    solar: false,
    figures: {
      type: "meteor-shower",
      code: shower.code,
      name: shower.name,
      zhr: shower.zhr,
      populationIndex: shower.populationIndex,
      peakSolarLongitudeDeg: shower.peakLongitudeDeg,
      radiantRaDeg: shower.raDeg,
      radiantDecDeg: shower.decDeg,
      moonIlluminatedFraction: moonLit,
      best:
        night === null
          ? null
          : {
              night: night.night.date,
              at: night.best.toISOString(),
              radiantAltitudeDeg: night.radiantAltitudeDeg,
              radiantAzimuthDeg: night.radiantAzimuthDeg,
              moonAltitudeDeg: night.moonAltitudeDeg,
              limitingMag: night.limitingMag,
              ratePerHour: night.ratePerHour,
            },
    },
  };
}

/** `28 December`, of `12-28`. */
function dayOfYear(monthDay: string): string {
  return DateTime.fromISO(`2024-${monthDay}`, { zone: "utc" }).setLocale("en-GB").toFormat("d LLLL");
}

function sightWords(site: Site, night: ShowerNight, moonLit: number): string {
  const zone = site.timeZone;
  const rate =
    night.ratePerHour === null
      ? "some years none, some many"
      : night.ratePerHour < 1
        ? "under 1 an hour"
        : `at most ${Math.round(night.ratePerHour)} an hour`;
  const moon =
    night.moonAltitudeDeg <= 0
      ? "Moon down"
      : `Moon ${Math.round(night.moonAltitudeDeg)}° up, ${Math.round(moonLit * 100)} % lit`;
  return `${shortDayWords(night.best, zone)} ${clockTime(night.best, zone)}: ${rate}, ${moon}`;
}
