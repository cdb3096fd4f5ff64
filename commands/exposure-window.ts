/**
 * When a target is exposed, and in what light.
 *
 * @packageDocumentation
 */
import { EXPOSURE_RULES, TURNING_TRAIL_PX } from "../config/exposure-rules.ts";
import { LEAST_ALTITUDE_DEG } from "../config/ranking.ts";
import { type Interval, totalHours } from "../core/interval.ts";
import { fieldTurnRate, longestUnturnedSeconds } from "../core/mount/field-rotation.ts";
import { meridianFlip } from "../core/mount/meridian-flip.ts";
import type { BandResponse } from "../core/rig/band-response.ts";
import { bestSpan } from "../core/rig/best-span.ts";
import type { CameraRig, Filter } from "../core/rig/rig.ts";
import { usualSubSeconds } from "../core/rig/usual-sub.ts";
import { lightAtZenith, lightThrough, type WindowLight } from "../core/rig/window-rates.ts";
import { countingWeight } from "../core/targets/counting-hours.ts";
import { type TargetTrack, targetTrack, upperTransit } from "../core/targets/placer.ts";
import type { SkyObject } from "../core/targets/sky-object.ts";
import { middleOf, usableSpans } from "../core/targets/target-night.ts";
import { visibleIntervals } from "../core/targets/visibility.ts";
import type { ExposureAsked } from "./exposure-asked.ts";
import type { Situation } from "./situation.ts";

/** Weighing hours against each other, the object's own light does not matter. */
const NO_BRIGHTNESS = { continuumMagArcsec2: null, rayleigh: {} } as const;

/** What exposures are worked out for: never a body of the solar system. */
export type ExposureTarget =
  | { readonly kind: "object"; readonly object: SkyObject }
  | { readonly kind: "place"; readonly raDeg: number; readonly decDeg: number };

export type ExposureQuestion = {
  readonly situation: Situation;
  readonly rig: CameraRig;
  readonly filter: Filter;
  /** `null` for the zenith. */
  readonly target: ExposureTarget | null;
  readonly asked: ExposureAsked;
};

/** Where the sums were made: along the target's window, or at the zenith for want of one. */
export type SumsFor = "window" | "zenith" | "no-window";

export type ExposureWindow = {
  readonly sumsFor: SumsFor;
  /** The target's windows, and the part of them that is used. */
  readonly windows: readonly Interval[];
  readonly used: readonly Interval[];
  /** Whether the forecast's clouds cut the windows. */
  readonly cutByCloud: boolean;
  readonly light: WindowLight;
  readonly track: TargetTrack | null;
};

/** When the target is used and in what light. */
export function windowOf(question: ExposureQuestion, bands: readonly BandResponse[]): ExposureWindow {
  const { situation, rig, filter, target, asked } = question;
  const { conditions, times, site } = situation;
  const middle = middleOf(times.night);
  if (target === null) {
    const windows = times.workingWindows;
    const light = lightAtZenith(conditions, middle);
    return { sumsFor: "zenith", windows, used: windows, cutByCloud: false, light, track: null };
  }
  const track = targetTrack(site, target, middle);
  const clearance = { skyline: site.skyline, leastAltitudeDeg: LEAST_ALTITUDE_DEG.imaging };
  const within = (spans: readonly Interval[]) =>
    visibleIntervals((at) => track(at.getTime()), clearance, spans);
  const dark = within(usableSpans(times, target, null));
  const clear = situation.clear === null ? dark : within(usableSpans(times, target, situation.clear));
  const windows = clear.length > 0 ? clear : dark;
  const cutByCloud = totalHours(clear) < totalHours(dark) - 1 / 60;
  const [first] = bands;
  if (windows.length === 0 || first === undefined) {
    const light = lightAtZenith(conditions, middle);
    return { sumsFor: "no-window", windows: [], used: [], cutByCloud: false, light, track };
  }
  const subSeconds =
    asked.subSeconds ?? usualSubSeconds(rig, filter, bands, conditions, middle, EXPOSURE_RULES);
  const work = { rig, band: first, subSeconds };
  const worthAt = (utMs: number) => countingWeight(work, conditions, NO_BRIGHTNESS, track(utMs), utMs).weight;
  const used = asked.hours === null ? windows : bestSpan(windows, asked.hours, worthAt);
  return {
    sumsFor: "window",
    windows,
    used,
    cutByCloud,
    light: lightThrough(conditions, track, used),
    track,
  };
}

/** When the mount must turn over within the time used. */
export function flipIn({ situation, rig }: ExposureQuestion, { track, used }: ExposureWindow): Date | null {
  if (track === null || used.length === 0) return null;
  const { noon, nextNoon } = situation.times.night;
  const transit = upperTransit(track, noon.getTime(), nextNoon.getTime());
  return meridianFlip(rig.mount, transit, rig.flipAfterMinutes, used);
}

/** Nights that the time at hand takes: a flip comes once in each. */
export function nightsOf(asked: ExposureAsked, used: readonly Interval[]): number {
  if (asked.hours === null || used.length === 0) return 1;
  return Math.max(1, Math.ceil(asked.hours / totalHours(used) - 1e-6));
}

/** On an altazimuth mount: the shortest time in which a corner turns too far, over the time used. */
export function turningSeconds(question: ExposureQuestion, { track, used }: ExposureWindow): number | null {
  const { rig, situation } = question;
  if (rig.mount !== "altazimuth" || track === null || used.length === 0) return null;
  const { widthMm, heightMm, pixelUm } = rig.sensor;
  const cornerPx = (Math.hypot(widthMm, heightMm) * 1000) / pixelUm / 2;
  let fastest = 0;
  for (const { start, end } of used) {
    for (let utMs = start.getTime(); utMs <= end.getTime(); utMs += 300_000) {
      const { altitudeDeg, azimuthDeg } = track(utMs);
      const rate = Math.abs(fieldTurnRate(situation.site.latitudeDeg, altitudeDeg, azimuthDeg));
      fastest = Math.max(fastest, rate);
    }
  }
  return longestUnturnedSeconds(fastest, cornerPx, TURNING_TRAIL_PX);
}
