/**
 * Meteor showers: when they peak, and how many meteors an hour a site may hope for.
 *
 * @packageDocumentation
 */

import type { Night, NightTimes } from "../night/night.ts";
import { magArcsec2, nakedEyeLimit } from "../night/sky-brightness.ts";
import { RAD_PER_DEG, turnDeg } from "../sky/angles.ts";
import { V_BAND_NM } from "../targets/extinction.ts";
import { type ObservingConditions, skyLight } from "../targets/observing-conditions.ts";
import { fixedTrack } from "../targets/placer.ts";
import { solarLongitudePassages } from "./seasons.ts";

export type MeteorShower = {
  /** The International Meteor Organization's three letters. */
  readonly code: string;
  readonly name: string;
  /** The days between which it is active, `MM-DD`; may run over the year's end. */
  readonly activeFrom: string;
  readonly activeTo: string;
  /** The Sun's longitude at the maximum, equinox of 2000, degrees. */
  readonly peakLongitudeDeg: number;
  /** The radiant at the maximum, J2000, degrees. */
  readonly raDeg: number;
  readonly decDeg: number;
  /** How far it moves a day, degrees of right ascension and of declination. */
  readonly driftRaDeg: number;
  readonly driftDecDeg: number;
  readonly speedKmPerSecond: number;
  /** Population index: how many times more meteors there are one magnitude fainter. */
  readonly populationIndex: number;
  /** Zenithal hourly rate; `null` where it varies from none to a storm. */
  readonly zhr: number | null;
};

export type ShowerPeak = { readonly shower: MeteorShower; readonly at: Date };

/** A shower over a site in the night of its peak. */
export type ShowerNight = {
  readonly night: Night;
  /** When the most meteors are to be seen, in the darkness there is. */
  readonly best: Date;
  readonly radiantAltitudeDeg: number;
  readonly radiantAzimuthDeg: number;
  readonly moonAltitudeDeg: number;
  /** Faintest star at the zenith for the bare eye, Moon and twilight in. */
  readonly limitingMag: number;
  /** At the peak's own rate, so at most; `null` where the shower varies. */
  readonly ratePerHour: number | null;
};

const STEP_MS = 15 * 60_000;
const ZENITH = { altitudeDeg: 90, azimuthDeg: 0 };

/** Peaks within a span, in order. */
export function showerPeaks(showers: readonly MeteorShower[], from: Date, to: Date): ShowerPeak[] {
  return showers
    .flatMap((shower) =>
      solarLongitudePassages(shower.peakLongitudeDeg, from, to).map((at) => ({ shower, at })),
    )
    .sort((one, other) => one.at.getTime() - other.at.getTime());
}

/**
 * Meteors an hour that one person sees: ZHR · sin h · r^(lm − 6.5).
 *
 * @param radiantAltitudeDeg - none are seen with the radiant down
 * @param limitingMag - of the bare eye
 *
 * @remarks
 * For half the sky clear of cloud and a practised eye. Source: the International Meteor
 * Organization's definition of the zenithal hourly rate, turned round.
 */
export function meteorsPerHour(
  zhr: number,
  populationIndex: number,
  radiantAltitudeDeg: number,
  limitingMag: number,
): number {
  if (radiantAltitudeDeg <= 0) return 0;
  return zhr * Math.sin(radiantAltitudeDeg * RAD_PER_DEG) * populationIndex ** (limitingMag - 6.5);
}

/**
 * A shower in the night of its peak.
 *
 * @param times - of the night that holds the peak
 * @returns `null` when the radiant is never up in the darkness there is
 */
export function showerNight(
  peak: ShowerPeak,
  times: NightTimes,
  conditions: ObservingConditions,
): ShowerNight | null {
  const { shower } = peak;
  const middle = new Date((times.night.noon.getTime() + times.night.nextNoon.getTime()) / 2);
  const days = (middle.getTime() - peak.at.getTime()) / 86_400_000;
  const radiant = {
    raDeg: turnDeg(shower.raDeg + days * shower.driftRaDeg),
    decDeg: shower.decDeg + days * shower.driftDecDeg,
  };
  const track = fixedTrack(conditions.site, radiant, middle);
  let best: ShowerNight | null = null;
  let most = 0;
  for (const { start, end } of times.workingWindows) {
    for (let ms = start.getTime(); ms <= end.getTime(); ms += STEP_MS) {
      const { altitudeDeg, azimuthDeg } = track(ms);
      if (altitudeDeg <= 0) continue;
      const { limitingMag, moonAltitudeDeg } = zenithLimit(conditions, ms);
      // Of a shower that varies, the best time is all the same.
      const rate = meteorsPerHour(shower.zhr ?? 1, shower.populationIndex, altitudeDeg, limitingMag);
      if (rate <= most) continue;
      most = rate;
      best = {
        night: times.night,
        best: new Date(ms),
        radiantAltitudeDeg: altitudeDeg,
        radiantAzimuthDeg: azimuthDeg,
        moonAltitudeDeg,
        limitingMag,
        ratePerHour: shower.zhr === null ? null : rate,
      };
    }
  }
  return best;
}

function zenithLimit(conditions: ObservingConditions, utMs: number) {
  const { glow, twilight, moonAt, light } = skyLight(conditions, ZENITH, utMs);
  const brightness = glow + twilight + moonAt(V_BAND_NM);
  return { limitingMag: nakedEyeLimit(magArcsec2(brightness)), moonAltitudeDeg: light.moonAltitudeDeg };
}
