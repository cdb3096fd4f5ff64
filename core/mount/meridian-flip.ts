/**
 * When a german mount must turn over to go on following.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { Mount } from "../rig/rig.ts";
import { MS_PER_MINUTE } from "../sky/time.ts";

/**
 * The flip: upper transit plus the minutes the mount may run on, if that falls in a usable window.
 *
 * @param transit - the target's upper transit, or `null` when there is none that night
 * @param flipAfterMinutes - how long the mount may follow past the meridian
 * @param windows - when the target is usable
 * @returns `null` for any other mount, without a transit, or outside the windows
 */
export function meridianFlip(
  mount: Mount,
  transit: Date | null,
  flipAfterMinutes: number,
  windows: readonly Interval[],
): Date | null {
  if (mount !== "german" || transit === null) return null;
  const flip = transit.getTime() + flipAfterMinutes * MS_PER_MINUTE;
  const inside = windows.some(({ start, end }) => start.getTime() < flip && flip < end.getTime());
  return inside ? new Date(flip) : null;
}
