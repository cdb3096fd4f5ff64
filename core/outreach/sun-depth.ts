/**
 * When the Sun is deep enough below the horizon for what is to be shown.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { heightTrack } from "../sky/topocentric.ts";
import { visibleIntervals } from "../targets/visibility.ts";

/**
 * The parts of some spans in which the Sun's centre stands at least so deep, airless.
 *
 * @param depthDeg - degrees below the level horizon, positive
 */
export function sunBelow(
  position: GroundPosition,
  depthDeg: number,
  within: readonly Interval[],
): Interval[] {
  const track = heightTrack("Sun", { ...position, elevationMetres: 0 });
  // The Sun's depth rises as a body's altitude does.
  const depth = (at: Date) => ({ altitudeDeg: -track(at.getTime()).altitudeDeg, azimuthDeg: 0 });
  return visibleIntervals(depth, { skyline: [], leastAltitudeDeg: depthDeg }, within);
}
