/**
 * `log progress`: hours in hand against hours wanted, what tonight adds, when it may be done.
 *
 * @packageDocumentation
 */
import { FINISH_NIGHTS_AT_LEAST, FINISH_WEEKS } from "../config/log-limits.ts";
import { type FinishEstimate, finishEstimate } from "../core/log/finish-estimate.ts";
import { type NightTally, type ProgressLine, progressLines } from "../core/log/progress.ts";
import type { Answer, Figure } from "./answer.ts";
import type { ProgressChart } from "./chart.ts";
import type { Context } from "./context.ts";
import { filedObject, type LogSetting, lastBegunNight, logSetting } from "./log-rows.ts";
import { type TonightAdds, tonightAdds } from "./log-tonight.ts";
import { textOption } from "./read/numbers.ts";
import { defineSubcommand, RIG, SITE, TARGET_IF_ANY } from "./read/options.ts";
import type { Request } from "./request.ts";
import { durationWords, shortDateWords } from "./words/clock.ts";

export const LOG_PROGRESS = defineSubcommand(
  "progress",
  "Hours in hand against hours wanted, by target and filter",
  [TARGET_IF_ANY, SITE, RIG],
);

/** Lines in one chart, and rows in the answer. */
const CHARTED = 4;
const SHOWN = 20;

export async function showProgress(request: Request, context: Context): Promise<Answer> {
  const setting = await logSetting(request, context);
  const { log } = context.books;
  const { club, member } = request;
  const tallies = await log.inHand(club, member.id);
  const named = textOption(request, "target");
  const object = named === null ? null : filedObject(named, "target", request, context);
  const lines = progressLines(tallies, await log.wanted(club, member.id)).filter(
    (line) => object === null || line.object === object,
  );
  const open = lines.filter(({ leftHours }) => leftHours !== 0);
  const adds = await tonightAdds(request, context, setting, open);
  const finish = finishOf(lines, tallies, setting, request);
  return {
    title: object === null ? "Your targets" : `How far ${object} is`,
    summary: summaryWords(lines, object, finish),
    sections: [
      ...(lines.length === 0 ? [] : [{ heading: "In hand", lines: [], table: progressTable(lines) }]),
      { heading: "Tonight", lines: adds.map(addsWords) },
      { heading: "At this pace", lines: finishLines(finish) },
    ].filter((section) => section.lines.length > 0 || section.table !== undefined),
    charts: lines.some(({ steps }) => steps.length > 0) ? [progressChart(lines, object)] : [],
    cautions: [],
    next: [
      { label: "The latest subs", command: "log", options: { subcommand: "list" } },
      { label: "What is owed", command: "calibration", options: { subcommand: "owed" } },
    ],
    figures: {
      targets: lines.map(lineFigures),
      tonight: adds.map(({ object: name, passband, usableHours, countingHours }) => ({
        object: name,
        passband,
        usableHours,
        countingHours,
      })),
      finish: finishFigures(finish),
    },
    credits: [],
  };
}

function progressTable(lines: readonly ProgressLine[]) {
  return {
    columns: ["Target", "Filter", "In hand", "Wanted", "Left", "Overhead, no Moon"],
    rows: lines
      .slice(0, SHOWN)
      .map((line) => [
        line.object,
        line.passband,
        durationWords(line.inHandHours),
        line.wantedHours === null ? "–" : durationWords(line.wantedHours),
        line.leftHours === null ? "–" : line.leftHours === 0 ? "done" : durationWords(line.leftHours),
        line.countingHours === null ? "–" : durationWords(line.countingHours),
      ]),
  };
}

function summaryWords(
  lines: readonly ProgressLine[],
  object: string | null,
  finish: FinishEstimate | null,
): string {
  if (lines.length === 0) {
    return object === null
      ? "Nothing is logged yet: add subs with “log add”, or hours wanted with “log want”."
      : `Nothing of ${object} is logged, and no hours of it are wanted.`;
  }
  const sum = (of: (line: ProgressLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  const left = sum(({ leftHours }) => leftHours ?? 0);
  const inHand = `${durationWords(sum(({ inHandHours }) => inHandHours))} in hand`;
  if (lines.every(({ wantedHours }) => wantedHours === null)) {
    return `${inHand}; say what you want of it with “log want”.`;
  }
  if (left === 0) return `${inHand}: all that was wanted.`;
  const when =
    finish?.kind === "estimate"
      ? `, about ${shortDateWords(finish.likely)} at the pace of the last weeks`
      : "";
  return `${inHand}, ${durationWords(left)} to do${when}.`;
}

/** Of everything that is left among the lines; `null` when nothing is wanted. */
function finishOf(
  lines: readonly ProgressLine[],
  tallies: readonly NightTally[],
  setting: LogSetting,
  request: Request,
): FinishEstimate | null {
  const wanted = lines.filter(({ wantedHours }) => wantedHours !== null);
  if (wanted.length === 0) return null;
  const left = wanted.reduce((sum, { leftHours }) => sum + (leftHours ?? 0), 0);
  const { night, inProgress } = lastBegunNight(setting, request.at);
  const today = inProgress ? night : nightAfter(night);
  const nights = tallies.map((tally) => ({ night: tally.night, hours: tally.clockHours }));
  return finishEstimate(left, nights, today, { weeks: FINISH_WEEKS, leastNights: FINISH_NIGHTS_AT_LEAST });
}

function nightAfter(night: string): string {
  return new Date(Date.parse(night) + 86_400_000).toISOString().slice(0, 10);
}

function finishLines(finish: FinishEstimate | null): string[] {
  if (finish === null) return [];
  switch (finish.kind) {
    case "done":
      return [];
    case "unknown":
      return [
        `No date can be told: the last ${FINISH_WEEKS} weeks gave ${nightsWords(finish.nightsGiven)}, and ${finish.nightsNeeded} are needed.`,
      ];
    case "estimate":
      return [
        `The last ${FINISH_WEEKS} weeks gave ${nightsWords(finish.nightsGiven)}, ${durationWords(finish.hoursPerWeek)} a week: what is left takes ${weeksWords(finish.weeks)}, give or take ${weeksWords(finish.giveOrTakeWeeks)}.`,
        finish.latest === null
          ? `Done about ${shortDateWords(finish.likely)}, perhaps from ${shortDateWords(finish.earliest)}, perhaps not for years.`
          : `Done about ${shortDateWords(finish.likely)}: two times in three between ${shortDateWords(finish.earliest)} and ${shortDateWords(finish.latest)}.`,
        "That is if all your hours go to it, and without regard to its season.",
      ];
  }
}

function nightsWords(count: number): string {
  return count === 1 ? "1 night" : `${count} nights`;
}

function weeksWords(weeks: number): string {
  return weeks < 1.5 ? `${Math.max(1, Math.round(weeks * 7))} days` : `${Math.round(weeks)} weeks`;
}

function addsWords({ object, passband, usableHours, countingHours }: TonightAdds): string {
  if (usableHours === 0) return `${object}, ${passband}: nothing tonight.`;
  const worth = countingHours === null ? "" : `, worth ${durationWords(countingHours)} overhead without Moon`;
  return `${object}, ${passband}: up to ${durationWords(usableHours)}${worth}.`;
}

/** The latest begun, a stair each through the season. */
function progressChart(lines: readonly ProgressLine[], object: string | null): ProgressChart {
  const begun = lines.filter(({ steps }) => steps.length > 0).slice(0, CHARTED);
  const [first] = begun;
  const named = (line: ProgressLine) => (object === null ? `${line.object} ${line.passband}` : line.passband);
  const told = begun
    .map((line) => `${named(line)} ${durationWords(line.inHandHours)} in ${nightsWords(line.steps.length)}`)
    .join(", ");
  return {
    kind: "progress",
    name: "progress",
    title:
      first === undefined
        ? "Nothing is logged yet"
        : `${object ?? first.object} has ${durationWords(first.inHandHours)} in ${first.passband}`,
    alt: `Stairs of hours by night: ${told}.`,
    caption: "",
    cautions: [],
    lines: begun.map((line) => ({
      name: named(line),
      wantedHours: line.wantedHours,
      steps: line.steps,
    })),
  };
}

function lineFigures(line: ProgressLine): Figure {
  return {
    object: line.object,
    passband: line.passband,
    clockHours: line.inHandHours,
    countingHours: line.countingHours,
    wantedHours: line.wantedHours,
    leftHours: line.leftHours,
    frames: line.frames,
    rejected: line.rejected,
    nights: line.steps.map(({ night, hours }) => ({ night, hours })),
  };
}

function finishFigures(finish: FinishEstimate | null): Figure {
  if (finish === null) return null;
  return { ...finish };
}
