/**
 * `calibration add`: darks, flats or bias into the library.
 *
 * @packageDocumentation
 */
import type { CalibrationKind, LibrarySet } from "../core/log/frame-set.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { libraryFigures } from "./log-figures.ts";
import {
  filedPassband,
  lastBegunNight,
  logSetting,
  refuseFaulty,
  refuseTooMany,
  rigSettings,
} from "./log-rows.ts";
import { parseDate } from "./read/night.ts";
import { numberOption, textOption } from "./read/numbers.ts";
import {
  defineChoice,
  defineNumber,
  defineSubcommand,
  defineWhole,
  FILTER,
  NIGHT,
  RIG,
  SITE,
} from "./read/options.ts";
import type { Request } from "./request.ts";
import { libraryLine } from "./words/log-words.ts";

const KINDS: readonly CalibrationKind[] = ["dark", "flat", "bias"];

/** What may be true is checked with the whole row. */
const ANY = { min: -1e12, max: 1e12 };

export const CALIBRATION_ADD = defineSubcommand("add", "Darks, flats or bias frames into your library", [
  defineChoice("kind", "What they are", KINDS, { required: true }),
  defineWhole("frames", "How many", { required: true }),
  defineNumber("sub", "Their length, seconds; bias has none"),
  FILTER,
  defineNumber("gain", "Gain; default: the rig's"),
  defineNumber("iso", "ISO speed; default: the rig's"),
  defineNumber("sensor-temp", "Sensor, °C; default: the rig's, if it is cooled"),
  defineNumber("rotation", "Camera's rotation, degrees, of flats"),
  NIGHT,
  RIG,
  SITE,
]);

export async function addCalibration(request: Request, context: Context): Promise<Answer> {
  const setting = await logSetting(request, context);
  const { set, assumptions } = librarySetOf(request, setting);
  refuseFaulty(set, setting.latestNight, (figure) => figure);
  await refuseTooMany(request, context, 1);
  const added = await context.books.log.add(request.club, request.member.id, { frames: [], library: [set] });
  if (added.library.length === 0) {
    throw new AskError(
      "kept-already",
      "frames",
      `“frames”: these are in your library already: ${libraryLine(set)}.`,
    );
  }
  return {
    title: "Into the library",
    summary: `${libraryLine(set)}.`,
    sections: [{ heading: "", lines: assumptions }].filter(({ lines }) => lines.length > 0),
    charts: [],
    cautions: [],
    next: [
      { label: "What is owed", command: "calibration", options: { subcommand: "owed" } },
      { label: "Take it back", command: "log", options: { subcommand: "undo" } },
    ],
    figures: { added: libraryFigures(set), assumptions },
    credits: [],
  };
}

function librarySetOf(
  request: Request,
  setting: Awaited<ReturnType<typeof logSetting>>,
): { readonly set: LibrarySet; readonly assumptions: readonly string[] } {
  const { rig } = setting;
  const kind = KINDS.find((one) => one === textOption(request, "kind"));
  if (kind === undefined) throw new AskError("no-kind", "kind", "“kind” must be dark, flat or bias.");
  const number = (option: string) => numberOption(request, option, ANY);
  const subSeconds = number("sub");
  const rotationDeg = number("rotation");
  const passband = filedPassband(request, rig);
  const frames = number("frames");
  if (frames === null) throw new AskError("no-frames", "frames", "“frames” is missing: how many they are.");
  if (kind === "dark" && subSeconds === null) {
    throw new AskError("no-sub", "sub", "“sub” is missing: darks match by their length in seconds.");
  }
  refuseForOthers(kind, "filter", passband);
  refuseForOthers(kind, "rotation", rotationDeg);
  if (kind === "bias" && subSeconds !== null) {
    throw new AskError("bias-sub", "sub", "“sub”: bias frames have no length; leave it out.");
  }
  const night = textOption(request, "night");
  const usual = rigSettings(rig);
  const gain = number("gain");
  const iso = number("iso");
  const set: LibrarySet = {
    kind,
    night: night === null ? lastBegunNight(setting, request.at).night : parseDate("night", night),
    passband: kind === "flat" ? (passband ?? "none") : null,
    frames,
    subSeconds,
    gain: gain ?? (iso === null ? usual.gain : null),
    iso: iso ?? (gain === null ? usual.iso : null),
    sensorCelsius: number("sensor-temp") ?? usual.sensorCelsius,
    rotationDeg,
    rig: rig?.name ?? null,
    startedAt: null,
  };
  const fromRig = gain === null && iso === null && rig !== null;
  return {
    set,
    assumptions: [
      ...(fromRig ? [`Gain or ISO is that of ${rig.name}.`] : []),
      ...(number("sensor-temp") === null && usual.sensorCelsius !== null && rig !== null
        ? [`The sensor's temperature is that of ${rig.name}.`]
        : []),
      ...(kind === "flat" && passband === null ? ["No filter was named: flats without one."] : []),
    ],
  };
}

/** Filter and rotation matter to flats alone; elsewhere they are a slip. */
function refuseForOthers(kind: CalibrationKind, option: string, value: string | number | null): void {
  if (kind === "flat" || value === null) return;
  throw new AskError(
    "flats-alone",
    option,
    `“${option}” matters to flats alone, not to ${kind} frames; leave it out.`,
  );
}
