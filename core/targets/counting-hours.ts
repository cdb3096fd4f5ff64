/**
 * Hours that count: clock hours at a camera, weighed by what they are worth.
 *
 * An hour counts as much as so many hours at the zenith without Moon: extinction
 * takes signal, glow and Moon add noise.
 *
 * @packageDocumentation
 */
import { type Interval, totalHours } from "../interval.ts";
import { nanolamberts } from "../night/sky-brightness.ts";
import type { BandResponse, ChannelResponse } from "../rig/band-response.ts";
import {
  darkElectronsPerSecond,
  glowElectrons,
  moonElectrons,
  signalElectrons,
  variancePerSecond,
} from "../rig/electrons.ts";
import type { CameraRig } from "../rig/rig.ts";
import { airmass } from "./airmass.ts";
import { transmission } from "./extinction.ts";
import { lightSteps } from "./light-steps.ts";
import { extinctionAt, type ObservingConditions, skyLight } from "./observing-conditions.ts";
import type { TargetTrack } from "./placer.ts";
import type { SurfaceBrightness } from "./sky-object.ts";
import type { Horizontal } from "./visibility.ts";

/** A camera behind one pass band, exposing subs of one length. */
export type BandWork = {
  readonly rig: CameraRig;
  readonly band: BandResponse;
  readonly subSeconds: number;
};

/** What one instant is worth. */
export type CountingWeight = {
  /** Of an hour at the zenith without Moon; may pass 1 by a little for a site's own bright zenith. */
  readonly weight: number;
  /** The same were there no Moon. */
  readonly weightWithoutMoon: number;
};

/** Electrons a second of the object's surface above the air; 0 when nothing is known of it. */
function signalOf(channel: ChannelResponse, band: BandResponse, brightness: SurfaceBrightness): number {
  return signalElectrons(channel, band.line, brightness) ?? 0;
}

/** Variance a second at the zenith without Moon or twilight: the measure of every hour. */
export function zenithVariance(
  work: BandWork,
  conditions: ObservingConditions,
  brightness: SurfaceBrightness,
  airCelsius: number,
  channel: ChannelResponse = work.band.leading,
): number {
  const { rig, band, subSeconds } = work;
  const overhead = transmission(extinctionAt(conditions, channel.wavelengthNm), 1);
  return variancePerSecond({
    signal: signalOf(channel, band, brightness) * overhead,
    glow: glowElectrons(channel, nanolamberts(conditions.zenithMagArcsec2), 0),
    moon: 0,
    dark: darkElectronsPerSecond(rig, airCelsius),
    readNoiseElectrons: rig.mode.readNoiseElectrons,
    subSeconds,
  });
}

/**
 * What an instant is worth for a direction.
 *
 * w = [T(X)/T(1)]² · N(zenith, no Moon)/N, with N the variance a second.
 *
 * @param place - airless; at or below the horizon nothing counts
 */
export function countingWeight(
  work: BandWork,
  conditions: ObservingConditions,
  brightness: SurfaceBrightness,
  place: Horizontal,
  utMs: number,
): CountingWeight {
  if (place.altitudeDeg <= 0) return { weight: 0, weightWithoutMoon: 0 };
  const { rig, band, subSeconds } = work;
  const channel = band.leading;
  const airCelsius = conditions.airCelsiusAt(utMs);
  const extinction = extinctionAt(conditions, channel.wavelengthNm);
  const arriving = transmission(extinction, airmass(place.altitudeDeg));
  const light = skyLight(conditions, place, utMs);
  const budget = {
    signal: signalOf(channel, band, brightness) * arriving,
    glow: glowElectrons(channel, light.glow, light.twilight),
    moon: moonElectrons(channel, light.moonAt),
    dark: darkElectronsPerSecond(rig, airCelsius),
    readNoiseElectrons: rig.mode.readNoiseElectrons,
    subSeconds,
  };
  const gain = (arriving / transmission(extinction, 1)) ** 2;
  const measure = gain * zenithVariance(work, conditions, brightness, airCelsius);
  return {
    weight: measure / variancePerSecond(budget),
    weightWithoutMoon: measure / variancePerSecond({ ...budget, moon: 0 }),
  };
}

export type CountedHours = {
  readonly usableHours: number;
  readonly countingHours: number;
  /** Counting hours without Moon over those with it, at least 1; `null` without a window. */
  readonly moonCost: number | null;
};

/**
 * Counting hours of windows through one pass band.
 *
 * @param windows - when the target is used
 */
export function countedHours(
  work: BandWork,
  conditions: ObservingConditions,
  brightness: SurfaceBrightness,
  track: TargetTrack,
  windows: readonly Interval[],
): CountedHours {
  let countingHours = 0;
  let withoutMoon = 0;
  for (const { utMs, hours } of lightSteps(windows, conditions)) {
    const worth = countingWeight(work, conditions, brightness, track(utMs), utMs);
    countingHours += worth.weight * hours;
    withoutMoon += worth.weightWithoutMoon * hours;
  }
  return {
    usableHours: totalHours(windows),
    countingHours,
    moonCost: countingHours > 0 ? Math.max(1, withoutMoon / countingHours) : null,
  };
}

/** Of several pass bands, the one to which the night gives least: it stands for the filter. */
export function leastCounted(counted: readonly CountedHours[]): CountedHours | null {
  const [first, ...others] = counted;
  if (first === undefined) return null;
  const least = others.reduce((low, other) => (other.countingHours < low.countingHours ? other : low), first);
  const costs = counted.map(({ moonCost }) => moonCost).filter((cost) => cost !== null);
  return { ...least, moonCost: costs.length > 0 ? Math.max(...costs) : null };
}
