/**
 * Reads one typed line of the log: `NGC 6888 24x180 oiii gain100 -10C`.
 *
 * Parts are found wherever they stand and taken out; what is left in one piece is
 * the object. Words that fit nowhere make the line unread: nothing is guessed.
 *
 * @packageDocumentation
 */
import {
  type TypedNight,
  takeClock,
  takeGain,
  takeIgnored,
  takeIso,
  takeKept,
  takeLost,
  takeNight,
  takeRotation,
  takeShot,
  takeTemperature,
  tidyLine,
  withoutFillers,
} from "./entry-parts.ts";
import { EntryText } from "./entry-text.ts";
import { type PassbandNames, passbandOf } from "./passband.ts";

export type LineEntry = {
  /** As typed, to be looked up; `null` when the line names none. */
  readonly object: string | null;
  /** As filed; `null` when the line names none. */
  readonly passband: string | null;
  readonly frames: number;
  readonly rejected: number;
  readonly subSeconds: number;
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensorCelsius: number | null;
  readonly rotationDeg: number | null;
  readonly night: TypedNight | null;
  /** `HH:MM` of the first sub, or `null`. */
  readonly clock: string | null;
  /** Said, and of no use to the log, such as `bin 1x1`. */
  readonly ignored: readonly string[];
};

export type LineProblem = "no-frames" | "left-over" | "kept-exceeds-shot";

export type LineReading =
  | { readonly kind: "read"; readonly entry: LineEntry }
  | {
      readonly kind: "unread";
      readonly problem: LineProblem;
      /** What was understood, part by part, as typed. */
      readonly understood: readonly string[];
      /** What was not, as typed; empty when nothing is left. */
      readonly left: string;
    };

/**
 * Reads a line.
 *
 * @param line - as typed
 * @param knownFilters - the rig's own filters, tried first
 * @param table - the names everybody uses for filters
 *
 * @remarks
 * `24x180, 3 rejected` was 24 shot and 21 kept; `20/24x180` and `kept 20 of 24` likewise.
 * A bare figure after the `x` is seconds. A bare negative number is a temperature.
 */
export function readEntryLine(
  line: string,
  knownFilters: readonly string[],
  table: readonly PassbandNames[],
): LineReading {
  const text = new EntryText(tidyLine(line));
  const ignored = takeIgnored(text);
  const night = takeNight(text);
  const clock = takeClock(text);
  const rotationDeg = takeRotation(text);
  const iso = takeIso(text);
  const gain = takeGain(text);
  const lost = takeLost(text);
  const kept = takeKept(text);
  const shot = takeShot(text, kept?.of ?? null);
  const sensorCelsius = takeTemperature(text);
  const passband = takePassband(text, knownFilters, table);
  const left = text.left().filter((piece) => withoutFillers(piece) !== "");

  const unread = (problem: LineProblem): LineReading => ({
    kind: "unread",
    problem,
    understood: text.understood(),
    left: left.join(" … "),
  });
  if (shot === null) return unread("no-frames");
  if (left.length > 1) return unread("left-over");
  const frames = kept?.kept ?? shot.count - (lost ?? 0);
  const rejected = lost ?? (kept?.of ?? shot.count) - frames;
  if (frames < 0 || rejected < 0) return unread("kept-exceeds-shot");
  const object = left[0] === undefined ? null : withoutFillers(left[0]);
  const { seconds: subSeconds } = shot;
  const figures = { gain, iso, sensorCelsius, rotationDeg };
  return {
    kind: "read",
    entry: { object, passband, frames, rejected, subSeconds, ...figures, night, clock, ignored },
  };
}

/** A word that may also begin or end an object's name. */
const BARE_WORD = /^(?:[a-z]|red|green|blue|clear|colour|color|oxygen|sulphur|sulfur)$/i;

/** Nothing of an object's name follows: the end, or a part already taken out. */
const AT_END = String.raw`(?=[\s,;.)]*(?:filter\b[\s,;.)]*)?(?:$|\|))`;

/**
 * The filter: the rig's own names, then the common ones. A colour or a single letter
 * counts only at the end of a piece, so that the Blue Snowball and B 33 stay objects.
 */
function takePassband(
  text: EntryText,
  knownFilters: readonly string[],
  table: readonly PassbandNames[],
): string | null {
  const names = [...knownFilters, ...table.flatMap(({ name, aliases }) => [name, ...aliases])];
  const longestFirst = [...new Set(names)].sort((one, other) => other.length - one.length);
  for (const name of longestFirst) {
    const end = BARE_WORD.test(name) ? AT_END : "";
    const shape = String.raw`(?<![\p{L}\d])\[?${looselySpelt(name)}\]?(?![\p{L}\d])${end}`;
    if (text.take(new RegExp(shape, "iu"))) return passbandOf(name, knownFilters, table);
  }
  return null;
}

/** Between its letters and figures a space or hyphen may stand or not: `o iii`, `H-alpha`. */
function looselySpelt(name: string): string {
  return [...name.replace(/[\s\-_]/g, "")]
    .map((letter) => letter.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&"))
    .join(String.raw`[\s\-]?`);
}
