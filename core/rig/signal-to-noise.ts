/**
 * Signal against noise, of a pixel and of a patch of sky.
 *
 * @packageDocumentation
 */
import { variancePerSecond } from "./electrons.ts";

/** What one pixel gathers in a second through one dye, and the noise of reading it. */
export type PixelRates = {
  /** Of the object, the air's loss taken off. */
  readonly signal: number;
  readonly glow: number;
  readonly moon: number;
  readonly dark: number;
  readonly readNoiseElectrons: number;
};

/** Subs of one length. */
export type Subs = { readonly subSeconds: number; readonly count: number };

/**
 * Signal-to-noise of a pixel in a stack: S·n·t/√((S + B + D)·n·t + n·R²).
 *
 * @returns 0 without subs
 *
 * Source: the CCD equation, W. J. Merline & S. B. Howell 1995, Experimental Astronomy 6, 163,
 * with the background known well and the converter's steps fine.
 */
export function pixelSignalToNoise(rates: PixelRates, subs: Subs): number {
  const seconds = subs.subSeconds * subs.count;
  if (seconds <= 0) return 0;
  return rates.signal * Math.sqrt(seconds / variancePerSecond({ ...rates, subSeconds: subs.subSeconds }));
}

/** Pixels of one dye: their rates, and their share of all pixels. */
export type DyeRates = PixelRates & { readonly pixelShare: number };

/**
 * What a second adds to the square of a patch's signal-to-noise: pixels × S²/N, summed over dyes.
 *
 * Two rigs compare by it: the ratio is that of the times they need.
 */
export function patchRate(
  dyes: readonly DyeRates[],
  patchArcsec: number,
  pixelArcsec: number,
  subSeconds: number,
): number {
  const pixels = (patchArcsec / pixelArcsec) ** 2;
  return dyes.reduce(
    (sum, dye) =>
      sum + (pixels * dye.pixelShare * dye.signal ** 2) / variancePerSecond({ ...dye, subSeconds }),
    0,
  );
}

/** Signal-to-noise of a square patch after so many subs. */
export function patchSignalToNoise(
  dyes: readonly DyeRates[],
  patchArcsec: number,
  pixelArcsec: number,
  subs: Subs,
): number {
  const rate = patchRate(dyes, patchArcsec, pixelArcsec, subs.subSeconds);
  return Math.sqrt(rate * subs.subSeconds * subs.count);
}

/**
 * Hours of exposure to a wanted signal-to-noise of a patch.
 *
 * @returns infinite where there is no signal
 */
export function hoursToSignalToNoise(
  dyes: readonly DyeRates[],
  patchArcsec: number,
  pixelArcsec: number,
  subSeconds: number,
  wanted: number,
): number {
  return wanted ** 2 / patchRate(dyes, patchArcsec, pixelArcsec, subSeconds) / 3600;
}

/** What the variance of a pixel is made of, as shares of the whole. */
export type NoiseShares = Readonly<Record<"signal" | "sky" | "dark" | "read-noise", number>>;

/** The shares of one sub of that length; they add up to 1. */
export function noiseShares(rates: PixelRates, subSeconds: number): NoiseShares {
  const all = variancePerSecond({ ...rates, subSeconds });
  return {
    signal: rates.signal / all,
    sky: (rates.glow + rates.moon) / all,
    dark: rates.dark / all,
    "read-noise": rates.readNoiseElectrons ** 2 / subSeconds / all,
  };
}

/** What limits a picture, the object's own light left aside. */
export function largestNoise(shares: NoiseShares): "sky" | "dark" | "read-noise" {
  const ranked = (["sky", "dark", "read-noise"] as const)
    .map((source) => ({ source, share: shares[source] }))
    .sort((one, other) => other.share - one.share);
  return ranked[0]?.source ?? "sky";
}
