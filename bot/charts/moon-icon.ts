/**
 * The Moon as a small drawn disc at its phase.
 *
 * @packageDocumentation
 */
import { PALETTE } from "../../config/palette.ts";
import { litPath, UPRIGHT } from "./disc.ts";
import { circle, group, type Point, path, type Svg } from "./svg.ts";

/** How the Moon looks tonight, without its tilt. */
export type Phase = {
  readonly illuminatedFraction: number;
  readonly waxing: boolean;
  /** Seen from south of the equator, a waxing Moon is lit on the left. */
  readonly southern?: boolean;
};

export function moonIcon(centre: Point, radius: number, phase: Phase): Svg {
  const limbDeg = phase.waxing !== (phase.southern ?? false) ? -90 : 90;
  return group({ "data-moon": "icon" }, [
    circle(centre, radius, { fill: PALETTE.umberRaised, stroke: PALETTE.lilac, "stroke-width": 1.2 }),
    path(litPath(centre, radius, limbDeg, phase.illuminatedFraction, UPRIGHT), { fill: PALETTE.lilac }),
  ]);
}
