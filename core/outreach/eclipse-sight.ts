/**
 * What of an eclipse a site sees: the part during which Sun or Moon clears its skyline.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { Site } from "../site.ts";
import { targetTrack } from "../targets/placer.ts";
import type { BodyName } from "../targets/sky-object.ts";
import { visibleIntervals } from "../targets/visibility.ts";

/**
 * Spans within which a body stands over the skyline and the level horizon.
 *
 * Airless: at the horizon the air lifts a body into sight some minutes sooner.
 */
export function clearSpans(site: Site, body: BodyName, within: Interval): Interval[] {
  const track = targetTrack(site, { kind: "body", body }, within.start);
  const clearance = { skyline: site.skyline, leastAltitudeDeg: 0 };
  return visibleIntervals((at) => track(at.getTime()), clearance, [within]);
}

/** The instant of some spans that lies nearest another; `null` without spans. */
export function nearestWithin(spans: readonly Interval[], at: Date): Date | null {
  let nearest: Date | null = null;
  for (const { start, end } of spans) {
    const here = at < start ? start : at > end ? end : at;
    if (nearest === null || Math.abs(+here - +at) < Math.abs(+nearest - +at)) nearest = here;
  }
  return nearest;
}
