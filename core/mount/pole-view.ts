/**
 * Whether a pole star can be seen from a site, or why not.
 *
 * @packageDocumentation
 */
import type { SkylinePoint } from "../site.ts";
import { skylineAltitudeDeg } from "../targets/skyline.ts";
import type { PoleStarPlace } from "./pole-star.ts";

export type PoleView =
  | { readonly kind: "seen" }
  /** Too near the horizon to be aligned by: haze, and refraction that bends the pole. */
  | { readonly kind: "low"; readonly altitudeDeg: number; readonly leastAltitudeDeg: number }
  /** Behind what stands around the site. */
  | { readonly kind: "hidden"; readonly altitudeDeg: number; readonly skylineDeg: number };

/**
 * Whether the pole star clears the skyline and a least altitude; at a limit it does.
 *
 * @param leastAltitudeDeg - below this a pole star is no use, degrees
 */
export function poleView(
  place: Pick<PoleStarPlace, "altitudeDeg" | "azimuthDeg">,
  skyline: readonly SkylinePoint[],
  leastAltitudeDeg: number,
): PoleView {
  const { altitudeDeg } = place;
  const skylineDeg = skylineAltitudeDeg(skyline, place.azimuthDeg);
  if (altitudeDeg < leastAltitudeDeg) return { kind: "low", altitudeDeg, leastAltitudeDeg };
  if (altitudeDeg < skylineDeg) return { kind: "hidden", altitudeDeg, skylineDeg };
  return { kind: "seen" };
}
