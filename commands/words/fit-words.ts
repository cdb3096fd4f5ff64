/**
 * Why a target fits tonight, in sentences.
 *
 * @packageDocumentation
 */
import { longestInterval } from "../../core/interval.ts";
import type { BegunTarget } from "../../core/log/progress.ts";
import type { FittingTarget } from "../../core/targets/tonight.ts";
import { capital } from "./capital.ts";
import { clockHours, clockSpan, durationWords } from "./clock.ts";
import { compassWords, listWords } from "./sky.ts";
import { KIND_WORDS, targetKind } from "./target-words.ts";

/** Sentences in order of weight: when, what is begun, how it sits, what filter and Moon make of it. */
export function reasonSentences(fit: FittingTarget, zone: string, begun: BegunTarget | null): string[] {
  return [
    whenSentence(fit, zone),
    begun === null ? null : begunSentence(begun),
    fieldSentence(fit),
    lightSentence(fit),
    moonSentence(fit),
    reachSentence(fit),
  ].filter((sentence) => sentence !== null);
}

function whenSentence({ night }: FittingTarget, zone: string): string | null {
  const span = longestInterval(night.windows);
  if (span === null) return null;
  const peak = night.peak;
  const height =
    peak === null ? "" : `, up to ${Math.round(peak.altitudeDeg)}° in the ${compassWords(peak.azimuthDeg)}`;
  return `Usable from ${clockSpan(span, zone)}${height}.`;
}

/** Hours in hand, and what is left by filter. */
function begunSentence({ filters }: BegunTarget): string {
  const inHand = durationWords(filters.reduce((sum, filter) => sum + filter.inHandHours, 0));
  const left = filters.filter(({ leftHours }) => leftHours !== null && leftHours > 0);
  if (left.length > 0) {
    const still = left.map(({ passband, leftHours }) => `${durationWords(leftHours ?? 0)} of ${passband}`);
    return `Begun: ${inHand} in hand, still wanted ${listWords(still)}.`;
  }
  const wanted = filters.some(({ wantedHours }) => wantedHours !== null);
  return wanted ? `Done: ${inHand} in hand, as wanted.` : `Begun: ${inHand} in hand.`;
}

function percent(share: number): string {
  return share > 0 && share < 0.01 ? "under 1 %" : `${Math.round(share * 100)} %`;
}

function fieldSentence({ use, fillFraction, objectInField, target }: FittingTarget): string | null {
  if (use !== null) {
    const power = `${Math.round(use.power)}×, a ${use.eyepiece.focalLengthMm} mm eyepiece`;
    if (objectInField !== null && objectInField < 0.95) return `Larger than the field at ${power}.`;
    return target.kind === "object" && target.object.kind === "double-star"
      ? `Split it at ${Math.round(use.power)}× (${use.eyepiece.focalLengthMm} mm) or more.`
      : `Best at ${power}.`;
  }
  if (fillFraction === null || objectInField === null) return "Its size is not known: taken as a point.";
  if (objectInField < 0.99) return `Larger than the frame, which holds ${percent(objectInField)} of it.`;
  return `Fills ${percent(fillFraction)} of the frame.`;
}

function lightSentence({ target, filter, suits }: FittingTarget): string {
  const kind = capital(withArticle(targetKind(target)));
  if (filter.bands.length === 0) return `${kind}.`;
  const how = suits >= 0.8 ? "good through" : suits >= 0.4 ? "fair through" : "faint through";
  return `${kind}, ${how} ${filter.name}.`;
}

function withArticle(kind: string): string {
  return `${/^[aeiou]/.test(kind) ? "an" : "a"} ${kind}`;
}

function moonSentence({ night, target }: FittingTarget): string | null {
  const { moonCost } = night.counted;
  if (moonCost === null || target.kind === "body" || moonCost < 1.05) return null;
  const share = Math.round((1 - 1 / moonCost) * 100);
  return `The Moon takes ${share} % of its hours.`;
}

/** Less than this of the brightness and contrast one wants makes an object hard to see. */
const HARD_TO_SEE = 0.4;

function reachSentence({ reach, basis, target, use }: FittingTarget): string | null {
  if (target.kind !== "object") return null;
  const seen = reach < HARD_TO_SEE ? "Faint: give it time, and look a little beside it" : null;
  const faint = use !== null ? seen : reach < 0.95 ? "One night is not enough for it" : null;
  const guess =
    basis === "assumed"
      ? `its brightness is not known and taken as faint for ${withArticle(KIND_WORDS[target.object.kind])}`
      : null;
  const both = [faint, guess].filter((part) => part !== null).join("; ");
  return both === "" ? null : `${capital(both)}.`;
}

/** Hours that count, and of how many on the clock, for a camera. */
export function worthWords({ night }: FittingTarget): string {
  return `${durationWords(clockHours(night.windows))}, worth ${durationWords(night.counted.countingHours)}`;
}
