/**
 * `target`: one object through one night, from its windows to its track.
 *
 * @packageDocumentation
 */
import {
  TRACK_POINTS_AT_MOST,
  TRACK_STEP_MINUTES,
  TRACK_STEP_MINUTES_UNASKED,
} from "../config/input-limits.ts";
import { KIND_BRIGHTNESS } from "../config/ranking.ts";
import { type Interval, longestInterval } from "../core/interval.ts";
import type { Night } from "../core/night/night.ts";
import { objectBrightness } from "../core/targets/object-brightness.ts";
import type { SurfaceBrightness, Target } from "../core/targets/sky-object.ts";
import { middleOf, type TargetNight, targetNight, usableSpans } from "../core/targets/target-night.ts";
import { type TrackPoint, trackBetween } from "../core/targets/target-track.ts";
import type { Answer, FollowUp, Section } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import { keptOptions } from "./kept-options.ts";
import { lightAssumptions } from "./light-assumptions.ts";
import { type RigTonight, rigTonight } from "./looking.ts";
import { nightChartSpan, nightPicture } from "./night-picture.ts";
import { endToSunriseMinutes, pointingAt } from "./pointings.ts";
import { filterOf } from "./read/filter.ts";
import { instantOption, numberOption } from "./read/numbers.ts";
import { defineNumber, defineText, FILTER, NIGHT, RIG, SITE, SKY, TARGET } from "./read/options.ts";
import { rigOf } from "./read/rig.ts";
import { targetOf } from "./read/target.ts";
import type { Request } from "./request.ts";
import { type Situation, situationOf } from "./situation.ts";
import { targetFigures } from "./target-figures.ts";
import { capital } from "./words/capital.ts";
import { clockHours, clockSpan, clockTime, dateWords, durationWords } from "./words/clock.ts";
import { moonWords } from "./words/night-words.ts";
import { compassWords } from "./words/sky.ts";
import { shortName, targetInSentence, targetName } from "./words/target-words.ts";

export const target: Command = {
  definition: {
    name: "target",
    description: "One object tonight: when it can be used, how high, what the Moon costs",
    options: [
      TARGET,
      SITE,
      NIGHT,
      RIG,
      FILTER,
      SKY,
      defineText("from", "The track from this instant, such as 2026-10-03T22:00+01:00"),
      defineText("to", "The track to this instant"),
      defineNumber("step-minutes", "Minutes between the track's points"),
    ],
  },
  audience: "member",

  async answer(request, context) {
    const what = targetOf(request, context);
    const rig = await rigOf(request, context);
    const filter = filterOf(request, rig);
    const range = trackRange(request);
    const situation = await situationOf(request, context);
    const tonight = rigTonight(rig, filter, situation.conditions, request.at);
    const span = nightChartSpan(situation.times);
    const track = trackBetween(
      situation.conditions,
      what,
      range.from ?? span.start,
      range.to ?? span.end,
      range.stepMinutes,
    );
    const placeAt = range.from ?? instantWithin(situation.times.night, request.at);
    return describeTarget(request, situation, tonight, what, track, placeAt);
  },
};

/** The clock's instant where the night holds it, else the night's middle. */
function instantWithin(night: Night, at: Date): Date {
  return at >= night.noon && at < night.nextNoon ? at : middleOf(night);
}

/** The part of the track asked for. */
function trackRange(request: Request) {
  const from = instantOption(request, "from");
  const to = instantOption(request, "to");
  const stepMinutes =
    numberOption(request, "step-minutes", { ...TRACK_STEP_MINUTES, unit: "minutes" }) ??
    TRACK_STEP_MINUTES_UNASKED;
  if ((from === null) !== (to === null)) {
    const missing = from === null ? "from" : "to";
    throw new AskError("half-a-range", missing, `“${missing}” is missing: “from” and “to” go together.`);
  }
  if (from !== null && to !== null) {
    if (to < from) throw new AskError("range-backwards", "to", "“to” must not lie before “from”.");
    if ((to.getTime() - from.getTime()) / 60_000 / stepMinutes > TRACK_POINTS_AT_MOST) {
      throw new AskError(
        "too-many-points",
        "step-minutes",
        `“step-minutes” makes more than ${TRACK_POINTS_AT_MOST} points here: take longer steps or a shorter span.`,
      );
    }
  }
  return { from, to, stepMinutes };
}

/** What a target's sums of light are made with; nothing is known of a bare place. */
export function brightnessOf(what: Target): SurfaceBrightness {
  if (what.kind !== "object") return { continuumMagArcsec2: null, rayleigh: {} };
  return objectBrightness(what.object, KIND_BRIGHTNESS).brightness;
}

/** One target through the night of a situation. */
export function nightOfTarget(situation: Situation, tonight: RigTonight, what: Target): TargetNight {
  const { rig } = tonight;
  // By day one looks at the Sun with `sun` and its cautions; at night there is none to see.
  const isSun = what.kind === "body" && what.body === "Sun";
  return targetNight({
    conditions: situation.conditions,
    times: situation.times,
    target: what,
    brightness: brightnessOf(what),
    looking: tonight.looking,
    spans: isSun ? [] : usableSpans(situation.times, what, situation.clear),
    clearance: tonight.clearance,
    mount: rig.mount,
    flipAfterMinutes: rig.kind === "camera" ? rig.flipAfterMinutes : 0,
  });
}

function describeTarget(
  request: Request,
  situation: Situation,
  tonight: RigTonight,
  what: Target,
  track: readonly TrackPoint[],
  placeAt: Date,
): Answer {
  const { site, times, verdict, report } = situation;
  const found = nightOfTarget(situation, tonight, what);
  const longest = longestInterval(found.windows);
  const name = targetInSentence(what);
  const assumptions = lightAssumptions(situation, tonight.rig, [tonight.filter]);
  const zone = site.timeZone;
  const summary = summaryWords(situation, tonight, what, found);
  const cautions = cautionsFor({
    solar: what.kind === "body" && what.body === "Sun",
    pointings: [
      ...found.windows.flatMap(({ start, end }) => [start, end]),
      ...track.filter(({ clearOfHorizon }) => clearOfHorizon).map(({ at }) => at),
      request.at,
    ].map((at) => pointingAt(site, what, at)),
    endToSunriseMinutes: endToSunriseMinutes(times, found.windows.at(-1)?.end ?? null),
  });
  return {
    title: `${capital(name)} on ${dateWords(times.night.date)}${verdict.sample ? " (sample forecast)" : ""}`,
    summary,
    sections: [
      windowSection(situation, tonight, what, found),
      pathSection(situation, found),
      { heading: "", lines: longest === null ? [] : assumptions },
    ].filter((section) => section.lines.length > 0),
    charts: [
      nightPicture({
        site,
        times,
        hours: verdict.kind === "unknown" ? [] : verdict.hours,
        paths: [{ name: targetName(what), track: found.track, windows: found.windows }],
        window: longest === null ? null : { ...longest, label: durationWords(clockHours([longest])) },
        title:
          longest === null
            ? `${capital(name)} has no window this night`
            : `Good from ${clockSpan(longest, zone)}`,
        alt: `The height of ${name} through the night. ${summary} ${moonWords(times)}`,
        cautions: cautions.map(({ text }) => text),
      }),
    ],
    cautions,
    next: followUps(request, what, tonight),
    figures: targetFigures(situation, what, found, track, placeAt, assumptions),
    credits: report.credits,
  };
}

/** Nothing, little or much: one sentence. */
function summaryWords(situation: Situation, tonight: RigTonight, what: Target, found: TargetNight): string {
  const { site, times, clear } = situation;
  const zone = site.timeZone;
  const longest = longestInterval(found.windows);
  if (what.kind === "body" && what.body === "Sun") return "The Sun is for the daytime: ask “sun”.";
  if (longest !== null) {
    const more = found.windows.length > 1 ? `, ${durationWords(clockHours(found.windows))} in all` : "";
    const worth =
      tonight.looking.kind === "camera"
        ? `; worth ${durationWords(found.counted.countingHours)} straight overhead on a moonless night`
        : "";
    return `Use it from ${clockSpan(longest, zone)}${more}${worth}.`;
  }
  if (times.workingWindows.length === 0) return "The night does not get dark enough to use it.";
  const dark = targetNightWithoutClouds(situation, tonight, what);
  if (clear !== null && dark.windows.length > 0) {
    const span = longestInterval(dark.windows);
    return `Cloud hides it all night; without cloud it would do from ${span === null ? "–" : clockSpan(span, zone)}.`;
  }
  const peak = Math.max(...trackHeights(found, usableSpans(times, what, null)));
  return peak <= 0
    ? "It stays below the horizon while it is dark."
    : `It never clears the skyline and ${tonight.clearance.leastAltitudeDeg}° in the dark; at most it stands ${Math.round(peak)}° high.`;
}

function targetNightWithoutClouds(situation: Situation, tonight: RigTonight, what: Target): TargetNight {
  return nightOfTarget({ ...situation, clear: null }, tonight, what);
}

/** Heights through the dark of the night, to say how high it gets at all. */
function trackHeights(found: TargetNight, dark: readonly Interval[]): number[] {
  const heights = [-90];
  for (const { start, end } of dark) {
    for (let ms = start.getTime(); ms <= end.getTime(); ms += 10 * 60_000) {
      heights.push(found.track(ms).altitudeDeg);
    }
  }
  return heights;
}

function windowSection(situation: Situation, tonight: RigTonight, what: Target, found: TargetNight): Section {
  const { site, verdict } = situation;
  const zone = site.timeZone;
  const lines = found.windows.map(
    (span) => `${clockSpan(span, zone)}, ${durationWords(clockHours([span]))}.`,
  );
  if (found.meridianFlip !== null) lines.push(`Meridian flip at ${clockTime(found.meridianFlip, zone)}.`);
  if (found.bands.length > 0 && lines.length > 0) {
    lines.push(...found.bands.map(({ name, counted }) => costWords(bandWords(name), counted.moonCost)));
  } else if (found.counted.moonCost !== null && what.kind !== "body") {
    lines.push(costWords("to the eye", found.counted.moonCost));
  }
  if (verdict.kind !== "unknown") {
    lines.push(`The forecast says ${verdict.outlook ? "outlook: " : ""}${verdict.kind} for the night.`);
  } else if (lines.length > 0) {
    lines.push("Cloud is not known for this night.");
  }
  const kind =
    tonight.rig.kind === "camera" ? `${tonight.rig.name}, ${filterWords(tonight)}` : tonight.rig.name;
  return { heading: `Windows with ${kind}`, lines };
}

function filterWords(tonight: RigTonight): string {
  return tonight.filter.bands.length === 0 ? "no filter" : tonight.filter.name;
}

function bandWords(name: string): string {
  return name === "no filter" ? "without a filter" : `in ${name}`;
}

/** @param where - `in Hα`, `without a filter`, `to the eye` */
function costWords(where: string, moonCost: number | null): string {
  if (moonCost === null) return `The Moon's cost ${where} is not known.`;
  return moonCost < 1.005
    ? `The Moon costs nothing ${where}.`
    : `The Moon costs a factor of ${moonCost.toFixed(2)} ${where}: that much longer for the same picture.`;
}

function pathSection(situation: Situation, found: TargetNight): Section {
  const zone = situation.site.timeZone;
  const lines: string[] = [];
  const { transit, peak } = found;
  if (transit !== null) {
    const heightDeg = Math.round(transit.altitudeDeg);
    const stands = heightDeg < 0 ? `still ${-heightDeg}° below the horizon` : `${heightDeg}° up`;
    lines.push(`Highest at ${clockTime(transit.at, zone)}, ${stands}.`);
  }
  if (peak !== null) {
    lines.push(
      `In its window up to ${Math.round(peak.altitudeDeg)}° in the ${compassWords(peak.azimuthDeg)} at ${clockTime(peak.at, zone)}.`,
    );
  }
  return { heading: "Path", lines };
}

function followUps(request: Request, what: Target, tonight: RigTonight): FollowUp[] {
  const target = shortName(what);
  const kept = (...names: string[]) => keptOptions(request, names);
  if (what.kind === "body") {
    return [{ label: "What fits tonight", command: "tonight", options: kept("site", "night", "rig") }];
  }
  const season = { label: "Its season", command: "season", options: { target, ...kept("site") } };
  if (tonight.rig.kind === "visual") return [season];
  return [
    { label: "Frame it", command: "framing", options: { target, ...kept("rig") } },
    {
      label: "Expose it",
      command: "exposure",
      options: { target, ...kept("site", "night", "rig", "filter") },
    },
    season,
  ];
}
