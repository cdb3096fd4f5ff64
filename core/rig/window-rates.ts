/**
 * A pixel's rates through a window: means over the target's track and the night's Moon.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import { nanolamberts } from "../night/sky-brightness.ts";
import { airmass } from "../targets/airmass.ts";
import { transmission, V_BAND_NM } from "../targets/extinction.ts";
import { lightSteps } from "../targets/light-steps.ts";
import { extinctionAt, type ObservingConditions, skyLight } from "../targets/observing-conditions.ts";
import type { TargetTrack } from "../targets/placer.ts";
import type { SurfaceBrightness } from "../targets/sky-object.ts";
import type { BandResponse, ChannelResponse } from "./band-response.ts";
import { darkElectronsPerSecond, glowElectrons, moonElectrons, signalElectrons } from "./electrons.ts";
import type { CameraRig } from "./rig.ts";
import type { DyeRates } from "./signal-to-noise.ts";

/** The light at one instant, or at the zenith of a moonless night. */
type Moment = {
  /** Share of the window's time. */
  readonly weight: number;
  readonly airmasses: number;
  readonly glow: number;
  readonly twilight: number;
  readonly moonAt: (wavelengthNm: number) => number;
  readonly airCelsius: number;
};

export type WindowLight = {
  readonly moments: readonly Moment[];
  readonly conditions: ObservingConditions;
};

/** The light along a target's track through windows, in steps of five minutes. */
export function lightThrough(
  conditions: ObservingConditions,
  track: TargetTrack,
  windows: readonly Interval[],
): WindowLight {
  const steps = lightSteps(windows, conditions);
  const hours = steps.reduce((sum, step) => sum + step.hours, 0);
  const moments = steps.map(({ utMs, hours: stepHours }) => {
    const place = track(utMs);
    const { glow, twilight, moonAt } = skyLight(conditions, place, utMs);
    return {
      weight: stepHours / hours,
      airmasses: airmass(place.altitudeDeg),
      glow,
      twilight,
      moonAt,
      airCelsius: conditions.airCelsiusAt(utMs),
    };
  });
  return { moments, conditions };
}

/** The light at the zenith without Moon or twilight: what stands for a target that is not up. */
export function lightAtZenith(conditions: ObservingConditions, at: Date): WindowLight {
  const moment: Moment = {
    weight: 1,
    airmasses: 1,
    glow: nanolamberts(conditions.zenithMagArcsec2),
    twilight: 0,
    moonAt: () => 0,
    airCelsius: conditions.airCelsiusAt(at.getTime()),
  };
  return { moments: [moment], conditions };
}

function mean(light: WindowLight, of: (moment: Moment) => number): number {
  return light.moments.reduce((sum, moment) => sum + moment.weight * of(moment), 0);
}

/** Mean brightness of the sky, Moon and twilight included, nanolamberts in V. */
export function meanSkyNanolamberts(light: WindowLight): number {
  return mean(light, (moment) => moment.glow + moment.twilight + moment.moonAt(V_BAND_NM));
}

/** Mean air mass. */
export function meanAirmass(light: WindowLight): number {
  return mean(light, (moment) => moment.airmasses);
}

/** Mean share of an object's light that arrives. */
function meanTransmission(light: WindowLight, wavelengthNm: number): number {
  const extinction = extinctionAt(light.conditions, wavelengthNm);
  return mean(light, (moment) => transmission(extinction, moment.airmasses));
}

/** A dye's rates, and what of them is not the member's own measurement. */
export type ChannelRates = DyeRates & {
  readonly channel: ChannelResponse;
  /** Whether the object's brightness is known; its `signal` is 0 otherwise. */
  readonly signalKnown: boolean;
};

export type BandRates = {
  readonly band: BandResponse;
  readonly leading: ChannelRates;
  readonly channels: readonly ChannelRates[];
};

function channelRates(
  rig: CameraRig,
  band: BandResponse,
  channel: ChannelResponse,
  light: WindowLight,
  brightness: SurfaceBrightness,
): ChannelRates {
  const aloft = signalElectrons(channel, band.line, brightness);
  return {
    channel,
    pixelShare: channel.pixelShare,
    signalKnown: aloft !== null,
    signal: (aloft ?? 0) * meanTransmission(light, channel.wavelengthNm),
    glow: mean(light, (moment) => glowElectrons(channel, moment.glow, moment.twilight)),
    moon: mean(light, (moment) => moonElectrons(channel, moment.moonAt)),
    dark: mean(light, (moment) => darkElectronsPerSecond(rig, moment.airCelsius)),
    readNoiseElectrons: rig.mode.readNoiseElectrons,
  };
}

/** Mean rates of every dye behind one pass band. */
export function bandRates(
  rig: CameraRig,
  band: BandResponse,
  light: WindowLight,
  brightness: SurfaceBrightness,
): BandRates {
  const channels = band.channels.map((channel) => channelRates(rig, band, channel, light, brightness));
  return { band, leading: channelRates(rig, band, band.leading, light, brightness), channels };
}

/** Mean temperature of the air, °C. */
export function meanAirCelsius(light: WindowLight): number {
  return mean(light, (moment) => moment.airCelsius);
}
