/**
 * `log add`: subs by hand, in one line or by options.
 *
 * @packageDocumentation
 */
import { LINE_LENGTH } from "../config/log-limits.ts";
import { PASSBANDS } from "../config/passbands.ts";
import { type LineEntry, readEntryLine } from "../core/log/entry-line.ts";
import type { FrameFigure } from "../core/log/frame-faults.ts";
import { clockHours, type FrameSet } from "../core/log/frame-set.ts";
import { nightsBefore } from "../core/log/night-of.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { frameFigures } from "./log-figures.ts";
import {
  filedObject,
  filedPassband,
  filterNames,
  type LogSetting,
  lastBegunNight,
  logSetting,
  refuseFaulty,
  refuseTooMany,
  rigSettings,
  shown,
} from "./log-rows.ts";
import { logWorth } from "./log-worth.ts";
import { clockInNight } from "./read/moment.ts";
import { parseDate } from "./read/night.ts";
import { type NumberLimits, numberOption, textOption } from "./read/numbers.ts";
import {
  defineNumber,
  defineSubcommand,
  defineText,
  defineWhole,
  FILTER,
  NIGHT,
  RIG,
  SITE,
  TARGET_IF_ANY,
} from "./read/options.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";
import { celsiusWords, frameLine } from "./words/log-words.ts";

export const LOG_ADD = defineSubcommand(
  "add",
  "Subs in one line (NGC 6888 24x180 oiii gain100 -10C), or by options",
  [
    defineText("line", "Object, frames x seconds, filter, gain or ISO, temperature", {
      maxLength: LINE_LENGTH,
    }),
    TARGET_IF_ANY,
    FILTER,
    defineWhole("frames", "Subs kept"),
    defineWhole("rejected", "Subs rejected, counted apart"),
    defineNumber("sub", "Length of a sub, seconds"),
    defineNumber("gain", "Gain, as the camera counts it"),
    defineNumber("iso", "ISO speed"),
    defineNumber("sensor-temp", "Sensor, °C"),
    defineNumber("rotation", "Camera's rotation, degrees"),
    NIGHT,
    defineText("start", "The clock at the site when the first sub began, HH:MM", { maxLength: 5 }),
    RIG,
    SITE,
  ],
);

/** Any number: what may be true is checked with the whole row. */
const ANY: NumberLimits = { min: -1e12, max: 1e12 };

export async function addToLog(request: Request, context: Context): Promise<Answer> {
  const setting = await logSetting(request, context);
  const line = readLine(request, setting);
  const { set, assumptions } = frameSetOf(request, context, setting, line);
  await refuseTooMany(request, context, 1);
  const rigs = setting.rig === null ? [] : [setting.rig];
  const countingHours = logWorth(setting.site, rigs, context.catalogue)(set);
  const { club, member } = request;
  const added = await context.books.log.add(club, member.id, {
    frames: [{ set, countingHours }],
    library: [],
  });
  if (added.frames.length === 0) {
    throw new AskError(
      "logged-already",
      line === null ? "frames" : "line",
      `“${line === null ? "frames" : "line"}”: these subs are in your log already (${frameLine(set)}); give a “start” to tell a second run apart.`,
    );
  }
  const worth = countingHours === null ? "" : `, worth ${durationWords(countingHours)} overhead without Moon`;
  return {
    title: `Logged: ${set.object}`,
    summary: `${frameLine(set)}.`,
    sections: [
      {
        heading: "",
        lines: [
          `${durationWords(clockHours(set))} by the clock${worth}.`,
          ...assumptions,
          ...(line === null || line.ignored.length === 0 ? [] : [`Not kept: ${line.ignored.join(", ")}.`]),
        ],
      },
    ],
    charts: [],
    cautions: [],
    next: [
      { label: "How far it is", command: "log", options: { subcommand: "progress", target: set.object } },
      { label: "Take it back", command: "log", options: { subcommand: "undo" } },
      { label: "What is owed", command: "calibration", options: { subcommand: "owed" } },
    ],
    figures: { added: [frameFigures(set)], countingHours, assumptions },
    credits: [],
  };
}

/** The line as read, or `null` when none was given; what cannot be read is quoted back. */
function readLine(request: Request, { rig }: LogSetting): LineEntry | null {
  const text = textOption(request, "line");
  if (text === null) return null;
  const reading = readEntryLine(text, filterNames(rig), PASSBANDS);
  if (reading.kind === "read") return reading.entry;
  const understood = reading.understood.length === 0 ? "nothing" : `“${reading.understood.join("”, “")}”`;
  const left = reading.left === "" ? "" : ` Left over: “${shown(reading.left)}”.`;
  const problem = {
    "no-frames": "how many subs of how many seconds is missing, such as 24x180",
    "left-over": "some of it fits nowhere",
    "kept-exceeds-shot": "more are kept or rejected than were shot",
  }[reading.problem];
  throw new AskError(
    "unread-line",
    "line",
    `“line”: “${shown(text)}”: ${problem}. Understood: ${understood}.${left} Write it like NGC 6888 24x180 oiii gain100 -10C.`,
  );
}

type Said = { readonly set: FrameSet; readonly assumptions: readonly string[] };

/** The row: options first, then the line, then the rig's own settings, named as such. */
function frameSetOf(request: Request, context: Context, setting: LogSetting, line: LineEntry | null): Said {
  const assumptions: string[] = [];
  const { rig } = setting;
  const number = (option: string) => numberOption(request, option, ANY);
  const usual = rigSettings(rig);
  const fromRig = (
    option: string,
    said: number | null,
    own: number | null,
    wordsOf: (value: number) => string,
  ) => {
    const given = number(option) ?? said;
    if (given !== null || own === null) return given;
    assumptions.push(`${wordsOf(own)} is taken from ${rig?.name ?? "the rig"}.`);
    return own;
  };
  const night = nightSaid(request, setting, line);
  const passband = filedPassband(request, rig) ?? line?.passband ?? null;
  if (passband === null) assumptions.push("No filter was named: filed under none.");
  const iso = fromRig(
    "iso",
    line?.iso ?? null,
    line?.gain == null ? usual.iso : null,
    (value) => `ISO ${value}`,
  );
  const start = textOption(request, "start") ?? line?.clock ?? null;
  const set: FrameSet = {
    night,
    object: objectSaid(request, context, line),
    passband: passband ?? "none",
    frames: number("frames") ?? line?.frames ?? missing("frames"),
    rejected: number("rejected") ?? line?.rejected ?? 0,
    subSeconds: number("sub") ?? line?.subSeconds ?? missing("sub"),
    gain: fromRig("gain", line?.gain ?? null, iso === null ? usual.gain : null, (value) => `Gain ${value}`),
    iso,
    sensorCelsius: fromRig(
      "sensor-temp",
      line?.sensorCelsius ?? null,
      usual.sensorCelsius,
      (value) => `A sensor at ${celsiusWords(value)}`,
    ),
    rotationDeg: number("rotation") ?? line?.rotationDeg ?? null,
    rig: rig?.name ?? null,
    startedAt:
      start === null
        ? null
        : clockInNight(line?.clock === start ? "line" : "start", start, night, setting.site.timeZone),
  };
  const optionOf = (figure: FrameFigure | "night") =>
    request.options[figure] !== undefined || line === null ? figure : "line";
  refuseFaulty(set, setting.latestNight, optionOf);
  if (set.startedAt !== null && set.startedAt > request.at) {
    throw new AskError("future-start", "start", `“start”: ${start} of that night has not come yet.`);
  }
  return { set, assumptions };
}

function missing(option: string): never {
  throw new AskError(
    "missing",
    option,
    `“${option}” is missing: give a “line” such as NGC 6888 24x180 oiii, or target, frames and sub.`,
  );
}

function objectSaid(request: Request, context: Context, line: LineEntry | null): string {
  const named = textOption(request, "target");
  if (named !== null) return filedObject(named, "target", request, context);
  if (line?.object != null) return filedObject(line.object, "line", request, context);
  return missing("target");
}

function nightSaid(request: Request, setting: LogSetting, line: LineEntry | null): string {
  const named = textOption(request, "night");
  if (named !== null) return parseDate("night", named);
  const { night, inProgress } = lastBegunNight(setting, request.at);
  if (line?.night == null) return night;
  if (line.night.kind === "date") return parseDate("line", line.night.date);
  // By day “last night” is the latest that has begun; during a night it is the one before.
  return inProgress ? nightsBefore(night, line.night.count) : night;
}
