/**
 * A body of the solar system through a night: when the Sun is down and it clears the skyline.
 *
 * @packageDocumentation
 */
import { type Interval, subtractIntervals } from "../interval.ts";
import type { Night, NightTimes } from "../night/night.ts";
import type { Site } from "../site.ts";
import { sunAltitudeDeg } from "../sky/bodies.ts";
import { bodyCrossings } from "../sky/crossings.ts";
import { type TargetTrack, targetTrack } from "../targets/placer.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { visibleIntervals } from "../targets/visibility.ts";

export type BodyNight = {
  /** Over the skyline and the least altitude with the whole Sun down, in order. */
  readonly windows: readonly Interval[];
  /** Where it stands highest in them; `null` without any. */
  readonly best: { readonly at: Date; readonly altitudeDeg: number; readonly azimuthDeg: number } | null;
  readonly track: TargetTrack;
};

const STEP_MS = 5 * 60_000;
/** The centre's altitude when the refracted upper limb is on the horizon, near enough to tell day from night. */
const SUN_UP_DEG = -0.83;

/** Spans of a night with the whole disc of the Sun below a level horizon; the night itself where it never rises. */
export function sunlessSpans(site: Site, night: Night): Interval[] {
  const crossings = bodyCrossings("Sun", site, { kind: "rise-set" }, night.noon, night.nextNoon);
  const daylight: Interval[] = [];
  let since = sunAltitudeDeg({ ...site, elevationMetres: 0 }, night.noon) > SUN_UP_DEG ? night.noon : null;
  for (const { at, rising } of crossings) {
    if (!rising && since !== null && since < at) daylight.push({ start: since, end: at });
    since = rising ? at : null;
  }
  if (since !== null) daylight.push({ start: since, end: night.nextNoon });
  return subtractIntervals([{ start: night.noon, end: night.nextNoon }], daylight);
}

/**
 * A body through a night.
 *
 * @param leastAltitudeDeg - lower than this it is not looked at, even over a lower skyline
 */
export function bodyNight(
  site: Site,
  times: NightTimes,
  body: BodyName,
  leastAltitudeDeg: number,
): BodyNight {
  const middle = new Date((times.night.noon.getTime() + times.night.nextNoon.getTime()) / 2);
  const track = targetTrack(site, { kind: "body", body }, middle);
  const clearance = { skyline: site.skyline, leastAltitudeDeg };
  const windows = visibleIntervals((at) => track(at.getTime()), clearance, sunlessSpans(site, times.night));
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
