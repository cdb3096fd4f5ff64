/**
 * A body of the solar system through a night: when the Sun is down and it clears the skyline.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { Night, NightTimes } from "../night/night.ts";
import type { Site } from "../site.ts";
import { crossingsIn, type Level, sampleHeights } from "../sky/crossings.ts";
import { type TargetTrack, targetTrack } from "../targets/placer.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { visibleIntervals } from "../targets/visibility.ts";

export type BodyNight = {
  /** Over the skyline and the least altitude with the Sun as low as asked, in order. */
  readonly windows: readonly Interval[];
  /** Where it stands highest in them; `null` without any. */
  readonly best: { readonly at: Date; readonly altitudeDeg: number; readonly azimuthDeg: number } | null;
  readonly track: TargetTrack;
};

const STEP_MS = 5 * 60_000;

/** The whole disc of the Sun below a level horizon. */
export const SUN_DOWN: Level = { kind: "rise-set" };

/** Spans of a night with the Sun below a level; the night itself where it never comes over it. */
export function spansSunBelow(site: Site, night: Night, level: Level): Interval[] {
  const { noon, nextNoon } = night;
  const samples = sampleHeights("Sun", site, noon, nextNoon);
  const spans: Interval[] = [];
  let since = samples.heightAt(noon.getTime(), level) < 0 ? noon : null;
  for (const { at, rising } of crossingsIn(samples, level)) {
    if (rising && since !== null && since < at) spans.push({ start: since, end: at });
    since = rising ? null : at;
  }
  return since === null ? spans : [...spans, { start: since, end: nextNoon }];
}

/**
 * A body through a night.
 *
 * @param leastAltitudeDeg - lower than this it is not looked at, even over a lower skyline
 * @param sunBelow - where the Sun must have sunk to
 */
export function bodyNight(
  site: Site,
  times: NightTimes,
  body: BodyName,
  leastAltitudeDeg: number,
  sunBelow: Level = SUN_DOWN,
): BodyNight {
  const middle = new Date((times.night.noon.getTime() + times.night.nextNoon.getTime()) / 2);
  const track = targetTrack(site, { kind: "body", body }, middle);
  const clearance = { skyline: site.skyline, leastAltitudeDeg };
  const dark = spansSunBelow(site, times.night, sunBelow);
  const windows = visibleIntervals((at) => track(at.getTime()), clearance, dark);
  return { windows, best: highestIn(track, windows), track };
}

/** Where a track stands highest within some spans, to five minutes; ends are looked at too. */
export function highestIn(track: TargetTrack, spans: readonly Interval[]): BodyNight["best"] {
  let best: BodyNight["best"] = null;
  for (const { start, end } of spans) {
    for (let ms = start.getTime(); ; ms = Math.min(ms + STEP_MS, end.getTime())) {
      const { altitudeDeg, azimuthDeg } = track(ms);
      if (best === null || altitudeDeg > best.altitudeDeg)
        best = { at: new Date(ms), altitudeDeg, azimuthDeg };
      if (ms >= end.getTime()) break;
    }
  }
  return best;
}
