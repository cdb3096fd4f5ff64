/**
 * Eclipses in words, as a site has them.
 *
 * @packageDocumentation
 */
import type { Interval } from "../../core/interval.ts";
import type { LunarEclipse } from "../../core/outreach/lunar-eclipse.ts";
import type { LocalSolarEclipse } from "../../core/outreach/solar-eclipse.ts";
import { clockSpan, clockTime } from "./clock.ts";
import { dayWords } from "./day-words.ts";
import { compassWords, listWords } from "./sky.ts";

/** A margin within which a span is seen whole, ms. */
const WHOLE_MS = 60_000;

/**
 * A solar eclipse at a site: when, how deep, and what of it clears the skyline.
 *
 * @param seen - spans with the Sun over the skyline
 */
export function localEclipseWords(
  eclipse: LocalSolarEclipse,
  seen: readonly Interval[],
  zone: string,
): string {
  const { begins, greatest, ends, centralBegins, centralEnds } = eclipse;
  const whole = { start: begins.at, end: ends.at };
  const central =
    centralBegins === null || centralEnds === null
      ? ""
      : ` ${eclipse.kind === "total" ? "Total" : "A ring"} for ${secondsWords(+centralEnds.at - +centralBegins.at)} around the greatest.`;
  return `${kindWords(eclipse.kind)} eclipse of the Sun on ${dayWords(greatest.at, zone)}, ${clockSpan(whole, zone)}; greatest at ${clockTime(greatest.at, zone)} with ${percentWords(eclipse.obscuration)} of the disc covered (magnitude ${eclipse.magnitude.toFixed(3)}), the Sun ${heightWords(greatest.sunAltitudeDeg, greatest.sunAzimuthDeg)}.${central} ${solarSightWords(whole, seen, zone)}${eclipse.kind === "total" ? "" : " It is never total here: filters on throughout."}`;
}

/** What of a solar eclipse the skyline leaves. */
export function solarSightWords(whole: Interval, seen: readonly Interval[], zone: string): string {
  if (seen.length === 0) return "The Sun is down or behind the skyline here all the while.";
  if (isWhole(whole, seen)) return "The Sun is clear of the skyline throughout.";
  return `The Sun is clear of the skyline ${listWords(seen.map((span) => clockSpan(span, zone)))}.`;
}

/**
 * A lunar eclipse at a site.
 *
 * @param seen - spans of the whole passage with the Moon over the skyline
 */
export function lunarEclipseWords(eclipse: LunarEclipse, seen: readonly Interval[], zone: string): string {
  const { penumbraBegins, penumbraEnds, partialBegins, partialEnds, totalBegins, totalEnds } = eclipse;
  const whole = { start: penumbraBegins, end: penumbraEnds };
  const sight =
    seen.length === 0
      ? "The Moon is down or behind the skyline here all the while."
      : isWhole(whole, seen)
        ? "The Moon is clear of the skyline throughout."
        : `The Moon is clear of the skyline ${listWords(seen.map((span) => clockSpan(span, zone)))}.`;
  const greatest = `greatest at ${clockTime(eclipse.greatest, zone)}`;
  if (partialBegins === null || partialEnds === null) {
    return `In the Earth's outer shadow ${clockSpan(whole, zone)}, ${greatest}: at most a faint grey on one side. ${sight}`;
  }
  const umbra = clockSpan({ start: partialBegins, end: partialEnds }, zone);
  const total =
    totalBegins === null || totalEnds === null
      ? `${percentWords(eclipse.umbralMagnitude)} of its diameter in the umbra`
      : `total ${clockSpan({ start: totalBegins, end: totalEnds }, zone)}`;
  return `In the umbra ${umbra}, ${total}, ${greatest} (magnitude ${eclipse.umbralMagnitude.toFixed(2)}). ${sight}`;
}

/** How the contacts of lunar eclipses are reckoned. */
export const SHADOW_CONVENTION =
  "Lunar contacts take the shadow as Danjon did (the Earth 1/85 larger for its air); the real edge is soft to half a minute and more.";

function kindWords(kind: LocalSolarEclipse["kind"]): string {
  switch (kind) {
    case "partial":
      return "Partial";
    case "annular":
      return "Annular";
    case "total":
      return "Total";
  }
}

function isWhole(whole: Interval, seen: readonly Interval[]): boolean {
  const [only] = seen;
  return (
    seen.length === 1 &&
    only !== undefined &&
    +only.start - +whole.start < WHOLE_MS &&
    +whole.end - +only.end < WHOLE_MS
  );
}

function heightWords(altitudeDeg: number, azimuthDeg: number): string {
  return altitudeDeg < 0
    ? "below the horizon"
    : `${Math.round(altitudeDeg)}° high in the ${compassWords(azimuthDeg)}`;
}

/** `91 %`, never 100 unless it is whole. */
function percentWords(share: number): string {
  const percent = share >= 1 ? Math.round(share * 100) : Math.min(99, Math.round(share * 100));
  return share > 0 && percent === 0 ? "under 1 %" : `${percent} %`;
}

function secondsWords(ms: number): string {
  const seconds = Math.round(ms / 1000);
  const minutes = Math.floor(seconds / 60);
  return minutes === 0 ? `${seconds} s` : `${minutes} min ${seconds % 60} s`;
}
