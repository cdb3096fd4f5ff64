/**
 * `calibration`: which darks, flats and bias are owed, which match, when to shoot them.
 *
 * @packageDocumentation
 */
import {
  CALIBRATION_NIGHTS,
  CALIBRATION_RULES,
  IDLE_HOURS_AT_LEAST,
  IDLE_NIGHTS,
  TEMPERATURE_TOLERANCE_CELSIUS,
} from "../config/log-limits.ts";
import { intervalHours } from "../core/interval.ts";
import { type IdleSpan, idleHours } from "../core/log/calibration-hours.ts";
import { owedFrames } from "../core/log/calibration-owed.ts";
import { type CalibrationRules, calibrationSets } from "../core/log/calibration-sets.ts";
import { nightsBefore } from "../core/log/night-of.ts";
import { nightHolding, nightsFrom } from "../core/night/local-night.ts";
import { nightTimes } from "../core/night/night-times.ts";
import type { Site } from "../core/site.ts";
import { mergedHours } from "../core/weather/merge.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { addCalibration, CALIBRATION_ADD } from "./calibration-add.ts";
import { owedFigures, setFigures } from "./calibration-figures.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { libraryFigures } from "./log-figures.ts";
import { logSetting } from "./log-rows.ts";
import { spanFigure } from "./object-figures.ts";
import { limitsOf } from "./read/limits.ts";
import { parseDate } from "./read/night.ts";
import { numberOption, textOption } from "./read/numbers.ts";
import { defineNumber, defineSubcommand, defineText, RIG, SITE } from "./read/options.ts";
import type { Request } from "./request.ts";
import { idleWords, owedLine, setLines } from "./words/calibration-words.ts";
import { libraryLine } from "./words/log-words.ts";

export const calibration: Command = {
  definition: {
    name: "calibration",
    description: "Darks, flats and bias: what is owed, what matches, when to shoot them",
    options: [
      defineSubcommand("owed", "What your logged subs still need, set by set", [
        defineText("since", "The first night to look at, YYYY-MM-DD; default: the last months"),
        defineNumber("tolerance", "Sensor temperatures that count as one, °C apart"),
        RIG,
        SITE,
      ]),
      CALIBRATION_ADD,
      defineSubcommand("library", "The calibration frames you have"),
    ],
    defaultSubcommand: "owed",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "add":
        return addCalibration(request, context);
      case "library":
        return showLibrary(request, context);
      default:
        return showOwed(request, context);
    }
  },
};

const SETS_SHOWN = 12;

async function showOwed(request: Request, context: Context): Promise<Answer> {
  const setting = await logSetting(request, context);
  const rules = rulesOf(request);
  const since = sinceOf(request, setting.latestNight);
  const { club, member } = request;
  const rows = await context.books.log.summed(club, member.id, since);
  const rigName = textOption(request, "rig") === null ? null : (setting.rig?.name ?? null);
  const lights = rows.filter((row) => row.frames > 0 && (rigName === null || row.rig === rigName));
  const sets = calibrationSets(lights, await context.books.log.library(club, member.id), rules);
  const owed = owedFrames(sets);
  const idle = owed.length === 0 ? [] : await idleAhead(request, context, setting.site);
  const shownSets = sets.slice(-SETS_SHOWN).reverse();
  const zone = setting.site.timeZone;
  return {
    title: owed.length === 0 ? "No calibration frames are owed" : "Calibration frames owed",
    summary:
      sets.length === 0
        ? `No subs are logged since ${since}.`
        : owed.length === 0
          ? `All ${sets.length === 1 ? "one set" : `${sets.length} sets`} since ${since} have what they need.`
          : `${owed.map(owedLine).slice(0, 3).join("; ")}${owed.length > 3 ? `; and ${owed.length - 3} more` : ""}.`,
    sections: [
      { heading: "To shoot", lines: owed.map((frames) => `${owedLine(frames)}.`) },
      { heading: "When", lines: idleWords(owed, idle, zone) },
      { heading: "Sets", lines: shownSets.flatMap(setLines) },
      {
        heading: "",
        lines:
          sets.length === 0
            ? []
            : [
                `Temperatures within ${rules.temperatureToleranceCelsius} °C and rotations within ${rules.rotationToleranceDeg}° count as one; ${rules.wanted.dark} darks, ${rules.wanted.flat} flats and ${rules.wanted.bias} bias frames a set (common practice).`,
              ],
      },
    ].filter(({ lines }) => lines.length > 0),
    charts: [],
    cautions: [],
    next: [
      { label: "The library", command: "calibration", options: { subcommand: "library" } },
      { label: "How far the targets are", command: "log", options: { subcommand: "progress" } },
    ],
    figures: {
      since,
      temperatureToleranceCelsius: rules.temperatureToleranceCelsius,
      sets: sets.map(setFigures),
      owed: owed.map(owedFigures),
      idle: idle.map(({ why, ...span }) => ({ ...spanFigure(span), why })),
    },
    credits: [],
  };
}

function rulesOf(request: Request): CalibrationRules {
  const tolerance = numberOption(request, "tolerance", { ...TEMPERATURE_TOLERANCE_CELSIUS, unit: "°C" });
  return tolerance === null
    ? CALIBRATION_RULES
    : { ...CALIBRATION_RULES, temperatureToleranceCelsius: tolerance };
}

function sinceOf(request: Request, latestNight: string): string {
  const text = textOption(request, "since");
  if (text === null) return nightsBefore(latestNight, CALIBRATION_NIGHTS);
  const since = parseDate("since", text);
  if (since <= latestNight) return since;
  throw new AskError("future", "since", `“since”: ${since} has not come yet.`);
}

/** The cloudy or moonlit hours of the coming nights that are long enough to use. */
async function idleAhead(request: Request, context: Context, site: Site): Promise<readonly IdleSpan[]> {
  const { models } = await context.forecasts.at(site, request.at);
  const limits = await limitsOf(request, context);
  const hours = mergedHours(models);
  return nightsFrom(nightHolding(request.at, site), IDLE_NIGHTS)
    .flatMap((night) => idleHours(nightTimes(site, night), hours, limits.poorCloudPercent))
    .filter((span) => span.end > request.at && intervalHours(span) >= IDLE_HOURS_AT_LEAST);
}

async function showLibrary(request: Request, context: Context): Promise<Answer> {
  const library = await context.books.log.library(request.club, request.member.id);
  return {
    title: "Your calibration frames",
    summary:
      library.length === 0
        ? "The library is empty: add frames with “calibration add”, or import their files."
        : `${library.length} runs, ${library.reduce((sum, { frames }) => sum + frames, 0)} frames.`,
    sections: [{ heading: "", lines: library.map(libraryLine) }].filter(({ lines }) => lines.length > 0),
    charts: [],
    cautions: [],
    next: [{ label: "What is owed", command: "calibration", options: { subcommand: "owed" } }],
    figures: { library: library.map(libraryFigures) },
    credits: [],
  };
}
