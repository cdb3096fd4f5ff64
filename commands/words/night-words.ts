/**
 * A night in words: how dark it gets and what the Moon takes of it.
 *
 * @packageDocumentation
 */
import { type Interval, longestInterval, totalHours } from "../../core/interval.ts";
import type { NightTimes, Twilight } from "../../core/night/night.ts";
import type { Table } from "../answer.ts";
import type { NightChart } from "../chart.ts";
import { clockHours, clockSpan, clockTime, clockTimeOrDash, durationWords, shortDateWords } from "./clock.ts";
import { listWords } from "./sky.ts";

/** A few minutes of Moon are not worth a word. */
const WORTH_SAYING_HOURS = 0.05;

/** `18:05 to 05:50`, several joined; the whole span from noon to noon as `all night and day`. */
export function spansWords(times: NightTimes, spans: readonly Interval[]): string {
  return listWords(
    spans.map((span) => (isWhole(times, span) ? "all night and day" : spanWords(times, span))),
  );
}

function spanWords(times: NightTimes, span: Interval): string {
  const { noon, nextNoon, timeZone } = times.night;
  if (span.start.getTime() === noon.getTime()) return `until ${clockTime(span.end, timeZone)}`;
  if (span.end.getTime() === nextNoon.getTime()) return `from ${clockTime(span.start, timeZone)} on`;
  return clockSpan(span, timeZone);
}

function isWhole(times: NightTimes, span: Interval): boolean {
  const { noon, nextNoon } = times.night;
  return span.start.getTime() === noon.getTime() && span.end.getTime() === nextNoon.getTime();
}

/** One sentence on how dark it gets. */
export function darknessWords(times: NightTimes): string {
  const { darkWindows, workingWindows, deepestTwilight } = times;
  if (darkWindows.length > 0) {
    return `Dark ${spansWords(times, darkWindows)}, ${durationWords(clockHours(darkWindows))}.`;
  }
  if (deepestTwilight === "none") return lightNightWords(times);
  const depthDeg = deepestTwilight === "nautical" ? 12 : 6;
  const spans = spansWords(times, workingWindows);
  return `No true darkness: the Sun is more than ${depthDeg}° down ${spans}, ${durationWords(clockHours(workingWindows))}.`;
}

function lightNightWords(times: NightTimes): string {
  const { sunset, sunrise } = times;
  if (sunset === null && sunrise === null) return "No darkness: the Sun does not get 6° below the horizon.";
  return "No darkness: the Sun sets but stays within 6° of the horizon.";
}

/** One sentence on the Moon beside that darkness. */
export function moonWords(times: NightTimes): string {
  const moon = `Moon ${litWords(times)}`;
  const dark = totalHours(times.darkWindows);
  const free = totalHours(times.moonFreeDarkWindows);
  if (dark === 0) return `${moon}: ${moonPassageWords(times)}.`;
  if (dark - free < WORTH_SAYING_HOURS) return `${moon}: below the horizon for all of it.`;
  if (free < WORTH_SAYING_HOURS) return `${moon}: up for all of it.`;
  return `${moon}: below the horizon ${spansWords(times, times.moonFreeDarkWindows)}, ${durationWords(clockHours(times.moonFreeDarkWindows))}.`;
}

/** `97 % lit and waning`. */
export function litWords(times: NightTimes): string {
  const { illuminatedFraction, waxing } = times.moon;
  return `${Math.round(illuminatedFraction * 100)} % lit and ${waxing ? "waxing" : "waning"}`;
}

/** `rises 15:52, sets 10:54`, in the order they come. */
export function moonPassageWords(times: NightTimes): string {
  const { rise, set } = times.moon;
  const zone = times.night.timeZone;
  const passages = [
    ...(rise === null ? [] : [{ at: rise, words: `rises ${clockTime(rise, zone)}` }]),
    ...(set === null ? [] : [{ at: set, words: `sets ${clockTime(set, zone)}` }]),
  ].sort((one, other) => one.at.getTime() - other.at.getTime());
  if (passages.length === 0) return "neither rises nor sets";
  return passages.map(({ words }) => words).join(", ");
}

/** Evening and morning side by side, from sunset on. */
export function twilightTable(times: NightTimes): Table {
  const zone = times.night.timeZone;
  const row = (name: string, dusk: Date | null, dawn: Date | null) => [
    name,
    clockTimeOrDash(dusk, zone),
    clockTimeOrDash(dawn, zone),
  ];
  return {
    columns: ["The Sun is", "evening", "morning"],
    rows: [
      row("on the horizon", times.sunset, times.sunrise),
      row("6° down (civil)", times.civilDusk, times.civilDawn),
      row("12° down (nautical)", times.nauticalDusk, times.nauticalDawn),
      row("18° down (astronomical)", times.astronomicalDusk, times.astronomicalDawn),
    ],
  };
}

/** One row a night. */
export function nightsTable(nights: readonly NightTimes[]): Table {
  return {
    columns: ["Night", "Dark", "Hours", "Without Moon", "Hours", "Moon"],
    rows: nights.map((times) => [
      shortDateWords(times.night.date),
      times.darkWindows.length > 0
        ? spansWords(times, times.darkWindows)
        : shallowWords(times.deepestTwilight),
      hoursWords(times.darkWindows),
      times.moonFreeDarkWindows.length > 0 ? spansWords(times, times.moonFreeDarkWindows) : "–",
      hoursWords(times.moonFreeDarkWindows),
      `${Math.round(times.moon.illuminatedFraction * 100)} %`,
    ]),
  };
}

function hoursWords(spans: readonly Interval[]): string {
  return spans.length === 0 ? "–" : durationWords(clockHours(spans));
}

function shallowWords(deepest: Twilight): string {
  switch (deepest) {
    case "astronomical":
      return "dark";
    case "nautical":
      return "nautical twilight";
    case "civil":
      return "civil twilight";
    case "none":
      return "light all night";
  }
}

/** The steps of the chart's ruler, in order; one step of one darkness when the Sun crosses nothing. */
export function twilightSteps(times: NightTimes): NightChart["twilights"] {
  const steps = [
    { at: times.sunset, label: "sunset", depth: 1 },
    { at: times.civilDusk, label: "civil dusk", depth: 2 },
    { at: times.nauticalDusk, label: "nautical dusk", depth: 3 },
    { at: times.astronomicalDusk, label: "dark", depth: 4 },
    { at: times.astronomicalDawn, label: "astronomical dawn", depth: 3 },
    { at: times.nauticalDawn, label: "nautical dawn", depth: 2 },
    { at: times.civilDawn, label: "civil dawn", depth: 1 },
    { at: times.sunrise, label: "sunrise", depth: 0 },
  ] as const;
  const come = steps.flatMap(({ at, label, depth }) => (at === null ? [] : [{ at, label, depth }]));
  if (come.length > 0) return come.sort((one, other) => one.at.getTime() - other.at.getTime());
  const whole = { astronomical: 4, nautical: 3, civil: 2, none: 0 } as const;
  const depth = whole[times.deepestTwilight];
  return depth === 0 ? [] : [{ at: times.night.noon, label: "all day", depth }];
}

/** The longest window of work with its length in words, as the chart's dimension line. */
export function windowMark(times: NightTimes): NightChart["window"] {
  const window = longestInterval(times.workingWindows);
  if (window === null) return null;
  const length = durationWords(clockHours([window]));
  return { ...window, label: times.deepestTwilight === "astronomical" ? `${length} dark` : length };
}
