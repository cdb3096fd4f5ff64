/**
 * What the air takes from an object's light, by wavelength.
 *
 * A site's sky reading is what is seen, so the sky itself is never dimmed by this.
 *
 * @packageDocumentation
 */

/** The wavelength of the V band that readings and models of the sky are made in. */
export const V_BAND_NM = 550;

const AIR_SCALE_HEIGHT_METRES = 8000;
const RAYLEIGH_AT_SEA_LEVEL = 0.106;
/** The Chappuis band's mean over 500–680 nm; common practice. */
const OZONE = 0.03;
const OZONE_FROM_NM = 500;
const OZONE_TO_NM = 680;

/** Aerosol's wavelength dependence, as an exponent; its scattered moonlight follows it too. */
export const AEROSOL_EXPONENT = 1.3;

/** Magnitudes of extinction per unit of optical depth: 2.5 log₁₀ e. */
const MAG_PER_OPTICAL_DEPTH = 1.086;

/** Aerosol extinction at 550 nm from a forecast's optical depth there, magnitudes per air mass. */
export function aerosolExtinction(opticalDepth: number): number {
  return MAG_PER_OPTICAL_DEPTH * opticalDepth;
}

/**
 * Extinction at the zenith: Rayleigh, aerosol and ozone.
 *
 * @param wavelengthNm - in [350, 1000]
 * @param elevationMetres - of the site
 * @param aerosol - aerosol extinction at 550 nm, magnitudes per air mass
 * @returns magnitudes per air mass; at sea level with 0.12: 0.256 at 550 nm, 0.178 at 656, 0.320 at 501
 *
 * @remarks
 * Rough: the air of one night differs from the next by a tenth of a magnitude. The shape
 * (λ⁻⁴ for air, λ⁻¹·³ for haze) is the textbook one; the coefficients are common practice.
 */
export function extinctionPerAirmass(wavelengthNm: number, elevationMetres: number, aerosol: number): number {
  const ratio = V_BAND_NM / wavelengthNm;
  const air = RAYLEIGH_AT_SEA_LEVEL * ratio ** 4 * Math.exp(-elevationMetres / AIR_SCALE_HEIGHT_METRES);
  const haze = aerosol * ratio ** AEROSOL_EXPONENT;
  const ozone = wavelengthNm >= OZONE_FROM_NM && wavelengthNm <= OZONE_TO_NM ? OZONE : 0;
  return air + haze + ozone;
}

/**
 * Share of an object's light that arrives.
 *
 * @param extinction - magnitudes per air mass
 * @param airmasses - air crossed, from `airmass`
 * @returns a ratio in (0, 1]
 */
export function transmission(extinction: number, airmasses: number): number {
  return 10 ** (-0.4 * extinction * airmasses);
}
