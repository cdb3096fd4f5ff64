/**
 * Where to look, as one says it to people outdoors: in fists at arm's length over the skyline.
 *
 * @packageDocumentation
 */
import type { SkylinePoint } from "../../core/site.ts";
import { apparentAltitudeDeg } from "../../core/sky/refraction.ts";
import { skylineAltitudeDeg } from "../../core/targets/skyline.ts";
import type { Horizontal } from "../../core/targets/visibility.ts";
import { compassWords } from "./sky.ts";

/** A fist at arm's length covers so much (common practice). */
const FIST_DEG = 10;
/** From these heights on nobody counts fists. */
const HIGH_DEG = 50;
const TWO_THIRDS_DEG = 57;
const OVERHEAD_DEG = 72;

const NUMBERS = ["", "a", "two", "three", "four", "five"] as const;

/**
 * `a fist and a half above the south-west skyline`; high up, by shares of the way overhead.
 *
 * @param place - airless; the air's lift is added, since this is for the eye
 */
export function whereWords(place: Horizontal, skyline: readonly SkylinePoint[]): string {
  const altitudeDeg = apparentAltitudeDeg(place.altitudeDeg);
  const compass = compassWords(place.azimuthDeg);
  if (altitudeDeg >= OVERHEAD_DEG) return `almost overhead, towards the ${compass}`;
  if (altitudeDeg >= TWO_THIRDS_DEG) return `two thirds of the way up the sky, in the ${compass}`;
  if (altitudeDeg >= HIGH_DEG) return `rather more than half-way up the sky, in the ${compass}`;
  const edge = skyline.length === 0 ? "horizon" : "skyline";
  const above = altitudeDeg - skylineAltitudeDeg(skyline, place.azimuthDeg);
  return `${fistWords(above)} above the ${compass} ${edge}`;
}

/** `half a fist`, `a fist and a half`, `three fists`: to the nearest half. */
export function fistWords(degrees: number): string {
  const halves = Math.max(0, Math.round((2 * degrees) / FIST_DEG));
  if (halves === 0) return "just";
  if (halves === 1) return "half a fist";
  const whole = Math.floor(halves / 2);
  const isHalf = halves % 2 === 1;
  if (whole === 1) return isHalf ? "a fist and a half" : "a fist";
  return `${NUMBERS[whole] ?? String(whole)}${isHalf ? " and a half" : ""} fists`;
}
