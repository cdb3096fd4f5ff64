/**
 * The light that the Sun below the horizon still leaves overhead.
 *
 * @packageDocumentation
 */
import { nanolamberts } from "./sky-brightness.ts";

/** From here down the night's own models hold and twilight adds nothing. */
const DARK_SUN_ALTITUDE_DEG = -18;

/**
 * Twilight's brightness at the zenith, to be added to the night's.
 *
 * @param sunAltitudeDeg - airless; with the Sun up the horizon's value is kept
 * @returns nanolamberts in V; 0 with the Sun at −18° or lower
 *
 * @remarks
 * The fit is to the whole sky of a dark mountain site for depressions of 5° to 15° and
 * somewhat more; at 18° it gives 21.94, so near there it counts the night's own light
 * twice. Above 5° it is an extrapolation. Used for the whole sky: rough.
 *
 * Source: F. Patat, O. S. Ugolnikov & O. V. Postylyakov 2006, A&A 455, 385 (from memory).
 */
export function twilightNanolamberts(sunAltitudeDeg: number): number {
  if (sunAltitudeDeg <= DARK_SUN_ALTITUDE_DEG) return 0;
  const phase = Math.max(0, -sunAltitudeDeg) - 5;
  return nanolamberts(11.84 + 1.518 * phase - 0.057 * phase * phase);
}
