/**
 * One target through one night: when it can be used, and what those hours are worth.
 *
 * @packageDocumentation
 */
import { type Interval, intersectIntervals, totalHours } from "../interval.ts";
import { meridianFlip } from "../mount/meridian-flip.ts";
import type { Night, NightTimes } from "../night/night.ts";
import { nanolamberts } from "../night/sky-brightness.ts";
import type { Mount } from "../rig/rig.ts";
import { airmass } from "./airmass.ts";
import { type BandWork, type CountedHours, countedHours, leastCounted } from "./counting-hours.ts";
import { transmission, V_BAND_NM } from "./extinction.ts";
import { lightSteps } from "./light-steps.ts";
import { extinctionAt, type ObservingConditions, skyLight } from "./observing-conditions.ts";
import { type TargetTrack, targetTrack, upperTransit } from "./placer.ts";
import type { SurfaceBrightness, Target } from "./sky-object.ts";
import { type Clearance, visibleIntervals } from "./visibility.ts";

export type TargetNight = {
  readonly track: TargetTrack;
  /** Dark, clear of the skyline, and clear of cloud where a forecast is at hand. */
  readonly windows: readonly Interval[];
  readonly counted: CountedHours;
  /** The hours through each pass band, in the filter's order; empty for the eye. */
  readonly bands: readonly { readonly name: string; readonly counted: CountedHours }[];
  readonly transit: { readonly at: Date; readonly altitudeDeg: number } | null;
  /** When a german mount must turn over, if inside a window. */
  readonly meridianFlip: Date | null;
  /** Highest within the windows; `null` without one. */
  readonly peak: { readonly at: Date; readonly altitudeDeg: number; readonly azimuthDeg: number } | null;
};

/** Who looks: cameras behind pass bands, or the eye. */
export type Looking =
  | { readonly kind: "camera"; readonly works: readonly BandWork[] }
  | { readonly kind: "eye" };

export type TargetNightQuestion = {
  readonly conditions: ObservingConditions;
  readonly times: NightTimes;
  readonly target: Target;
  readonly brightness: SurfaceBrightness;
  readonly looking: Looking;
  /** When it is dark enough (and clear): what the windows are cut from. */
  readonly spans: readonly Interval[];
  readonly clearance: Clearance;
  readonly mount: Mount;
  readonly flipAfterMinutes: number;
};

/** The middle of a night, around which a track is followed. */
export function middleOf(night: Night): Date {
  return new Date((night.noon.getTime() + night.nextNoon.getTime()) / 2);
}

/**
 * When bright bodies may be used: the Sun 6° down, in twilight too.
 *
 * @returns the whole span between civil dusk and dawn, or the working windows where there is neither
 */
function civilSpans(times: NightTimes): readonly Interval[] {
  const { civilDusk, civilDawn, workingWindows } = times;
  if (civilDusk === null || civilDawn === null) return workingWindows;
  return [{ start: civilDusk, end: civilDawn }];
}

/** Follows a target through the night and adds up its hours. */
export function targetNight(question: TargetNightQuestion): TargetNight {
  const { conditions, times, target, looking, clearance } = question;
  const track = targetTrack(conditions.site, target, middleOf(times.night));
  const windows = visibleIntervals((at) => track(at.getTime()), clearance, question.spans);
  const bands =
    looking.kind === "camera"
      ? looking.works.map((work) => ({
          name: work.band.name,
          counted: countedHours(work, conditions, question.brightness, track, windows),
        }))
      : [];
  const least = leastCounted(bands.map(({ counted }) => counted));
  const transit = transitWithin(track, times.night);
  return {
    track,
    windows,
    counted: least ?? eyeHours(conditions, target, track, windows),
    bands,
    transit,
    meridianFlip: meridianFlip(question.mount, transit?.at ?? null, question.flipAfterMinutes, windows),
    peak: peakWithin(track, windows),
  };
}

/**
 * Hours that count for the eye: light that arrives over light at the zenith, times the dark sky
 * over the sky beside the target; the Sun's family outshines the sky, so only the air matters to it.
 */
function eyeHours(
  conditions: ObservingConditions,
  target: Target,
  track: TargetTrack,
  windows: readonly Interval[],
): CountedHours {
  const extinction = extinctionAt(conditions, V_BAND_NM);
  const overhead = transmission(extinction, 1);
  const dark = nanolamberts(conditions.zenithMagArcsec2);
  let countingHours = 0;
  let withoutMoon = 0;
  for (const { utMs, hours } of lightSteps(windows, conditions)) {
    const place = track(utMs);
    const gain = (hours * transmission(extinction, airmass(place.altitudeDeg))) / overhead;
    if (target.kind === "body") {
      countingHours += gain;
      withoutMoon += gain;
      continue;
    }
    const { glow, twilight, moonAt } = skyLight(conditions, place, utMs);
    countingHours += (gain * dark) / (glow + twilight + moonAt(V_BAND_NM));
    withoutMoon += (gain * dark) / (glow + twilight);
  }
  return {
    usableHours: totalHours(windows),
    countingHours,
    moonCost: countingHours > 0 ? Math.max(1, withoutMoon / countingHours) : null,
  };
}

function transitWithin(track: TargetTrack, night: Night): TargetNight["transit"] {
  const at = upperTransit(track, night.noon.getTime(), night.nextNoon.getTime());
  return at === null ? null : { at, altitudeDeg: track(at.getTime()).altitudeDeg };
}

function peakWithin(track: TargetTrack, windows: readonly Interval[]): TargetNight["peak"] {
  let peak: { at: Date; altitudeDeg: number; azimuthDeg: number } | null = null;
  const look = (ms: number) => {
    const { altitudeDeg, azimuthDeg } = track(ms);
    if (peak === null || altitudeDeg > peak.altitudeDeg) {
      peak = { at: new Date(ms), altitudeDeg, azimuthDeg };
    }
  };
  for (const { start, end } of windows) {
    look(start.getTime());
    look(end.getTime());
    const transit = upperTransit(track, start.getTime(), end.getTime());
    if (transit !== null) look(transit.getTime());
  }
  return peak;
}

/** The spans in which a kind of target may be used, cut to clear sky where that is known. */
export function usableSpans(
  times: NightTimes,
  target: Target,
  clear: readonly Interval[] | null,
): readonly Interval[] {
  const dark = target.kind === "body" ? civilSpans(times) : times.workingWindows;
  return clear === null ? dark : intersectIntervals(dark, clear);
}
