/**
 * A night's times: twilights, Moon, darkness.
 *
 * Twilights are the Sun's centre at −6°, −12° and −18°, airless; rise and set are
 * the upper limb on a level horizon with 34′ of refraction, as in *The Astronomical
 * Almanac*. Within 0.5 s of Swiss Ephemeris below latitude 60°.
 *
 * @packageDocumentation
 */
import { type Interval, subtractIntervals } from "../interval.ts";
import { bodyPlace } from "../sky/bodies.ts";
import {
  type Crossing,
  crossingsIn,
  type HeightSamples,
  type Level,
  sampleHeights,
} from "../sky/crossings.ts";
import type { GroundPosition } from "../sky/frame.ts";
import { moonElongationDeg } from "./moon-phases.ts";
import type { Night, NightTimes, Twilight } from "./night.ts";

const RISE_SET: Level = { kind: "rise-set" };

/** The Sun's depth that ends each twilight. */
const TWILIGHT_LEVELS: readonly { readonly twilight: Twilight; readonly level: Level }[] = [
  { twilight: "astronomical", level: { kind: "centre", altitudeDeg: -18 } },
  { twilight: "nautical", level: { kind: "centre", altitudeDeg: -12 } },
  { twilight: "civil", level: { kind: "centre", altitudeDeg: -6 } },
];

type Passage = { readonly dusk: Date | null; readonly dawn: Date | null };

/** Everything about a night at a place that needs no forecast. */
export function nightTimes(site: GroundPosition, night: Night): NightTimes {
  const sun = sampleHeights("Sun", site, night.noon, night.nextNoon);
  const moon = sampleHeights("Moon", site, night.noon, night.nextNoon);
  const dark = TWILIGHT_LEVELS.map(({ twilight, level }) => {
    const crossings = crossingsIn(sun, level);
    return { twilight, passage: passageOf(crossings), below: spansBelow(sun, level, crossings) };
  });
  const passage = (twilight: Twilight) =>
    dark.find((each) => each.twilight === twilight)?.passage ?? { dusk: null, dawn: null };
  const daylight = passageOf(crossingsIn(sun, RISE_SET));
  const darkWindows = dark.find((each) => each.twilight === "astronomical")?.below ?? [];
  const deepest = dark.find((each) => each.below.length > 0);

  const moonCrossings = crossingsIn(moon, RISE_SET);
  const moonDown = spansBelow(moon, RISE_SET, moonCrossings);
  const moonUp = subtractIntervals([{ start: night.noon, end: night.nextNoon }], moonDown);
  const halfWay = new Date((night.noon.getTime() + night.nextNoon.getTime()) / 2);
  const moonHalfWay = bodyPlace("Moon", site, halfWay);

  return {
    night,
    sunset: daylight.dusk,
    civilDusk: passage("civil").dusk,
    nauticalDusk: passage("nautical").dusk,
    astronomicalDusk: passage("astronomical").dusk,
    astronomicalDawn: passage("astronomical").dawn,
    nauticalDawn: passage("nautical").dawn,
    civilDawn: passage("civil").dawn,
    sunrise: daylight.dawn,
    moon: {
      rise: moonCrossings.find((crossing) => crossing.rising)?.at ?? null,
      set: moonCrossings.find((crossing) => !crossing.rising)?.at ?? null,
      illuminatedFraction: moonHalfWay.illuminatedFraction,
      phaseAngleDeg: moonHalfWay.phaseAngleDeg,
      waxing: moonElongationDeg(halfWay) < 180,
    },
    darkWindows,
    moonFreeDarkWindows: subtractIntervals(darkWindows, moonUp),
    deepestTwilight: deepest?.twilight ?? "none",
    workingWindows: deepest?.below ?? [],
  };
}

/** The first passage downward, and the first upward after it. */
function passageOf(crossings: readonly Crossing[]): Passage {
  const dusk = crossings.find((crossing) => !crossing.rising)?.at ?? null;
  const dawn =
    crossings.find((crossing) => crossing.rising && (dusk === null || crossing.at > dusk))?.at ?? null;
  return { dusk, dawn };
}

/** Spans of the night in which a body stands below a level. */
function spansBelow(samples: HeightSamples, level: Level, crossings: readonly Crossing[]): Interval[] {
  const spans: Interval[] = [];
  let since = samples.heightAt(samples.from.getTime(), level) < 0 ? samples.from : null;
  for (const crossing of crossings) {
    if (crossing.rising) {
      if (since !== null && since < crossing.at) spans.push({ start: since, end: crossing.at });
      since = null;
    } else {
      since = crossing.at;
    }
  }
  if (since !== null) spans.push({ start: since, end: samples.to });
  return spans;
}
