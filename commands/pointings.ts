/**
 * What an answer invites people to look at, as the rules of caution ask.
 *
 * @packageDocumentation
 */
import { type Pointing, SUN_GUARD_DEG } from "../core/cautions.ts";
import type { NightTimes } from "../core/night/night.ts";
import type { Site } from "../core/site.ts";
import { angleBetweenDeg } from "../core/sky/angles.ts";
import { bodyCrossings } from "../core/sky/crossings.ts";
import { MS_PER_DAY, MS_PER_MINUTE } from "../core/sky/time.ts";
import { horizonDirection } from "../core/targets/observing-conditions.ts";
import { targetTrack } from "../core/targets/placer.ts";
import type { Target } from "../core/targets/sky-object.ts";

/** Minutes from an instant to the Sun's next rise; `null` when it does not rise within a day. */
export function minutesToSunrise(site: Site, at: Date): number | null {
  const dayOn = new Date(at.getTime() + MS_PER_DAY);
  const rise = bodyCrossings("Sun", site, { kind: "rise-set" }, at, dayOn).find(({ rising }) => rising);
  return rise === undefined ? null : (rise.at.getTime() - at.getTime()) / MS_PER_MINUTE;
}

/** The direction of a target at an instant, against the Sun's. */
export function pointingAt(site: Site, target: Target, at: Date): Pointing {
  const direction = horizonDirection(targetTrack(site, target, at)(at.getTime()));
  const sun = targetTrack(site, { kind: "body", body: "Sun" }, at)(at.getTime());
  const sunSeparationDeg = angleBetweenDeg(direction, horizonDirection(sun));
  return {
    sunSeparationDeg,
    sunAltitudeDeg: sun.altitudeDeg,
    // Far from the Sun its rise does not matter, and need not be looked for.
    minutesToSunrise: sunSeparationDeg > SUN_GUARD_DEG ? null : minutesToSunrise(site, at),
  };
}

/** Minutes from the end of a session to the night's sunrise; `null` without either. */
export function endToSunriseMinutes(times: NightTimes, end: Date | null): number | null {
  if (end === null || times.sunrise === null) return null;
  return (times.sunrise.getTime() - end.getTime()) / MS_PER_MINUTE;
}
