/**
 * How clear the air is between the clouds, from the aerosol optical depth where it is served.
 *
 * @packageDocumentation
 */

export type Transparency = "clear" | "middling" | "hazy";

export type TransparencyLimits = { readonly clearUpTo: number; readonly hazyAbove: number };

/**
 * The word for an aerosol optical depth.
 *
 * @param aerosolOpticalDepth - at 550 nm, 0 or more
 * @returns `clear` up to the lower limit, `hazy` above the upper one, `middling` between
 *
 * @remarks Source: common practice.
 */
export function transparencyOf(aerosolOpticalDepth: number, limits: TransparencyLimits): Transparency {
  if (aerosolOpticalDepth <= limits.clearUpTo) return "clear";
  return aerosolOpticalDepth > limits.hazyAbove ? "hazy" : "middling";
}
