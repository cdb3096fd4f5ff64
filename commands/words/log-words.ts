/**
 * The log in words.
 *
 * @packageDocumentation
 */
import { clockHours, type FrameSet, type LibrarySet } from "../../core/log/frame-set.ts";
import { durationWords, shortDateWords } from "./clock.ts";
import { withMinus } from "./minus.ts";

/** `24 × 180 s`, with what was rejected. */
function framesWords({ frames, rejected, subSeconds }: FrameSet): string {
  const lost = rejected > 0 ? `, ${rejected} rejected` : "";
  return `${frames} × ${secondsWords(subSeconds)}${lost}`;
}

/** `gain 100, −10 °C, turned 45°`; empty when nothing is known. */
export function settingsWords(set: Pick<FrameSet, "gain" | "iso" | "sensorCelsius" | "rotationDeg">): string {
  return [
    ...(set.gain === null ? [] : [`gain ${set.gain}`]),
    ...(set.iso === null ? [] : [`ISO ${set.iso}`]),
    ...(set.sensorCelsius === null ? [] : [celsiusWords(set.sensorCelsius)]),
    ...(set.rotationDeg === null ? [] : [`turned ${shortFigure(set.rotationDeg)}°`]),
  ].join(", ");
}

/** `Sat 3 Oct: NGC 6888, o-iii, 24 × 180 s (1 h 12 min), gain 100, −10 °C, Eight-inch`. */
export function frameLine(set: FrameSet): string {
  const settings = settingsWords(set);
  const rig = set.rig === null ? "" : `, ${set.rig}`;
  return `${shortDateWords(set.night)}: ${set.object}, ${set.passband}, ${framesWords(set)} (${durationWords(clockHours(set))})${settings === "" ? "" : `, ${settings}`}${rig}`;
}

/** `Sat 3 Oct: 20 darks of 180 s, gain 100, −10 °C, Eight-inch`. */
export function libraryLine(set: LibrarySet): string {
  const settings = settingsWords(set);
  const length = set.subSeconds === null ? "" : ` of ${secondsWords(set.subSeconds)}`;
  const filter = set.passband === null ? "" : ` through ${set.passband}`;
  const rig = set.rig === null ? "" : `, ${set.rig}`;
  return `${shortDateWords(set.night)}: ${set.frames} ${kindWords(set.kind, set.frames)}${length}${filter}${settings === "" ? "" : `, ${settings}`}${rig}`;
}

/** `darks`, `one flat`'s noun, `bias frames`. */
export function kindWords(kind: LibrarySet["kind"], count: number): string {
  if (kind === "bias") return count === 1 ? "bias frame" : "bias frames";
  return count === 1 ? kind : `${kind}s`;
}

/** `180 s`, `0.017 s`. */
export function secondsWords(seconds: number): string {
  return `${seconds >= 1 ? shortFigure(seconds) : Number(seconds.toPrecision(2))} s`;
}

export function celsiusWords(celsius: number): string {
  return `${withMinus(shortFigure(celsius))} °C`;
}

function shortFigure(value: number): string {
  return String(Number(value.toFixed(1)));
}

/** `1 row`, `24 rows`. */
export function rowsWords(count: number): string {
  return count === 1 ? "1 row" : `${count.toLocaleString("en-GB")} rows`;
}
