/**
 * How bright the sky is: magnitudes per square arcsecond, nanolamberts, and the
 * ways people describe a site.
 *
 * @packageDocumentation
 */
import type { SkyQuality } from "../site.ts";

/** One nanolambert's worth, from K. Krisciunas & B. E. Schaefer 1991, PASP 103, 1033, equation 1. */
const NANOLAMBERT_SCALE = 34.08;
const MAGNITUDE_OFFSET = 20.7233;
const MAGNITUDE_SLOPE = 0.92104;

/**
 * Surface brightness from V magnitudes per square arcsecond.
 *
 * Source: K. Krisciunas & B. E. Schaefer 1991, equation 1: 21.587 is 79.0 nL.
 */
export function nanolamberts(magArcsec2: number): number {
  return NANOLAMBERT_SCALE * Math.exp(MAGNITUDE_OFFSET - MAGNITUDE_SLOPE * magArcsec2);
}

/**
 * V magnitudes per square arcsecond from nanolamberts: the inverse of {@link nanolamberts}.
 *
 * @param brightness - nanolamberts, above 0
 * @throws RangeError when there is no light to express as a magnitude
 */
export function magArcsec2(brightness: number): number {
  if (!(brightness > 0)) throw new RangeError(`no magnitude for ${brightness} nL`);
  return (MAGNITUDE_OFFSET - Math.log(brightness / NANOLAMBERT_SCALE)) / MAGNITUDE_SLOPE;
}

/**
 * Faintest star the eye sees at the zenith under such a sky.
 *
 * @returns visual magnitude: 22 gives 6.62, 18 gives 3.97
 *
 * Source: B. E. Schaefer 1990, PASP 102, 212, as commonly inverted.
 */
export function nakedEyeLimit(zenithMag: number): number {
  return 7.93 - 5 * Math.log10(10 ** (4.316 - zenithMag / 5) + 1);
}

/**
 * Zenith sky from the faintest star seen there: the inverse of {@link nakedEyeLimit}.
 *
 * @param limitMag - under 7.93, the limit in perfect darkness
 * @throws RangeError when the limit is beyond that
 */
export function zenithMagOfNakedEyeLimit(limitMag: number): number {
  const excess = 10 ** ((7.93 - limitMag) / 5) - 1;
  if (!(excess > 0)) throw new RangeError(`no sky shows stars of magnitude ${limitMag} to the eye`);
  return 5 * (4.316 - Math.log10(excess));
}

/**
 * Zenith brightness of a site's moonless sky, however it was described.
 *
 * @param bortleTable - magnitudes per square arcsecond by class, from `config/`
 * @throws RangeError for a class the table lacks
 */
export function zenithMagArcsec2(quality: SkyQuality, bortleTable: Readonly<Record<number, number>>): number {
  switch (quality.kind) {
    case "reading":
      return quality.magArcsec2;
    case "naked-eye":
      return zenithMagOfNakedEyeLimit(quality.limitMag);
    case "bortle": {
      const magnitude = bortleTable[quality.class];
      if (magnitude === undefined) throw new RangeError(`no Bortle class ${quality.class}`);
      return magnitude;
    }
  }
}
