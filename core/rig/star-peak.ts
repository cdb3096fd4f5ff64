/**
 * A star's brightest pixel, and when it saturates.
 *
 * @packageDocumentation
 */
import { nanolamberts } from "../night/sky-brightness.ts";
import type { ChannelResponse } from "./band-response.ts";

/** Full width at half maximum over standard deviation of a bell curve: 2√(2 ln 2). */
const FWHM_PER_SIGMA = 2.355;

/** Diffraction's width: this times nanometres over millimetres, arcseconds. */
const DIFFRACTION_ARCSEC = 0.21;

/** How seeing grows with the air mass, as an exponent of the seeing squared. */
const SEEING_EXPONENT = 1.2;

/**
 * The error function.
 *
 * @remarks
 * Error: under 1.5e-7 everywhere.
 *
 * Source: M. Abramowitz & I. A. Stegun, Handbook of Mathematical Functions, 7.1.26.
 */
export function errorFunction(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return Math.sign(x) * (1 - series * Math.exp(-x * x));
}

/**
 * Share of a star's light in its brightest pixel, the star centred on it.
 *
 * @param pixelArcsec - side of the pixel
 * @param fwhmArcsec - the star's blur, above 0
 * @returns a ratio in (0, 1): 1.939″ pixels and 3.3″ of blur give 0.261
 */
export function peakPixelShare(pixelArcsec: number, fwhmArcsec: number): number {
  const sigma = fwhmArcsec / FWHM_PER_SIGMA;
  return errorFunction(pixelArcsec / (2 * Math.SQRT2 * sigma)) ** 2;
}

export type StarBlur = {
  /** At the zenith, full width at half maximum. */
  readonly seeingArcsec: number;
  readonly airmasses: number;
  readonly wavelengthNm: number;
  readonly apertureMm: number;
  readonly guidingArcsec: number;
};

/** A star's full width at half maximum: seeing, diffraction and guiding, in quadrature; arcseconds. */
export function starBlurArcsec(blur: StarBlur): number {
  const seeing = blur.seeingArcsec ** 2 * blur.airmasses ** SEEING_EXPONENT;
  const diffraction = (DIFFRACTION_ARCSEC * blur.wavelengthNm) / blur.apertureMm;
  return Math.sqrt(seeing + diffraction * diffraction + blur.guidingArcsec ** 2);
}

/**
 * Electrons a second of a whole star.
 *
 * @param magnitude - V, above the air
 * @param pixelArcsec - side of the pixel
 */
export function starElectrons(
  channel: Pick<ChannelResponse, "electronsPerNanolambert">,
  magnitude: number,
  pixelArcsec: number,
): number {
  // As the surface of that magnitude per square arcsecond, of which a pixel sees its own area.
  return (channel.electronsPerNanolambert * nanolamberts(magnitude)) / (pixelArcsec * pixelArcsec);
}

/**
 * Time until a star's brightest pixel is as full as it may be.
 *
 * @param fillElectrons - the share of the saturation allowed
 * @param starPeakElectrons - a second, in its brightest pixel
 * @param backgroundElectrons - sky and dark current a second
 */
export function saturationSeconds(
  fillElectrons: number,
  starPeakElectrons: number,
  backgroundElectrons: number,
): number {
  return fillElectrons / (starPeakElectrons + backgroundElectrons);
}
