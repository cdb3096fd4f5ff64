/**
 * From what a member says to rows of the log: object, filter, night, limits.
 *
 * @packageDocumentation
 */
import { FRAME_LIMITS, ROWS_PER_MEMBER } from "../config/log-limits.ts";
import { PASSBANDS } from "../config/passbands.ts";
import { type FrameFault, type FrameFigure, frameFaults, libraryFaults } from "../core/log/frame-faults.ts";
import type { FrameSet, LibrarySet } from "../core/log/frame-set.ts";
import { nightOfInstant, nightsBefore } from "../core/log/night-of.ts";
import { passbandOf } from "../core/log/passband.ts";
import type { Rig } from "../core/rig/rig.ts";
import type { Site } from "../core/site.ts";
import { bodyPlace } from "../core/sky/bodies.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { textOption } from "./read/numbers.ts";
import { rigOf } from "./read/rig.ts";
import { siteOf } from "./read/site.ts";
import { targetOf } from "./read/target.ts";
import type { Request } from "./request.ts";
import { dateWords } from "./words/clock.ts";
import { shortName } from "./words/target-words.ts";

/** Where and with what the subs were shot, unless they say otherwise. */
export type LogSetting = {
  readonly site: Site;
  /** `null` for a member who keeps no rig and names none. */
  readonly rig: Rig | null;
  /** The latest night that may be logged. */
  readonly latestNight: string;
};

export async function logSetting(request: Request, context: Context): Promise<LogSetting> {
  const site = await siteOf(request, context);
  const rig = await rigIfAny(request, context);
  return { site, rig, latestNight: nightOfInstant(request.at, site.timeZone) };
}

/** The rig named, else the default one, else none. */
export async function rigIfAny(request: Request, context: Context): Promise<Rig | null> {
  const saved = await context.books.rigs.list(request.club, request.member.id);
  const named = textOption(request, "rig") !== null;
  return named || saved.length > 0 ? rigOf(request, context) : null;
}

const HALF_DAY_MS = 12 * 3_600_000;

/** The night that subs belong to when nobody says: the latest that has begun. */
export function lastBegunNight(
  { site, latestNight }: LogSetting,
  at: Date,
): { readonly night: string; readonly inProgress: boolean } {
  const inProgress = bodyPlace("Sun", site, at).altitudeDeg <= 0;
  const afterNoon = nightOfInstant(new Date(at.getTime() - HALF_DAY_MS), site.timeZone) < latestNight;
  return { night: afterNoon && !inProgress ? nightsBefore(latestNight, 1) : latestNight, inProgress };
}

/** Names of a rig's filters. */
export function filterNames(rig: Rig | null): readonly string[] {
  return rig?.kind === "camera" ? rig.filters.map(({ name }) => name) : [];
}

/**
 * The name an object is filed under.
 *
 * @param option - the option it came from, for the message
 * @throws AskError with the nearest names when nothing answers to it
 */
export function filedObject(text: string, option: string, request: Request, context: Context): string {
  return shortName(targetOf({ ...request, options: { [option]: text } }, context, option));
}

/**
 * The filter option's name as filed; `null` when it was not given.
 *
 * @throws AskError naming the rig's filters when it is unknown
 */
export function filedPassband(request: Request, rig: Rig | null): string | null {
  const text = textOption(request, "filter");
  if (text === null) return null;
  const known = filterNames(rig);
  const name = passbandOf(text, known, PASSBANDS);
  if (name !== null) return name;
  const names = [...known, ...PASSBANDS.map((passband) => passband.name)];
  throw new AskError(
    "unknown-filter",
    "filter",
    `“filter”: there is no filter “${shown(text)}”. Try one of: ${names.join(", ")}.`,
  );
}

/** Gain and ISO of the rig in use, from how its setting is written: `gain 100`, `ISO 800`. */
export function rigSettings(rig: Rig | null): {
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensorCelsius: number | null;
} {
  if (rig?.kind !== "camera") return { gain: null, iso: null, sensorCelsius: null };
  const { setting } = rig.mode;
  const figure = (shape: RegExp) => {
    const found = shape.exec(setting);
    return found ? Number(found[1]) : null;
  };
  return {
    gain: figure(/^gain\s*(\d+)$/i),
    iso: figure(/^iso\s*(\d+)$/i),
    sensorCelsius: rig.sensorTemperature.kind === "set" ? rig.sensorTemperature.celsius : null,
  };
}

/**
 * Refuses subs that cannot be true.
 *
 * @param optionOf - which option a figure came from
 * @param where - said before the fault, such as a row of a file; may be empty
 */
export function refuseFaulty(
  set: FrameSet | LibrarySet,
  latestNight: string,
  optionOf: (figure: FrameFigure | "night") => string,
  where = "",
): void {
  const faults =
    "kind" in set
      ? libraryFaults(set, FRAME_LIMITS, latestNight)
      : frameFaults(set, FRAME_LIMITS, latestNight);
  const [fault] = faults;
  if (fault === undefined) return;
  const option = optionOf("figure" in fault ? fault.figure : "night");
  throw new AskError("impossible-frames", option, `“${option}”: ${where}${faultWords(fault)}`);
}

const FIGURE_WORDS: Readonly<Record<FrameFigure, readonly [name: string, unit: string]>> = {
  frames: ["frames", ""],
  rejected: ["rejected frames", ""],
  sub: ["the sub", " s"],
  gain: ["the gain", ""],
  iso: ["ISO", ""],
  "sensor-temp": ["the sensor's temperature", " °C"],
  rotation: ["the rotation", "°"],
};

function faultWords(fault: FrameFault): string {
  switch (fault.kind) {
    case "range": {
      const [name, unit] = FIGURE_WORDS[fault.figure];
      const { min, max } = fault.span;
      return `${fault.value}${unit} is out of range: ${name} must be from ${min} to ${max}${unit}.`;
    }
    case "not-whole":
      return `${fault.value} is no whole number of ${FIGURE_WORDS[fault.figure][0]}.`;
    case "future":
      return `${fault.night} has not come yet: the latest night that can be logged is ${dateWords(fault.latest)}, ${fault.latest}.`;
    case "too-old":
      return `${fault.night} is too long ago: nights count from ${fault.earliest}.`;
  }
}

/** Refuses rows beyond what a member may keep. */
export async function refuseTooMany(request: Request, context: Context, more: number): Promise<void> {
  const kept = await context.books.log.count(request.club, request.member.id);
  if (kept + more <= ROWS_PER_MEMBER) return;
  throw new AskError(
    "log-full",
    null,
    `Your log would hold ${kept + more} rows; it may hold ${ROWS_PER_MEMBER}. Export it, and begin a new one.`,
  );
}

/** What was typed or found in a file, short enough and plain enough to say back. */
export function shown(text: string): string {
  const characters = [...text.replace(/\p{C}/gu, "·")];
  return characters.length <= 60 ? characters.join("") : `${characters.slice(0, 60).join("")}…`;
}
