/**
 * `exposure`: which subs, how many, what limits the picture and what would help.
 *
 * @packageDocumentation
 */
import { totalHours } from "../core/interval.ts";
import type { CameraRig, Filter } from "../core/rig/rig.ts";
import { fiveHundredRuleSeconds, michaudSeconds } from "../core/rig/trail-limits.ts";
import type { Answer, Figure, FollowUp, Section } from "./answer.ts";
import { isoOrNull } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { cautionsFor } from "./cautions.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { asSet, exposureAsked, filtersToSplit } from "./exposure-asked.ts";
import { exposureAssumptions } from "./exposure-assumptions.ts";
import { exposureCharts } from "./exposure-charts.ts";
import { type ExposureSum, type ExposureTarget, exposureSum } from "./exposure-sum.ts";
import { objectFigures, spanFigures } from "./object-figures.ts";
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
  helpSection,
  lightWords,
  limitSection,
  secondsWords,
  signalSection,
  subsSection,
  windowLines,
} from "./words/exposure-words.ts";
import { targetName } from "./words/target-words.ts";

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
    `“target”: these sums are for the deep sky, not for ${target.body}; name an object such as M33, or leave it out for the zenith.`,
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

type Beside = {
  readonly split: readonly ExposureSum[];
  readonly otherRig: ExposureSum | null;
  readonly otherSite: ExposureSum | null;
};

function describe(request: Request, sum: ExposureSum, beside: Beside): Answer {
  const { question } = sum;
  const { target, rig, filter, situation } = question;
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
    figures: figuresOf(sum, beside, assumptions, { rig, filter }),
    credits: situation.report.credits,
  };
}

/** What was assumed of the other rig and the other place. */
function assumedBeside({ otherRig, otherSite }: Beside): string[] {
  const rig = otherRig?.question.rig;
  return [
    ...(rig?.assumptions ?? []).map((assumption) => `${rig?.name}: ${assumption}`),
    ...(otherSite?.question.situation.assumptions ?? []),
  ];
}

function filterWords(filter: Filter): string {
  return filter.bands.length === 0 ? "without a filter" : `through ${filter.name}`;
}

function titleWords({ question }: ExposureSum): string {
  const { target, filter, rig, situation } = question;
  const what = target === null ? "Exposure" : targetName(target);
  const sample = situation.verdict.sample ? " (sample forecast)" : "";
  return `${what} ${filterWords(filter)} with ${rig.name}${sample}`;
}

/** Two rigs, two places: what an hour of one is worth of the other, on a faint patch of sky. */
function besideSection(sum: ExposureSum, { otherRig, otherSite }: Beside): Section {
  const lines: string[] = [];
  const through = filterWords(sum.question.filter);
  if (otherRig !== null) {
    const [other, own] = [otherRig, sum].map(({ question }) => question.rig.name);
    lines.push(
      `An hour ${through} with ${other} is worth ${lightWords(otherRig.rate / sum.rate)} with ${own}; its subs: ${secondsWords(otherRig.plan.subSeconds)}.`,
    );
  }
  if (otherSite !== null) {
    const [other, own] = [otherSite, sum].map(({ question }) => question.situation.site.name);
    lines.push(
      `An hour ${through} at ${other} is worth ${lightWords(otherSite.rate / sum.rate)} at ${own}; its subs: ${secondsWords(otherSite.plan.subSeconds)}.`,
      `Sky ${otherSite.skyMagArcsec2.toFixed(2)} against ${sum.skyMagArcsec2.toFixed(2)} mag/arcsec² on the mean.`,
    );
  }
  if (lines.length > 0)
    lines.push("Worth is counted on a faint patch of sky, in the time to the same signal-to-noise.");
  return { heading: "Side by side", lines };
}

/** The time split evenly, and as signal-to-noise would have it. */
function splitSection(split: readonly ExposureSum[]): Section | null {
  if (split.length === 0) return null;
  // Infinite where nothing is known: no share follows then.
  const needs = split.map((each) => each.signalToNoise?.hoursToWanted ?? Number.POSITIVE_INFINITY);
  const needed = needs.reduce((total, hours) => total + hours, 0);
  const all = Number.isFinite(needed);
  const light = split.reduce((total, each) => total + each.plan.totalSeconds / 3600, 0);
  return {
    heading: "Split between filters",
    lines: all
      ? ["The last column would bring all to the same signal-to-noise in the same time."]
      : ["Where the object's brightness in a line is not known, its share is for you to weigh."],
    table: {
      columns: ["", "subs", "light", "signal-to-noise", "for equal"],
      rows: split.map((each, index) => [
        each.question.filter.name,
        `${each.plan.subCount} × ${secondsWords(each.plan.subSeconds)}`,
        lightWords(each.plan.totalSeconds / 3600),
        each.signalToNoise === null ? "–" : String(Number(each.signalToNoise.perPatch.toPrecision(2))),
        all && needed > 0 ? lightWords((light * (needs[index] ?? 0)) / needed) : "–",
      ]),
    },
  };
}

function followUps(request: Request, sum: ExposureSum): FollowUp[] {
  const { target, asked } = sum.question;
  const kept: Record<string, string | number | boolean> = {};
  for (const [option, value] of Object.entries(request.options)) {
    if (typeof value !== "object") kept[option] = value;
  }
  const hours = asked.hours ?? totalHours(sum.used);
  const more: FollowUp = {
    label: "An hour more",
    command: "exposure",
    options: { ...kept, hours: Number((hours + 1).toFixed(2)) },
  };
  if (target === null) return [more];
  const named = { target: String(request.options.target) };
  const rigged = typeof request.options.rig === "string" ? { rig: request.options.rig } : {};
  const sited = typeof request.options.site === "string" ? { site: request.options.site } : {};
  return [
    { label: "Frame it", command: "framing", options: { ...named, ...rigged } },
    { label: "Its night", command: "target", options: { ...named, ...rigged, ...sited } },
    more,
  ];
}

function sumFigures(sum: ExposureSum): { readonly [name: string]: Figure } {
  const { plan, question, signalToNoise } = sum;
  const { leading } = plan.leading.rates;
  return {
    skyMagArcsec2: sum.skyMagArcsec2,
    skyElectronsPerPixelPerSecond: leading.glow + leading.moon,
    moonElectronsPerPixelPerSecond: leading.moon,
    darkElectronsPerPixelPerSecond: leading.dark,
    objectElectronsPerPixelPerSecond: leading.signalKnown ? leading.signal : null,
    readNoiseElectrons: leading.readNoiseElectrons,
    shortestSubSeconds: finiteOrNull(plan.leading.shortestSubSeconds),
    shortestBySkySeconds: finiteOrNull(plan.leading.shortestBySkySeconds),
    longestSubSeconds: Math.min(...plan.bands.map((band) => band.longestSubSeconds)),
    subSeconds: plan.subSeconds,
    subCount: plan.subCount,
    totalSeconds: plan.totalSeconds,
    elapsedSeconds: plan.elapsedSeconds,
    limitedBy: plan.limitedBy,
    noiseShares: { ...plan.leading.shares },
    channel: leading.channel.channel,
    pixelShare: leading.pixelShare,
    saturationElectrons: question.rig.mode.saturationElectrons,
    setting: question.rig.mode.setting,
    sensorCelsius: sum.sensorCelsius,
    airmass: sum.airmasses,
    moonCost: sum.moonCost,
    signalToNoise:
      signalToNoise === null
        ? null
        : {
            perPixel: signalToNoise.perPixel,
            perPatch: signalToNoise.perPatch,
            hoursToWanted: finiteOrNull(signalToNoise.hoursToWanted),
          },
    storageBytes: sum.storageBytes,
  };
}

function figuresOf(
  sum: ExposureSum,
  beside: Beside,
  assumptions: readonly string[],
  { rig, filter }: { readonly rig: CameraRig; readonly filter: Filter },
): { readonly [name: string]: Figure } {
  const { situation, target, asked } = sum.question;
  const { widthMm, heightMm, pixelUm } = rig.sensor;
  return {
    object: target === null ? null : objectFigures(target, situation.site, situation.times.night.noon),
    night: situation.times.night.date,
    rig: rig.name,
    filter: filter.name,
    windows: spanFigures(sum.windows),
    used: spanFigures(sum.used),
    meridianFlip: isoOrNull(sum.flipAt),
    ...sumFigures(sum),
    readNoiseShare: asked.share,
    starMagnitude: sum.starMagnitude,
    bands: sum.plan.bands.map(({ rates, shortestSubSeconds, longestSubSeconds }, index) => ({
      name: rates.band.name,
      channels: rates.channels.map(({ channel }) => channel.channel),
      skyElectronsPerPixelPerSecond: rates.leading.glow + rates.leading.moon,
      shortestSubSeconds: finiteOrNull(shortestSubSeconds),
      longestSubSeconds,
      moonCost: sum.moonCosts[index] ?? null,
    })),
    helps: sum.helps.map((help) => ({ ...help })),
    trailLimits: {
      fiveHundredRuleSeconds: fiveHundredRuleSeconds({
        ...rig,
        sensorDiagonalMm: Math.hypot(widthMm, heightMm),
      }),
      michaudSeconds: michaudSeconds({ ...rig, pixelUm }, 0),
    },
    split: beside.split.map((each) => ({ filter: each.question.filter.name, ...sumFigures(each) })),
    otherRig:
      beside.otherRig === null
        ? null
        : { hourIsWorth: beside.otherRig.rate / sum.rate, ...sumFigures(beside.otherRig) },
    otherSite:
      beside.otherSite === null
        ? null
        : { hourIsWorth: beside.otherSite.rate / sum.rate, ...sumFigures(beside.otherSite) },
    assumptions: [...assumptions],
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
