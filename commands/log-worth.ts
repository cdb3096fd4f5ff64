/**
 * What logged subs are worth: their hours in hours at the zenith without Moon.
 *
 * @packageDocumentation
 */
import { PASSBANDS } from "../config/passbands.ts";
import { PHOTOMETRY } from "../config/photometry.ts";
import { LEAST_ALTITUDE_DEG } from "../config/ranking.ts";
import { UNKNOWN_AIR_CELSIUS } from "../config/rig-defaults.ts";
import { DEFAULT_SKY } from "../config/site-defaults.ts";
import type { Interval } from "../core/interval.ts";
import { clockHours, type FrameSet } from "../core/log/frame-set.ts";
import { passbandOf } from "../core/log/passband.ts";
import { nightOn } from "../core/night/local-night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import { zenithMagArcsec2 } from "../core/night/sky-brightness.ts";
import { bandResponses } from "../core/rig/band-response.ts";
import type { CameraRig, Filter, Rig } from "../core/rig/rig.ts";
import type { Site } from "../core/site.ts";
import type { Catalogue } from "../core/targets/catalogue.ts";
import { countedHours, leastCounted } from "../core/targets/counting-hours.ts";
import { observingConditions } from "../core/targets/observing-conditions.ts";
import { targetTrack } from "../core/targets/placer.ts";
import type { Target } from "../core/targets/sky-object.ts";
import { middleOf } from "../core/targets/target-night.ts";
import { visibleIntervals } from "../core/targets/visibility.ts";
import { AskError } from "./ask-error.ts";
import { parseFilter } from "./read/filter.ts";
import { brightnessOf } from "./target.ts";

/** Reckons what subs are worth; remembers what it has worked out for a night. */
export type LogWorth = (set: FrameSet) => number | null;

/**
 * A way to weigh subs shot from a site.
 *
 * With a start, the very hours are weighed; without one, the hours in which the object
 * could be shot that night stand for them. `null` where rig, filter or object are unknown.
 */
export function logWorth(site: Site, rigs: readonly Rig[], catalogue: Catalogue): LogWorth {
  const quality = site.sky ?? DEFAULT_SKY;
  const conditions = observingConditions({
    site,
    zenithMagArcsec2: zenithMagArcsec2(quality, PHOTOMETRY.bortleMagArcsec2),
    aerosolExtinction: PHOTOMETRY.aerosolExtinction,
    photometry: PHOTOMETRY,
    airCelsiusAt: () => UNKNOWN_AIR_CELSIUS,
  });
  const remembered = new Map<string, number | null>();

  const shareOf = (set: FrameSet, target: Target, rig: CameraRig, filter: Filter): number | null => {
    const night = nightOn(set.night, site.timeZone);
    const track = targetTrack(site, target, middleOf(night));
    const windows = windowsOf(set, () => {
      const clearance = { skyline: site.skyline, leastAltitudeDeg: LEAST_ALTITUDE_DEG.imaging };
      const { workingWindows } = nightTimes(site, night);
      return visibleIntervals((at) => track(at.getTime()), clearance, workingWindows);
    });
    const counted = leastCounted(
      bandResponses(rig, filter, PHOTOMETRY).map((band) =>
        countedHours(
          { rig, band, subSeconds: set.subSeconds },
          conditions,
          brightnessOf(target),
          track,
          windows,
        ),
      ),
    );
    if (counted === null || counted.usableHours === 0) return null;
    return counted.countingHours / counted.usableHours;
  };

  return (set) => {
    const rig = rigs.find(({ name }) => name === set.rig);
    const found = catalogue.find(set.object);
    const filter = rig?.kind === "camera" ? filterNamed(set.passband, rig) : null;
    if (rig?.kind !== "camera" || found.kind !== "found" || filter === null) return null;
    const key = [set.object, set.passband, set.rig, set.night, set.subSeconds, set.startedAt?.getTime()].join(
      "|",
    );
    const known = remembered.get(key);
    const share = known === undefined ? shareOf(set, found.target, rig, filter) : known;
    remembered.set(key, share);
    return share === null ? null : share * clockHours(set);
  };
}

/** The hours that the subs took, rejected ones too; without a start, when they can have been shot. */
function windowsOf(set: FrameSet, whenPossible: () => readonly Interval[]): readonly Interval[] {
  if (set.startedAt === null) return whenPossible();
  const lastedMs = Math.max(1, set.frames + set.rejected) * set.subSeconds * 1000;
  return [{ start: set.startedAt, end: new Date(set.startedAt.getTime() + lastedMs) }];
}

/** The rig's filter of a filed name, else the filter that anybody would mean by it. */
export function filterNamed(passband: string, rig: CameraRig): Filter | null {
  const own = rig.filters.find(({ name }) => passbandOf(name, [name], PASSBANDS) === passband);
  if (own !== undefined) return own;
  try {
    return parseFilter(passband);
  } catch (fault) {
    if (fault instanceof AskError) return null;
    throw fault;
  }
}
