/**
 * `tonight`: what fits the night, the rig and the Moon, in a line each, and a run card for the first.
 *
 * @packageDocumentation
 */

import { NO_FILTER } from "../config/filters.ts";
import { POLAR_MOUNTS } from "../config/mount-rules.ts";
import { KIND_BRIGHTNESS, PREFERENCE, RANKING_RULES, VISUAL_RULES } from "../config/ranking.ts";
import { RUN_CARD_RULES } from "../config/run-card.ts";
import { type Interval, intervalHours, longestInterval, totalHours } from "../core/interval.ts";
import { type BegunTarget, begunTargets } from "../core/log/progress.ts";
import type { Rig } from "../core/rig/rig.ts";
import { type CardTarget, type RunCard, runCard } from "../core/targets/run-card.ts";
import { type FitsTonight, type FittingTarget, fitsTonight } from "../core/targets/tonight.ts";
import type { Answer, Figure, FollowUp, Section } from "./answer.ts";
import { columnsOf } from "./catalogue-columns.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { keptOptions } from "./kept-options.ts";
import { clearanceOf, rigTonight } from "./looking.ts";
import { nightPicture } from "./night-picture.ts";
import { objectFigures, siteFigures, spanFigures } from "./object-figures.ts";
import { endToSunriseMinutes, pointingAt } from "./pointings.ts";
import { poleStepWords } from "./pole-step.ts";
import { filterIfAny } from "./read/filter.ts";
import { wholeNumberOption } from "./read/numbers.ts";
import { defineWhole, FILTER, NIGHT, RIG, SITE, SKY } from "./read/options.ts";
import { rigOf } from "./read/rig.ts";
import type { Request } from "./request.ts";
import { type Situation, situationOf } from "./situation.ts";
import { clockSpan, dateWords, durationWords } from "./words/clock.ts";
import { reasonSentences, worthWords } from "./words/fit-words.ts";
import { darknessWords, moonWords } from "./words/night-words.ts";
import { runCardLines } from "./words/run-card-words.ts";
import { targetName } from "./words/target-words.ts";
import { lowestCelsius, verdictSentence } from "./words/weather-words.ts";

const LIMIT = { min: 1, max: 50, unit: "targets" };
const DEFAULT_LIMIT = 10;
/** Below this a clear gap is no use: the list is made as if it cleared, and says so. */
const LEAST_CLEAR_HOURS = 0.5;
const PICTURED = 3;

export const tonight: Command = {
  definition: {
    name: "tonight",
    description: "What fits this night at your site, with your rig, under this Moon",
    options: [SITE, NIGHT, RIG, FILTER, SKY, defineWhole("limit", "How many targets, 1 to 50")],
  },
  audience: "member",

  async answer(request, context) {
    return describeTonight(request, await evening(request, context));
  },
};

/** Everything `tonight` knows before it is put in words. */
export type Evening = {
  readonly situation: Situation;
  readonly rig: Rig;
  readonly fits: FitsTonight;
  readonly card: RunCard | null;
  /** The list is made as if the night cleared: the forecast leaves no useful gap. */
  readonly ifItClears: boolean;
  /** What the member has begun or wants, by object. */
  readonly begun: ReadonlyMap<string, BegunTarget>;
};

/** Works the evening out: situation, ranking, run card. */
export async function evening(request: Request, context: Context): Promise<Evening> {
  const rig = await rigOf(request, context);
  const asked = filterIfAny(request, rig);
  const limit = wholeNumberOption(request, "limit", LIMIT) ?? DEFAULT_LIMIT;
  const situation = await situationOf(request, context);
  const own = rig.kind === "camera" && rig.filters.length > 0 ? rig.filters : [NO_FILTER];
  const filters = asked === null ? own : [asked];
  const { clear, conditions } = situation;
  const begun = await begunBy(request, context);
  const lookings = filters.map((filter) => rigTonight(rig, filter, conditions, request.at));
  const ifItClears = clear !== null && totalHours(clear) < LEAST_CLEAR_HOURS;
  const fits = fitsTonight({
    columns: columnsOf(context.catalogue),
    conditions,
    times: situation.times,
    rig,
    clearance: clearanceOf(rig, situation.site),
    clear: ifItClears ? null : clear,
    lookings,
    rules: RANKING_RULES,
    visualRules: VISUAL_RULES,
    byKind: KIND_BRIGHTNESS,
    limit,
    preferred: preferenceOf(begun),
  });
  return { situation, rig, fits, card: cardOf(situation, rig, fits), ifItClears, begun };
}

/** What the member has begun or wants, by object. */
async function begunBy(request: Request, context: Context): Promise<ReadonlyMap<string, BegunTarget>> {
  const { log } = context.books;
  const [tallies, wanted] = await Promise.all([
    log.inHand(request.club, request.member.id),
    log.wanted(request.club, request.member.id),
  ]);
  return new Map(begunTargets(tallies, wanted).map((begun) => [begun.object, begun]));
}

/** What is begun comes first, what is done last. */
function preferenceOf(begun: ReadonlyMap<string, BegunTarget>): ReadonlyMap<string, number> {
  const done = ({ filters }: BegunTarget) => filters.every(({ leftHours }) => leftHours === 0);
  return new Map(
    [...begun].map(([object, target]) => [object, done(target) ? PREFERENCE.done : PREFERENCE.begun]),
  );
}

function cardOf({ times, verdict }: Situation, rig: Rig, fits: FitsTonight): RunCard | null {
  const [first, ...others] = fits.targets.map(cardTarget);
  if (first === undefined) return null;
  const polar = POLAR_MOUNTS.includes(rig.mount);
  return runCard({ times, first, others, dew: verdict.dew, polar }, RUN_CARD_RULES);
}

/** The evening by the clock, in lines; none without a card. */
export function cardLines({ situation, card }: Evening): string[] {
  const { site } = situation;
  if (card === null) return [];
  return runCardLines(card, site.timeZone, (at) => poleStepWords(site, at));
}

function cardTarget({ target, night }: FittingTarget): CardTarget {
  const { usableHours, countingHours } = night.counted;
  return {
    name: shortName(target),
    windows: night.windows,
    worthOfHour: usableHours > 0 ? countingHours / usableHours : 0,
    meridianFlip: night.meridianFlip,
  };
}

/** What a target is asked for by: its designation. */
export function shortName(target: FittingTarget["target"]): string {
  return target.kind === "object" ? target.object.id : targetName(target);
}

function describeTonight(request: Request, found: Evening): Answer {
  const { situation, rig, fits } = found;
  const { site, times, verdict, report } = situation;
  const cautions = eveningCautions(found);
  const summary = summaryWords(found);
  return {
    title: `Fits tonight: ${site.name}, ${dateWords(times.night.date)}${verdict.sample ? " (sample forecast)" : ""}`,
    summary,
    sections: [
      {
        heading: `With ${rig.name}`,
        lines: fits.targets.map((fit) => targetLine(fit, site.timeZone, begunOf(found, fit))),
      },
      { heading: "The evening by the clock", lines: cardLines(found) },
      smallPrint(found),
    ].filter(({ lines }) => lines.length > 0),
    charts: fits.targets.length === 0 ? [] : [eveningPicture(found)],
    cautions,
    next: followUps(request, found),
    figures: eveningFigures(found),
    credits: report.credits,
  };
}

/** What is begun of a target; `null` of one that is not. */
function begunOf({ begun }: Evening, { target }: FittingTarget): BegunTarget | null {
  return target.kind === "object" ? (begun.get(target.object.id) ?? null) : null;
}

/** A line each: name, when, why, what is still wanted. */
export function targetLine(fit: FittingTarget, zone: string, begun: BegunTarget | null): string {
  const [, ...why] = reasonSentences(fit, zone, begun);
  const span = longestInterval(fit.night.windows);
  const when = span === null ? "" : `, ${clockSpan(span, zone)}`;
  const worth = fit.use === null ? ` (${worthWords(fit)})` : "";
  return `${targetName(fit.target)}${when}${worth}. ${why.join(" ")}`.trim();
}

function summaryWords({ situation, fits, ifItClears }: Evening): string {
  const { verdict, times } = situation;
  const weather = verdict.kind === "unknown" ? darknessWords(times) : verdictSentence(verdict, times);
  const [best] = fits.targets;
  const suffix = ifItClears ? " What follows is for the case that it clears." : "";
  if (best === undefined) return `${weather} Nothing in the catalogue fits this night.`;
  const span = longestInterval(best.night.windows);
  const when = span === null ? "" : ` from ${clockSpan(span, situation.site.timeZone)}`;
  return `${weather} First choice: ${targetName(best.target)}${when}.${suffix}`;
}

function smallPrint({ situation, rig, fits }: Evening): Section {
  const { verdict, times, report } = situation;
  return {
    heading: "",
    lines: [
      moonWords(times),
      ...(verdict.kind === "unknown" ? ["Cloud is not known: the astronomy alone."] : verdict.warnings),
      ...(rig.kind === "camera" ? ["“Worth” counts hours as if overhead and without Moon."] : []),
      `${fits.considered.toLocaleString("en-GB")} objects weighed by hours that count, brightness, size in the field and filter.`,
      ...situation.assumptions,
      ...rig.assumptions,
      ...report.problems,
    ],
  };
}

/** The cautions of going out to all that is proposed. */
export function eveningCautions({
  situation,
  fits,
}: Pick<Evening, "situation" | "fits">): Answer["cautions"] {
  const { site, times, verdict } = situation;
  const edges = (windows: readonly Interval[]) => windows.flatMap(({ start, end }) => [start, end]);
  const ends = fits.targets.flatMap(({ night }) => night.windows.map(({ end }) => end.getTime()));
  return cautionsFor({
    pointings: fits.targets.flatMap(({ target, night }) =>
      edges(night.windows).map((at) => pointingAt(site, target, at)),
    ),
    endToSunriseMinutes: endToSunriseMinutes(times, ends.length === 0 ? null : new Date(Math.max(...ends))),
    lowestCelsius: verdict.kind === "unknown" ? null : lowestCelsius(verdict, times),
    dewExpected: verdict.dew.length > 0,
    mainsPower: verdict.dew.length > 0,
  });
}

/** The night chart of the first three targets. */
export function eveningPicture({ situation, fits }: Evening): Answer["charts"][number] {
  const { site, times, verdict } = situation;
  const shown = fits.targets.slice(0, PICTURED);
  const window = longestInterval(shown[0]?.night.windows ?? []);
  const names = shown.map(({ target }) => shortName(target));
  return nightPicture({
    site,
    times,
    hours: verdict.kind === "unknown" ? [] : verdict.hours,
    paths: shown.map(({ target, night }) => ({
      name: shortName(target),
      track: night.track,
      windows: night.windows,
    })),
    window: window === null ? null : { ...window, label: durationWords(intervalHours(window)) },
    title:
      window === null
        ? darknessWords(times).replace(/\.$/, "")
        : `${names[0]} is good from ${clockSpan(window, site.timeZone)}`,
    alt: `The heights of ${names.join(", ")} through the night, heavy where they can be used. ${darknessWords(times)} ${moonWords(times)}`,
    cautions: eveningCautions({ situation, fits }).map(({ text }) => text),
  });
}

function followUps(request: Request, { fits }: Evening): FollowUp[] {
  const kept = keptOptions(request, ["site", "night", "rig", "filter"]);
  const asked = fits.targets.slice(0, PICTURED).map(({ target }) => ({
    label: shortName(target),
    command: "target",
    options: { target: shortName(target), ...kept },
  }));
  const placed = keptOptions(request, ["site", "night"]);
  return [...asked, { label: "The coming nights", command: "forecast", options: placed }];
}

function eveningFigures(found: Evening): { readonly [name: string]: Figure } {
  const { situation, rig, fits, card, ifItClears } = found;
  const { site, times, verdict } = situation;
  return {
    night: times.night.date,
    site: siteFigures(site),
    rig: rig.name,
    verdict: verdict.kind === "unknown" ? null : verdict.kind,
    outlook: verdict.outlook,
    ifItClears,
    targets: fits.targets.map((fit) => ({
      object: objectFigures(fit.target, site, times.night.noon),
      filter: fit.filter.name,
      windows: spanFigures(fit.night.windows),
      usableHours: fit.night.counted.usableHours,
      countingHours: fit.night.counted.countingHours,
      moonCost: fit.night.counted.moonCost,
      fillFraction: fit.fillFraction,
      objectInField: fit.objectInField,
      peakAltitudeDeg: fit.night.peak?.altitudeDeg ?? null,
      reach: fit.reach,
      meridianFlip: fit.night.meridianFlip?.toISOString() ?? null,
      reasons: reasonSentences(fit, site.timeZone, begunOf(found, fit)),
      begun: begunFigures(begunOf(found, fit)),
    })),
    considered: fits.considered,
    runCard:
      card === null
        ? null
        : card.steps.map((step) => ({
            at: step.at.toISOString(),
            step: step.kind,
            target: "target" in step ? step.target : null,
          })),
    assumptions: [...situation.assumptions, ...rig.assumptions],
  };
}

function begunFigures(begun: BegunTarget | null): Figure {
  if (begun === null) return null;
  return begun.filters.map(({ passband, inHandHours, wantedHours, leftHours }) => ({
    filter: passband,
    inHandHours,
    wantedHours,
    leftHours,
  }));
}
