/**
 * `exposure`: which subs, how many, what limits the picture and what would help.
 *
 * @packageDocumentation
 */
import { totalHours } from "../core/interval.ts";
import type { Filter } from "../core/rig/rig.ts";
import type { Answer, FollowUp, Section } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { asSet, exposureAsked, filtersToSplit } from "./exposure-asked.ts";
import { exposureAssumptions } from "./exposure-assumptions.ts";
import { assumedBeside, type Beside, besideSection, splitSection } from "./exposure-beside.ts";
import { exposureCharts } from "./exposure-charts.ts";
import { exposureFigures } from "./exposure-figures.ts";
import { type ExposureSum, exposureSum } from "./exposure-sum.ts";
import type { ExposureTarget } from "./exposure-window.ts";
import { keptOptions } from "./kept-options.ts";
import { endToSunriseMinutes, pointingAt } from "./pointings.ts";
import { filterOf } from "./read/filter.ts";
import {
  defineCompleted,
  defineNumber,
  defineText,
  FILTER,
  NIGHT,
  RIG,
  SITE,
  SKY,
  TARGET_IF_ANY,
} from "./read/options.ts";
import { cameraRigOf } from "./read/rig.ts";
import { siteOf } from "./read/site.ts";
import { targetIfAny } from "./read/target.ts";
import type { Request } from "./request.ts";
import { type Situation, situationOf } from "./situation.ts";
import {
  bandSection,
  exposureSummary,
  filterWords,
  signalSection,
  subsSection,
  windowLines,
} from "./words/exposure-words.ts";
import { helpSection, limitSection } from "./words/noise-words.ts";
import { targetInSentence, targetName } from "./words/target-words.ts";

export const exposure: Command = {
  definition: {
    name: "exposure",
    description: "How long a sub, how many, what limits the picture, what would help most",
    options: [
      TARGET_IF_ANY,
      RIG,
      FILTER,
      SITE,
      NIGHT,
      SKY,
      defineNumber("hours", "Hours at hand; default: the target's window"),
      defineNumber("share", "Noise that read noise may add, percent; default 5"),
      defineText("star", "A star not to burn out: its magnitude or name"),
      defineText("gain", "The sensor's setting: gain 100, ISO 800"),
      defineNumber("sensor-temp", "The sensor's temperature, °C"),
      defineNumber("sub", "A sub of your own, seconds, in place of the recommended one"),
      defineNumber("brightness", "The object's surface, V mag/arcsec²"),
      defineNumber("rayleigh", "The object's surface in its lines, Rayleigh"),
      defineNumber("snr", "Signal-to-noise wanted in a patch of 10″; default 5"),
      defineNumber("seeing", "Blur of a star, full width at half maximum, arcseconds"),
      defineText("split", "Filters to split the time between: Hα, [O III]"),
      defineCompleted("other-rig", "Another rig, saved or described, to set beside it"),
      defineCompleted("other-site", "Another place to set beside it: a site, or latitude, longitude"),
    ],
  },
  audience: "member",

  async answer(request, context) {
    const target = deepSkyTarget(request, context);
    const rig = asSet(request, await cameraRigOf(request, context));
    const filter = filterOf(request, rig);
    const asked = exposureAsked(request, context);
    const split = filtersToSplit(request, rig);
    const otherRig =
      request.options["other-rig"] === undefined ? null : await cameraRigOf(request, context, "other-rig");
    const situation = await situationOf(request, context);
    const otherSituation = await otherSituationOf(request, context);
    const sum = exposureSum({ situation, rig, filter, target, asked });
    return describe(request, sum, {
      split: split.map((each) => splitSum(sum, each, split.length)),
      otherRig:
        otherRig === null
          ? null
          : exposureSum({ situation, rig: otherRig, filter: filterOf(request, otherRig), target, asked }),
      otherSite:
        otherSituation === null
          ? null
          : exposureSum({ situation: otherSituation, rig, filter, target, asked }),
    });
  },
};

/** Bodies of the solar system are shot in another way: these sums do not hold for them. */
function deepSkyTarget(request: Request, context: Context): ExposureTarget | null {
  const target = targetIfAny(request, context);
  if (target === null || target.kind !== "body") return target;
  throw new AskError(
    "not-deep-sky",
    "target",
    `“target”: these sums are for the deep sky, not for ${targetInSentence(target)}; name an object such as M33, or leave it out for the zenith.`,
  );
}

/** The same question from another place; its own sky counts there. */
async function otherSituationOf(request: Request, context: Context): Promise<Situation | null> {
  const named = request.options["other-site"];
  if (named === undefined) return null;
  // Names the option at fault in its own words.
  await siteOf(request, context, "other-site");
  const { sky: _, ...options } = request.options;
  return situationOf({ ...request, options: { ...options, site: named } }, context);
}

function splitSum(sum: ExposureSum, filter: Filter, parts: number): ExposureSum {
  const { question } = sum;
  const hours = (question.asked.hours ?? totalHours(sum.used)) / parts;
  return exposureSum({ ...question, filter, asked: { ...question.asked, hours: hours > 0 ? hours : null } });
}

function describe(request: Request, sum: ExposureSum, beside: Beside): Answer {
  const { question } = sum;
  const { target, situation } = question;
  const assumptions = [...exposureAssumptions(sum), ...assumedBeside(beside)];
  const cautions = cautionsFor({
    pointings:
      target === null
        ? []
        : [...sum.windows.flatMap(({ start, end }) => [start, end]), request.at].map((at) =>
            pointingAt(situation.site, target, at),
          ),
    endToSunriseMinutes: endToSunriseMinutes(situation.times, sum.used.at(-1)?.end ?? null),
  });
  const sections: readonly (Section | null)[] = [
    subsSection(sum),
    { heading: "When", lines: windowLines(sum) },
    limitSection(sum),
    bandSection(sum),
    signalSection(sum),
    helpSection(sum.helps),
    besideSection(sum, beside),
    splitSection(beside.split),
    { heading: "Assumed", lines: assumptions },
  ];
  return {
    title: titleWords(sum),
    summary: exposureSummary(sum),
    sections: sections.filter(
      (section): section is Section =>
        section !== null && (section.lines.length > 0 || section.table !== undefined),
    ),
    charts: exposureCharts(
      sum,
      cautions.map(({ text }) => text),
    ),
    cautions,
    next: followUps(request, sum),
    figures: exposureFigures(sum, beside, assumptions),
    credits: situation.report.credits,
  };
}

function titleWords({ question }: ExposureSum): string {
  const { target, filter, rig, situation } = question;
  const what = target === null ? "Exposure" : targetName(target);
  const sample = situation.verdict.sample ? " (sample forecast)" : "";
  return `${what} ${filterWords(filter)} with ${rig.name}${sample}`;
}

function followUps(request: Request, sum: ExposureSum): FollowUp[] {
  const { target, asked } = sum.question;
  const kept = keptOptions(request, Object.keys(request.options));
  const hours = asked.hours ?? totalHours(sum.used);
  const more: FollowUp = {
    label: "An hour more",
    command: "exposure",
    options: { ...kept, hours: Number((hours + 1).toFixed(2)) },
  };
  if (target === null) return [more];
  return [
    { label: "Frame it", command: "framing", options: keptOptions(request, ["target", "rig"]) },
    { label: "Its night", command: "target", options: keptOptions(request, ["target", "rig", "site"]) },
    more,
  ];
}
