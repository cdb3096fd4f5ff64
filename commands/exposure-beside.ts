/**
 * What stands beside an exposure: another rig, another place, the same time split between filters.
 *
 * @packageDocumentation
 */
import type { Section } from "./answer.ts";
import type { ExposureSum } from "./exposure-sum.ts";
import { filterWords, lightWords, secondsWords } from "./words/exposure-words.ts";

export type Beside = {
  readonly split: readonly ExposureSum[];
  readonly otherRig: ExposureSum | null;
  readonly otherSite: ExposureSum | null;
};

/** Two rigs, two places: what an hour of one is worth of the other, on a faint patch of sky. */
export function besideSection(sum: ExposureSum, { otherRig, otherSite }: Beside): Section {
  const lines: string[] = [];
  const through = filterWords(sum.question.filter);
  if (otherRig !== null) {
    const [other, own] = [otherRig, sum].map(({ question }) => question.rig.name);
    lines.push(
      `An hour ${through} with ${other} is worth ${lightWords(otherRig.rate / sum.rate)} with ${own}; its subs: ${secondsWords(otherRig.plan.subSeconds)}.`,
    );
  }
  if (otherSite !== null) {
    const [other, own] = [otherSite, sum].map(({ question }) => question.situation.site.name);
    lines.push(
      `An hour ${through} at ${other} is worth ${lightWords(otherSite.rate / sum.rate)} at ${own}; its subs: ${secondsWords(otherSite.plan.subSeconds)}.`,
      `Sky ${otherSite.skyMagArcsec2.toFixed(2)} against ${sum.skyMagArcsec2.toFixed(2)} mag/arcsec² on the mean.`,
    );
  }
  if (lines.length > 0)
    lines.push("Worth is counted on a faint patch of sky, in the time to the same signal-to-noise.");
  return { heading: "Side by side", lines };
}

/** The time split evenly, and as signal-to-noise would have it. */
export function splitSection(split: readonly ExposureSum[]): Section | null {
  if (split.length === 0) return null;
  // Infinite where nothing is known: no share follows then.
  const needs = split.map((each) => each.signalToNoise?.hoursToWanted ?? Number.POSITIVE_INFINITY);
  const needed = needs.reduce((total, hours) => total + hours, 0);
  const all = Number.isFinite(needed);
  const light = split.reduce((total, each) => total + each.plan.totalSeconds / 3600, 0);
  return {
    heading: "Split between filters",
    lines: all
      ? ["The last column would bring all to the same signal-to-noise in the same time."]
      : ["Where the object's brightness in a line is not known, its share is for you to weigh."],
    table: {
      columns: ["", "subs", "light", "signal-to-noise", "for equal"],
      rows: split.map((each, index) => [
        each.question.filter.name,
        `${each.plan.subCount} × ${secondsWords(each.plan.subSeconds)}`,
        lightWords(each.plan.totalSeconds / 3600),
        each.signalToNoise === null ? "–" : String(Number(each.signalToNoise.perPatch.toPrecision(2))),
        all && needed > 0 ? lightWords((light * (needs[index] ?? 0)) / needed) : "–",
      ]),
    },
  };
}

/** What was assumed of the other rig and the other place. */
export function assumedBeside({ otherRig, otherSite }: Beside): string[] {
  const rig = otherRig?.question.rig;
  return [
    ...(rig?.assumptions ?? []).map((assumption) => `${rig?.name}: ${assumption}`),
    ...(otherSite?.question.situation.assumptions ?? []),
  ];
}
