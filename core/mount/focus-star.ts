/**
 * A star to focus on, near the target so that the optics hardly move after.
 *
 * @packageDocumentation
 */
import { separationDeg } from "../sky/place.ts";
import type { NamedStar } from "../targets/catalogue.ts";
import { type StarField, type StarInSky, type StarLimits, starsWithin } from "./visible-stars.ts";

export type FocusStar = {
  readonly star: StarInSky;
  /** From the target, degrees; `null` without a target. */
  readonly separationDeg: number | null;
};

/**
 * The star within the limits that is nearest to the target, else the highest one.
 *
 * @param target - its place of date, or `null` when there is none
 * @returns `null` when no star will do
 */
export function focusStar(
  stars: readonly NamedStar[],
  field: StarField,
  target: { readonly raDeg: number; readonly decDeg: number } | null,
  limits: StarLimits,
): FocusStar | null {
  let best: FocusStar | null = null;
  for (const star of starsWithin(stars, field, limits)) {
    const away = target === null ? null : separationDeg(star, target);
    const better =
      best === null ||
      (away !== null && best.separationDeg !== null
        ? away < best.separationDeg
        : star.altitudeDeg > best.star.altitudeDeg);
    if (better) best = { star, separationDeg: away };
  }
  return best;
}
