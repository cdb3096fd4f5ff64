/**
 * Every number behind an exposure's words.
 *
 * @packageDocumentation
 */
import { fiveHundredRuleSeconds, michaudSeconds } from "../core/rig/trail-limits.ts";
import { type Figure, isoOrNull } from "./answer.ts";
import type { Beside } from "./exposure-beside.ts";
import type { ExposureSum } from "./exposure-sum.ts";
import { objectFigures, spanFigures } from "./object-figures.ts";

function sumFigures(sum: ExposureSum): { readonly [name: string]: Figure } {
  const { plan, question, signalToNoise } = sum;
  const { leading } = plan.leading.rates;
  return {
    skyMagArcsec2: sum.skyMagArcsec2,
    skyElectronsPerPixelPerSecond: leading.glow + leading.moon,
    moonElectronsPerPixelPerSecond: leading.moon,
    darkElectronsPerPixelPerSecond: leading.dark,
    objectElectronsPerPixelPerSecond: leading.signalKnown ? leading.signal : null,
    readNoiseElectrons: leading.readNoiseElectrons,
    shortestSubSeconds: finiteOrNull(plan.leading.shortestSubSeconds),
    shortestBySkySeconds: finiteOrNull(plan.leading.shortestBySkySeconds),
    longestSubSeconds: Math.min(...plan.bands.map((band) => band.longestSubSeconds)),
    subSeconds: plan.subSeconds,
    subCount: plan.subCount,
    totalSeconds: plan.totalSeconds,
    elapsedSeconds: plan.elapsedSeconds,
    limitedBy: plan.limitedBy,
    noiseShares: { ...plan.leading.shares },
    channel: leading.channel.channel,
    pixelShare: leading.pixelShare,
    saturationElectrons: question.rig.mode.saturationElectrons,
    setting: question.rig.mode.setting,
    sensorCelsius: sum.sensorCelsius,
    airmass: sum.airmasses,
    moonCost: sum.moonCost,
    signalToNoise:
      signalToNoise === null
        ? null
        : {
            perPixel: signalToNoise.perPixel,
            perPatch: signalToNoise.perPatch,
            hoursToWanted: finiteOrNull(signalToNoise.hoursToWanted),
          },
    storageBytes: sum.storageBytes,
  };
}

/** The figures of the answer. */
export function exposureFigures(
  sum: ExposureSum,
  beside: Beside,
  assumptions: readonly string[],
): { readonly [name: string]: Figure } {
  const { situation, target, asked, rig, filter } = sum.question;
  const { widthMm, heightMm, pixelUm } = rig.sensor;
  return {
    object: target === null ? null : objectFigures(target, situation.site, situation.times.night.noon),
    night: situation.times.night.date,
    rig: rig.name,
    filter: filter.name,
    windows: spanFigures(sum.windows),
    used: spanFigures(sum.used),
    meridianFlip: isoOrNull(sum.flipAt),
    ...sumFigures(sum),
    readNoiseShare: asked.share,
    starMagnitude: sum.starMagnitude,
    bands: sum.plan.bands.map(({ rates, shortestSubSeconds, longestSubSeconds }, index) => ({
      name: rates.band.name,
      channels: rates.channels.map(({ channel }) => channel.channel),
      skyElectronsPerPixelPerSecond: rates.leading.glow + rates.leading.moon,
      shortestSubSeconds: finiteOrNull(shortestSubSeconds),
      longestSubSeconds,
      moonCost: sum.moonCosts[index] ?? null,
    })),
    helps: sum.helps.map((help) => ({ ...help })),
    trailLimits: {
      fiveHundredRuleSeconds: fiveHundredRuleSeconds({
        ...rig,
        sensorDiagonalMm: Math.hypot(widthMm, heightMm),
      }),
      michaudSeconds: michaudSeconds({ ...rig, pixelUm }, 0),
    },
    split: beside.split.map((each) => ({ filter: each.question.filter.name, ...sumFigures(each) })),
    otherRig:
      beside.otherRig === null
        ? null
        : { hourIsWorth: beside.otherRig.rate / sum.rate, ...sumFigures(beside.otherRig) },
    otherSite:
      beside.otherSite === null
        ? null
        : { hourIsWorth: beside.otherSite.rate / sum.rate, ...sumFigures(beside.otherSite) },
    assumptions: [...assumptions],
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
