/**
 * Calibration frames in words.
 *
 * @packageDocumentation
 */
import type { IdleSpan } from "../../core/log/calibration-hours.ts";
import type { OwedFrames } from "../../core/log/calibration-owed.ts";
import type { CalibrationSet, Need } from "../../core/log/calibration-sets.ts";
import { clockSpan, shortDateWords } from "./clock.ts";
import { kindWords, secondsWords, settingsWords } from "./log-words.ts";
import { listWords } from "./sky.ts";

/** `20 darks of 180 s, gain 100, −10 °C, Eight-inch`. */
export function owedLine(frames: OwedFrames): string {
  const length = frames.subSeconds === null ? "" : ` of ${secondsWords(frames.subSeconds)}`;
  const filter = frames.passband === null ? "" : ` through ${frames.passband}`;
  const flat = frames.kind === "flat";
  const settings = settingsWords(flat ? { ...frames, gain: null, iso: null } : frames);
  const night =
    flat || (frames.kind === "dark" && frames.sensorCelsius === null)
      ? `, for ${nightsWords(frames.nights)}`
      : "";
  const rig = frames.rig === null ? "" : `, ${frames.rig}`;
  return `${frames.frames} ${kindWords(frames.kind, frames.frames)}${length}${filter}${settings === "" ? "" : `, ${settings}`}${night}${rig}`;
}

const NIGHTS_NAMED = 3;

function nightsWords(nights: readonly string[]): string {
  if (nights.length > NIGHTS_NAMED) {
    return `${nights.length} nights from ${shortDateWords(nights[0] ?? "")}`;
  }
  return listWords(nights.map(shortDateWords));
}

/** A set and what it has. */
export function setLines(set: CalibrationSet): string[] {
  const settings = settingsWords(set);
  const need = (words: string, { have, owed }: Need) =>
    `${words} ${owed === 0 ? `${have}, enough` : have === 0 ? "none yet" : `${have}, ${owed} owed`}`;
  return [
    `${listWords(set.objects)}, ${set.passband}: ${set.frames} × ${secondsWords(set.subSeconds)}${settings === "" ? "" : `, ${settings}`}, ${nightsWords(set.nights)}: ${need("darks", set.needs.dark)}; ${need("flats", set.needs.flat)}; ${need("bias", set.needs.bias)}.`,
  ];
}

/** When the sky leaves time for them. */
export function idleWords(
  owed: readonly OwedFrames[],
  idle: readonly IdleSpan[],
  timeZone: string,
): string[] {
  if (owed.length === 0) return [];
  const [next] = idle;
  const flats = owed.some(({ kind }) => kind === "flat");
  const others = owed.some(({ kind }) => kind !== "flat");
  const why = next?.why === "cloud" ? "cloudy" : "moonlit";
  return [
    ...(others
      ? [
          next === undefined
            ? "Darks and bias: no cloudy or moonlit hours are in sight; by day, capped, does as well."
            : `Darks and bias: the next ${why} hours are ${spanDate(next, timeZone)}${clockSpan(next, timeZone)}.`,
        ]
      : []),
    ...(flats ? ["Flats: at the coming dawn or dusk, the camera unturned and the focus kept."] : []),
  ];
}

function spanDate({ start }: IdleSpan, timeZone: string): string {
  const date = new Intl.DateTimeFormat("en-CA", { timeZone }).format(start);
  return `${shortDateWords(date)}, `;
}
