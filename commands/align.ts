/**
 * `align`: the pole star on the reticle, stars to align and focus on, flip, drift, dew.
 *
 * @packageDocumentation
 */
import { ALIGNMENT_RULES, DRIFT_WATCH_MINUTES, FLIP_MINUTES, POLAR_MOUNTS } from "../config/mount-rules.ts";
import { alignFigures } from "./align-figures.ts";
import type { Alignment } from "./alignment.ts";
import type { Answer, Section } from "./answer.ts";
import { cautionsFor } from "./cautions.ts";
import type { PoleChart } from "./chart.ts";
import type { Command } from "./command.ts";
import { keptOptions } from "./kept-options.ts";
import { pointingAt } from "./pointings.ts";
import { TIME } from "./read/moment.ts";
import { defineFlag, defineNumber, NIGHT, RIG, SITE, TARGET_IF_ANY } from "./read/options.ts";
import type { Request } from "./request.ts";
import { type SettingUp, settingUp } from "./setting-up.ts";
import type { Situation } from "./situation.ts";
import {
  alignmentLines,
  damageLines,
  driftMethodLines,
  flipLine,
  focusLine,
  hiddenPoleWords,
  poleLines,
  poleStarWords,
  turnLine,
} from "./words/align-words.ts";
import { clockSpan, clockTime, dateWords } from "./words/clock.ts";
import { dialWords } from "./words/dial-words.ts";
import { listWords } from "./words/sky.ts";
import { shortName, targetName } from "./words/target-words.ts";

export const align: Command = {
  definition: {
    name: "align",
    description: "Pole star on the reticle, stars to align and focus on, flip, drift and dew",
    options: [
      SITE,
      RIG,
      TARGET_IF_ANY,
      NIGHT,
      TIME,
      defineNumber("error", "Polar error to reckon with, arcminutes"),
      defineNumber("sub", "Length of a sub, seconds"),
      defineFlag("goto", "Whether the mount finds objects by itself"),
    ],
  },
  audience: "member",

  async answer(request, context) {
    return describeAlignment(request, await settingUp(request, context));
  },
};

function describeAlignment(request: Request, found: SettingUp): Answer {
  const { rig, situation, sky, target, damage } = found;
  const { site, times, verdict, report } = situation;
  const zone = site.timeZone;
  const [star] = sky.poleStars;
  const polar = POLAR_MOUNTS.includes(rig.mount);
  const hidden = hiddenPoleWords(sky.view, star.star.name);
  const name = target === null ? null : targetName(target.target);
  const guided = rig.kind === "camera" && rig.guided;
  const cautions = alignmentCautions(found);
  const sections: Section[] = [
    { heading: "Pole", lines: poleSection(found, polar) },
    {
      heading: "Stars to align on",
      lines: alignmentLines(sky.choice, ALIGNMENT_RULES.faintestMags[0] ?? 0),
    },
    { heading: "Focus", lines: [focusLine(sky.focus, name)] },
    { heading: "Through the night", lines: nightLines(found, name) },
    { heading: "If the axis is off", lines: polar ? damageLines(damage, guided) : [] },
    { heading: "", lines: smallPrint(found, name) },
  ];
  return {
    title: `Setting up at ${site.name}, ${dateWords(times.night.date)}, ${clockTime(sky.at, zone)}${verdict.sample ? " (sample forecast)" : ""}`,
    summary: polar ? (hidden ?? `Put ${poleStarWords(star)}.`) : focusLine(sky.focus, name),
    sections: sections.filter(({ lines }) => lines.length > 0),
    charts:
      polar && hidden === null
        ? [
            poleChart(
              sky,
              zone,
              cautions.map(({ text }) => text),
            ),
          ]
        : [],
    cautions,
    next: followUps(request, target === null ? null : shortName(target.target)),
    figures: alignFigures(found),
    credits: report.credits,
  };
}

/** What the night does to the mount: flip or turn of the field, and dew. */
function nightLines({ rig, situation, target, turn }: SettingUp, name: string | null): readonly string[] {
  const zone = situation.site.timeZone;
  return [
    ...(name !== null && target !== null && rig.mount === "german"
      ? [flipLine(name, target.night.meridianFlip, FLIP_MINUTES, zone)]
      : []),
    ...(name !== null && rig.kind === "camera" && rig.mount === "altazimuth"
      ? [turnLine(turn, name, zone)]
      : []),
    ...dewLines(situation),
  ];
}

function smallPrint(
  { situation, sky, target, assumptions }: SettingUp,
  name: string | null,
): readonly string[] {
  return [
    ...(sky.byDay ? ["The Sun is up: the stars named here cannot be seen now. Ask with “time”."] : []),
    ...(target?.chosen
      ? [`Reckoned for ${name}, which fits tonight first; name a “target” for another.`]
      : []),
    ...assumptions,
    ...situation.report.problems,
  ];
}

/** The reticle, or the drift method where the pole star is no use; nothing to set without a polar axis. */
function poleSection({ rig, situation, sky }: SettingUp, polar: boolean): readonly string[] {
  if (!polar) {
    return [
      `A mount of the kind “${rig.mount}” has no polar axis to set; level it and go by the stars below.`,
    ];
  }
  const { site } = situation;
  if (sky.view.kind === "seen") return poleLines(sky.poleStars);
  return driftMethodLines(sky.pole === "north", site.latitudeDeg, DRIFT_WATCH_MINUTES);
}

/** Dew and frost hours; that nothing is known is said too. */
function dewLines({ verdict, site }: Situation): string[] {
  if (verdict.kind === "unknown") return ["Dew is not known: there is no forecast."];
  if (verdict.dew.length === 0) return ["No dew or frost on optics is expected in the dark hours."];
  const spans = verdict.dew.map((span) => `${span.kind} from ${clockSpan(span, site.timeZone)}`);
  return [`On optics without heat: ${listWords(spans)}.`];
}

function poleChart(sky: Alignment, zone: string, cautions: readonly string[]): PoleChart {
  const [{ star, dial, poleDistanceArcmin }] = sky.poleStars;
  const time = clockTime(sky.at, zone);
  return {
    kind: "pole",
    name: "pole",
    title: `${star.name} stands at ${dialWords(dial.inverted)} in a finder that inverts`,
    alt: `Two clock faces for ${time}. In a finder that inverts, ${star.name} stands at ${dialWords(dial.inverted)}; by eye or upright at ${dialWords(dial.correct)}. It is ${poleDistanceArcmin.toFixed(1)} arcminutes from the pole.`,
    caption: `${time}, facing ${sky.pole}; ${poleDistanceArcmin.toFixed(1)}′ from the pole`,
    cautions,
    dials: [
      { caption: "Finder that inverts", hours: dial.inverted, words: dialWords(dial.inverted) },
      { caption: "By eye, or upright", hours: dial.correct, words: dialWords(dial.correct) },
    ],
  };
}

/** By day, setting up at all; the stars themselves are chosen clear of a risen Sun. */
function alignmentCautions({ situation, sky, target }: SettingUp): Answer["cautions"] {
  const { site, verdict } = situation;
  const edges = target?.night.windows.flatMap(({ start, end }) => [start, end]) ?? [];
  return cautionsFor({
    solar: sky.byDay || (target?.target.kind === "body" && target.target.body === "Sun"),
    pointings: target === null ? [] : edges.map((at) => pointingAt(site, target.target, at)),
    dewExpected: verdict.dew.length > 0,
    mainsPower: verdict.dew.length > 0,
  });
}

function followUps(request: Request, name: string | null): Answer["next"] {
  const site = keptOptions(request, ["site"]);
  return [
    ...(name === null
      ? []
      : [{ label: "The target's night", command: "target", options: { target: name, ...site } }]),
    { label: "What fits tonight", command: "tonight", options: site },
  ];
}
