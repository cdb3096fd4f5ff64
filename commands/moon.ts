/**
 * `moon`: its phase, its disc as one sees it, what stands on the terminator, when a feature shows best.
 *
 * @packageDocumentation
 */

import { NIGHTS_AT_MOST } from "../config/input-limits.ts";
import { MOON_FEATURES } from "../config/moon-features.ts";
import { FEATURE_NIGHTS, LEAST_TOWARDS_US, MOON_LEAST_ALTITUDE_DEG, TERMINATOR } from "../config/outreach.ts";
import { nightsFrom } from "../core/night/local-night.ts";
import { type MoonPhase, moonPhases } from "../core/night/moon-phases.ts";
import type { NightTimes } from "../core/night/night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import { type BodyNight, bodyNight, highestIn } from "../core/outreach/body-night.ts";
import { featureNights } from "../core/outreach/feature-nights.ts";
import {
  featuresOnTerminator,
  type LitFeature,
  type LunarFeature,
} from "../core/outreach/lunar-terminator.ts";
import { type MoonDisc, moonDisc } from "../core/outreach/moon-disc.ts";
import type { Answer, Section } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import { keptOptions } from "./kept-options.ts";
import { moonFigures } from "./moon-figures.ts";
import { type MoonTonight, moonChart, prominent } from "./moon-picture.ts";
import { pointingAt } from "./pointings.ts";
import { FEATURE, featureCompletions, featureOf } from "./read/lunar-feature.ts";
import { clockInNight, TIME } from "./read/moment.ts";
import { nightOf } from "./read/night.ts";
import { textOption, wholeNumberOption } from "./read/numbers.ts";
import { NIGHT, NIGHTS, SITE } from "./read/options.ts";
import { siteOf } from "./read/site.ts";
import type { Request } from "./request.ts";
import { clockSpan, clockTime, dateWords } from "./words/clock.ts";
import { dayWords, shortDayWords } from "./words/day-words.ts";
import { kindWords, librationWords, litFeatureWords, moonSizeWords, phaseWords } from "./words/moon-words.ts";
import { moonPassageWords } from "./words/night-words.ts";
import { compassWords, listWords } from "./words/sky.ts";

const MOON = { kind: "body", body: "Moon" } as const;
const DAY_MS = 86_400_000;

export const moon: Command = {
  definition: {
    name: "moon",
    description: "The Moon: phase, disc, what stands on the terminator, best nights for a feature",
    options: [SITE, NIGHT, TIME, FEATURE, NIGHTS],
  },
  audience: "member",

  async answer(request, context) {
    const feature = featureOf(request);
    const nights = wholeNumberOption(request, "nights", { min: 1, max: NIGHTS_AT_MOST, unit: "nights" });
    const site = await siteOf(request, context);
    const times = nightTimes(site, nightOf(request, site));
    const inNight = bodyNight(site, times, "Moon", 0);
    const disc = moonDisc(site, momentOf(request, times, inNight));
    const nightsSearched = nights ?? FEATURE_NIGHTS;
    return describeMoon(request, {
      site,
      times,
      inNight,
      disc,
      lit: featuresOnTerminator(MOON_FEATURES, disc, disc.libration, TERMINATOR, LEAST_TOWARDS_US),
      phases: moonPhases(times.night.noon, new Date(times.night.noon.getTime() + 30 * DAY_MS)),
      feature,
      bestNights:
        feature === null
          ? []
          : featureNights(site, feature, nightsFrom(times.night, nightsSearched), {
              band: TERMINATOR,
              leastTowardsUs: LEAST_TOWARDS_US,
              leastAltitudeDeg: MOON_LEAST_ALTITUDE_DEG,
            }),
      nightsSearched,
    });
  },

  async complete(option, typed) {
    return option === "feature" ? featureCompletions(typed) : null;
  },
};

/** The time named, else now while the Moon is up, else its highest after sunset, else its highest. */
function momentOf(request: Request, times: NightTimes, { best, track }: BodyNight): Date {
  const { night } = times;
  const named = textOption(request, "time");
  if (named !== null) return clockInNight("time", named, night.date, night.timeZone);
  const isNow = textOption(request, "night") === null && request.at >= night.noon;
  if (isNow && track(request.at.getTime()).altitudeDeg > 0) return request.at;
  if (best !== null) return best.at;
  const whole = { start: night.noon, end: night.nextNoon };
  return highestIn(track, [whole])?.at ?? night.noon;
}

function describeMoon(request: Request, found: MoonTonight): Answer {
  const { site, times, disc, lit, feature, inNight } = found;
  const instants = [
    request.at,
    disc.at,
    ...inNight.windows.flatMap(({ start, end }) => [start, end]),
    ...found.bestNights.map(({ best }) => best),
  ];
  const cautions = cautionsFor({ pointings: instants.map((at) => pointingAt(site, MOON, at)) });
  return {
    title: `The Moon from ${site.name}, ${dateWords(times.night.date)}`,
    summary: summaryWords(found),
    sections: [
      ...(feature === null ? [] : [featureSection(found, feature)]),
      { heading: "The Moon", lines: moonLines(found) },
      terminatorSection(disc, lit, times.night.timeZone),
      { heading: "Phases ahead", lines: [phaseLine(found.phases, times.night.timeZone)] },
    ].filter(({ lines }) => lines.length > 0),
    charts: [
      moonChart(
        found,
        cautions.map(({ text }) => text),
      ),
    ],
    cautions,
    next: followUps(request, found),
    figures: moonFigures(found),
    credits: [],
  };
}

function summaryWords({ times, disc, inNight, feature, bestNights }: MoonTonight): string {
  const zone = times.night.timeZone;
  const [first] = bestNights;
  if (feature !== null) {
    return first === undefined
      ? `${feature.name} does not stand on the terminator under a dark sky in the nights asked for.`
      : `${feature.name} next stands on the terminator on ${dayWords(first.best, zone)}, ${clockSpan(first.window, zone)}.`;
  }
  const phase = phaseWords(disc.elongationDeg);
  const shape = `${phase.slice(0, 1).toUpperCase()}${phase.slice(1)}, ${Math.round(disc.illuminatedFraction * 100)} % lit, ${disc.ageDays.toFixed(1)} days old`;
  if (inNight.windows.length === 0 || inNight.best === null) {
    return `${shape}; not to be seen while the Sun is down.`;
  }
  const spans = listWords(inNight.windows.map((span) => clockSpan(span, zone)));
  const { at, altitudeDeg, azimuthDeg } = inNight.best;
  return `${shape}; clear of the skyline with the Sun down ${spans}, highest at ${clockTime(at, zone)}, ${Math.round(altitudeDeg)}° in the ${compassWords(azimuthDeg)}.`;
}

function moonLines({ times, disc }: MoonTonight): string[] {
  const passage = moonPassageWords(times);
  return [
    `${passage.slice(0, 1).toUpperCase()}${passage.slice(1)}, by a level horizon.`,
    moonSizeWords(disc),
    librationWords(disc.libration),
    `Colongitude ${disc.colongitudeDeg.toFixed(1)}°: the Sun ${disc.waxing ? "rises" : "sets"} along the terminator we see.`,
  ];
}

/** The largest of them in words, the seas apart: of those the shore counts, not the middle. */
function terminatorSection(disc: MoonDisc, lit: readonly LitFeature[], zone: string): Section {
  const named = prominent(lit);
  const heading = `On the terminator at ${clockTime(disc.at, zone)}, north to south`;
  if (named.length === 0) return { heading, lines: ["Nothing of the table stands there now."] };
  const more = lit.length - named.length;
  return {
    heading,
    lines: [...named.map(litFeatureWords), ...(more > 0 ? [`And ${more} more, all in the figures.`] : [])],
  };
}

function phaseLine(phases: readonly MoonPhase[], zone: string): string {
  const words = phases.map(
    ({ name, at }) => `${PHASE_NAMES[name]} ${shortDayWords(at, zone)} ${clockTime(at, zone)}`,
  );
  const line = listWords(words);
  return `${line.slice(0, 1).toUpperCase()}${line.slice(1)}.`;
}

const PHASE_NAMES: Readonly<Record<MoonPhase["name"], string>> = {
  new: "new Moon",
  "first-quarter": "first quarter",
  full: "full Moon",
  "last-quarter": "last quarter",
};

function featureSection({ bestNights, nightsSearched, times }: MoonTonight, feature: LunarFeature): Section {
  const zone = times.night.timeZone;
  const heading = `${feature.name}: ${kindWords(feature.kind)}, ${Math.round(feature.diameterKm)} km`;
  if (bestNights.length === 0) {
    return {
      heading,
      lines: [
        feature.line,
        `In ${nightsSearched} nights the Moon is never ${MOON_LEAST_ALTITUDE_DEG}° up with the Sun down while the Sun stands ${TERMINATOR.lowestDeg}° to ${TERMINATOR.highestDeg}° over it; ask for more “nights”.`,
      ],
    };
  }
  return {
    heading,
    lines: [feature.line],
    table: {
      columns: ["Night", "When", "Moon", "Sun there", "Light"],
      rows: bestNights.map((night) => [
        shortDayWords(night.best, zone),
        clockSpan(night.window, zone),
        `${Math.round(night.moonAltitudeDeg)}°`,
        `${night.sunAltitudeDeg.toFixed(1)}°`,
        night.morning ? "morning" : "evening",
      ]),
    },
  };
}

function followUps(request: Request, { feature, lit }: MoonTonight): Answer["next"] {
  const kept = keptOptions(request, ["site", "night"]);
  const [one] = [...prominent(lit)].sort((a, b) => b.feature.diameterKm - a.feature.diameterKm);
  return [
    ...(feature === null && one !== undefined
      ? [
          {
            label: `Best nights for ${one.feature.name}`,
            command: "moon",
            options: { ...kept, feature: one.feature.name },
          },
        ]
      : []),
    { label: "The planets", command: "planets", options: kept },
    { label: "What comes in the sky", command: "events", options: kept },
  ];
}
