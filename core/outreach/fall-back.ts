/**
 * What else an instrument can show when a cloud stands where it points.
 *
 * @packageDocumentation
 */
import { angleBetweenDeg } from "../sky/angles.ts";
import { horizonDirection } from "../targets/observing-conditions.ts";
import type { Stop } from "./running-order.ts";
import { needsDarkness, type Sight, worthOf } from "./sights.ts";

/** Far enough that one cloud does not hide both, degrees (common practice). */
const ELSEWHERE_DEG = 50;

/**
 * The worthiest thing in another part of the sky that the same instrument can show throughout a stop.
 *
 * Bright things come first: they show through thin cloud as well.
 */
export function fallBackOf(stop: Stop, sights: readonly Sight[]): Sight | null {
  const middle = (stop.start.getTime() + stop.end.getTime()) / 2;
  const here = horizonDirection(stop.sight.track(middle));
  const others = sights.filter(
    ({ what, viewer, window, track }) =>
      viewer === stop.sight.viewer &&
      what.name !== stop.sight.what.name &&
      window.start <= stop.start &&
      window.end >= stop.end &&
      angleBetweenDeg(here, horizonDirection(track(middle))) >= ELSEWHERE_DEG,
  );
  return others.reduce<Sight | null>(
    (best, sight) => (best === null || rank(sight) > rank(best) ? sight : best),
    null,
  );
}

function rank(sight: Sight): number {
  return worthOf(sight) * (needsDarkness(sight.what.kind) ? 0.5 : 1);
}
