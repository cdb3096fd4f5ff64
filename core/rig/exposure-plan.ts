/**
 * An exposure plan: which sub, how many, what limits the picture.
 *
 * @packageDocumentation
 */

import type { ExposureRules } from "./exposure-rules.ts";
import { apertureMm, scaleArcsecPerPixel } from "./optics.ts";
import type { CameraRig } from "./rig.ts";
import { largestNoise, type NoiseShares, noiseShares, type PixelRates } from "./signal-to-noise.ts";
import { peakPixelShare, saturationSeconds, starBlurArcsec, starElectrons } from "./star-peak.ts";
import {
  cycleSeconds,
  recommendedSub,
  type SubCap,
  shortestSubSeconds,
  subsThatFit,
  trackingCapSeconds,
} from "./sub-length.ts";
import type { BandRates } from "./window-rates.ts";

export type LimitedBy = "read-noise" | "dark" | "sky" | "saturation" | "tracking" | "time";

export type ExposureQuestion = {
  readonly rig: CameraRig;
  /** One entry a pass band, at least one. */
  readonly bands: readonly [BandRates, ...BandRates[]];
  /** Clock time at hand; 0 when the target is not up. */
  readonly windowSeconds: number;
  readonly flips: number;
  readonly airmasses: number;
  readonly seeingArcsec: number;
  /** V magnitude of the star watched, dimmed by the air already. */
  readonly starMagnitude: number;
  /** Whether the asker named that star: only then does it shorten the sub. */
  readonly starNamed: boolean;
  readonly decDeg: number;
  /** Longest sub before the field's turning shows, seconds; `null` on a mount that does not turn it. */
  readonly turningSeconds: number | null;
  /** The asker's own sub, or `null` to have one recommended. */
  readonly subSeconds: number | null;
  readonly rules: ExposureRules;
};

/** What one pass band asks for. */
export type BandPlan = {
  readonly rates: BandRates;
  /** For sky, Moon and dark current together, and were there no dark current. */
  readonly shortestSubSeconds: number;
  readonly shortestBySkySeconds: number;
  /** Until the watched star saturates. */
  readonly longestSubSeconds: number;
  readonly shares: NoiseShares;
};

export type ExposurePlan = {
  /** The band whose figures stand for the filter: the one that asks for the longest sub. */
  readonly leading: BandPlan;
  readonly bands: readonly BandPlan[];
  readonly subSeconds: number;
  readonly subCount: number;
  readonly totalSeconds: number;
  /** Clock time, downloads, dithering and flips included. */
  readonly elapsedSeconds: number;
  readonly trackingCapSeconds: number;
  readonly cap: SubCap | null;
  readonly limitedBy: LimitedBy;
};

/** Sky, Moon and dark current of a pixel. */
export function backgroundElectrons(rates: PixelRates): number {
  return rates.glow + rates.moon + rates.dark;
}

function longestSub(question: ExposureQuestion, rates: BandRates): number {
  const { rig } = question;
  const pixelArcsec = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
  const { channel } = rates.leading;
  const blur = starBlurArcsec({
    seeingArcsec: question.seeingArcsec,
    airmasses: question.airmasses,
    wavelengthNm: channel.wavelengthNm,
    apertureMm: apertureMm(rig),
    guidingArcsec: rig.guidingArcsec,
  });
  const peak =
    starElectrons(channel, question.starMagnitude, pixelArcsec) * peakPixelShare(pixelArcsec, blur);
  const fill = question.rules.saturationShare * rig.mode.saturationElectrons;
  return saturationSeconds(fill, peak, backgroundElectrons(rates.leading));
}

/** The clock time in which at least one sub must fit; no cap when there is no window. */
function timeCap(question: ExposureQuestion): Partial<Record<SubCap, number>> {
  const { windowSeconds, flips, rules } = question;
  if (windowSeconds <= 0) return {};
  const overhead = rules.startUpSeconds + flips * rules.flipSeconds + cycleSeconds(0, rules);
  return { time: Math.max(0, windowSeconds - overhead) };
}

/**
 * Plans the subs of one filter.
 *
 * @remarks
 * With several pass bands the band with the least background asks for the longest sub, and leads;
 * the others are then exposed longer than they need.
 */
export function exposurePlan(question: ExposureQuestion): ExposurePlan {
  const { rig, rules } = question;
  const shortest = (rates: BandRates, background: number) =>
    shortestSubSeconds(rates.leading.readNoiseElectrons, background, rules.readNoiseShare);
  const asked = (rates: BandRates) => shortest(rates, backgroundElectrons(rates.leading));
  const [first, ...others] = question.bands;
  const leadingRates = others.reduce((most, rates) => (asked(rates) > asked(most) ? rates : most), first);

  const tracking = Math.min(
    trackingCapSeconds(rig, rules, question.decDeg),
    question.turningSeconds ?? Number.POSITIVE_INFINITY,
  );
  const choice = recommendedSub(
    asked(leadingRates),
    {
      tracking,
      ...(question.starNamed
        ? { saturation: Math.min(...question.bands.map((rates) => longestSub(question, rates))) }
        : {}),
      ...timeCap(question),
    },
    rules,
  );
  const subSeconds = question.subSeconds ?? choice.subSeconds;
  const cap = question.subSeconds === null ? choice.cap : null;
  const planOf = (rates: BandRates): BandPlan => ({
    rates,
    shortestSubSeconds: asked(rates),
    shortestBySkySeconds: shortest(rates, rates.leading.glow + rates.leading.moon),
    longestSubSeconds: longestSub(question, rates),
    shares: noiseShares(rates.leading, subSeconds),
  });
  const bands = question.bands.map(planOf);
  const leading = bands.find(({ rates }) => rates === leadingRates) ?? planOf(leadingRates);
  const subCount =
    subSeconds > 0 ? subsThatFit(question.windowSeconds, subSeconds, question.flips, rules) : 0;
  return {
    leading,
    bands,
    subSeconds,
    subCount,
    totalSeconds: subCount * subSeconds,
    elapsedSeconds:
      subCount === 0
        ? 0
        : rules.startUpSeconds +
          question.flips * rules.flipSeconds +
          subCount * cycleSeconds(subSeconds, rules),
    trackingCapSeconds: tracking,
    cap,
    limitedBy: subCount === 0 ? "time" : (cap ?? largestNoise(leading.shares)),
  };
}
