/**
 * `tonight`: what fits the night, the rig and the Moon, in a line each, and a run card for the first.
 *
 * @packageDocumentation
 */
import { TARGETS_LISTED } from "../config/input-limits.ts";
import { type Interval, longestInterval } from "../core/interval.ts";
import type { BegunTarget } from "../core/log/progress.ts";
import type { FittingTarget } from "../core/targets/tonight.ts";
import type { Answer, FollowUp, Section } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import { begunOf, type Evening, evening, eveningAssumptions } from "./evening.ts";
import { keptOptions } from "./kept-options.ts";
import { nightPicture } from "./night-picture.ts";
import { endToSunriseMinutes, pointingAt } from "./pointings.ts";
import { poleStepWords } from "./pole-step.ts";
import { defineWhole, FILTER, NIGHT, RIG, SITE, SKY } from "./read/options.ts";
import type { Request } from "./request.ts";
import { eveningFigures } from "./tonight-figures.ts";
import { clockHours, clockSpan, dateWords, durationWords } from "./words/clock.ts";
import { reasonSentences, worthWords } from "./words/fit-words.ts";
import { darknessWords, moonWords } from "./words/night-words.ts";
import { runCardLines } from "./words/run-card-words.ts";
import { shortName, targetName } from "./words/target-words.ts";
import { lowestCelsius, verdictSentence } from "./words/weather-words.ts";

const PICTURED = 3;

export const tonight: Command = {
  definition: {
    name: "tonight",
    description: "What fits this night at your site, with your rig, under this Moon",
    options: [
      SITE,
      NIGHT,
      RIG,
      FILTER,
      SKY,
      defineWhole("limit", `How many targets, ${TARGETS_LISTED.min} to ${TARGETS_LISTED.max}`),
    ],
  },
  audience: "member",

  async answer(request, context) {
    return describeTonight(request, await evening(request, context));
  },
};

/** The evening by the clock, in lines; none without a card. */
export function cardLines({ situation, rig, card }: Evening): string[] {
  const { site } = situation;
  if (card === null) return [];
  return runCardLines(card, rig.kind, site.timeZone, (at) => poleStepWords(site, at));
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
  const choice = ifItClears ? "If it clears, first choice" : "First choice";
  if (best === undefined) return `${weather} Nothing in the catalogue fits this night.`;
  const span = longestInterval(best.night.windows);
  const when = span === null ? "" : ` from ${clockSpan(span, situation.site.timeZone)}`;
  return `${weather} ${choice}: ${targetName(best.target)}${when}.`;
}

function smallPrint(found: Evening): Section {
  const { verdict, times, report } = found.situation;
  return {
    heading: "",
    lines: [
      moonWords(times),
      ...(verdict.kind === "unknown" ? ["Cloud is not known: the astronomy alone."] : verdict.warnings),
      ...(found.fits.targets.length > 0 ? howWeighed(found) : []),
      ...report.problems,
    ],
  };
}

function howWeighed(found: Evening): string[] {
  const { rig, fits } = found;
  const all = fits.considered.toLocaleString("en-GB");
  return [
    ...(rig.kind === "camera" ? ["“Worth” counts hours as if overhead and without Moon."] : []),
    rig.kind === "camera"
      ? `${all} objects weighed by hours that count, brightness, size in the frame and filter.`
      : `${all} objects weighed by hours that count, brightness, contrast and size in the eyepiece.`,
    ...eveningAssumptions(found),
  ];
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
    window: window === null ? null : { ...window, label: durationWords(clockHours([window])) },
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
