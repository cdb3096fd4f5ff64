/**
 * How long a sub should be: the shortest worth its read noise, the caps, the step to set.
 *
 * @packageDocumentation
 */
import type { ExposureRules } from "./exposure-rules.ts";
import type { CameraRig } from "./rig.ts";
import { michaudSeconds } from "./trail-limits.ts";

/**
 * The shortest sub for which read noise adds at most a share to the other noise.
 *
 * @param backgroundElectrons - sky, Moon and dark current, a second and pixel
 * @param share - of noise added, above 0: 0.05 gives 9.76·R²/background
 * @returns seconds; infinite where there is no background at all
 *
 * Source: t = R²/(B·((1+p)² − 1)), from the CCD equation (W. J. Merline & S. B. Howell 1995).
 */
export function shortestSubSeconds(
  readNoiseElectrons: number,
  backgroundElectrons: number,
  share: number,
): number {
  return (readNoiseElectrons * readNoiseElectrons) / (backgroundElectrons * ((1 + share) ** 2 - 1));
}

/** What keeps a sub from being as long as read noise asks. */
export type SubCap = "tracking" | "saturation" | "time";

export type SubChoice = {
  readonly subSeconds: number;
  /** What bound it; `null` when it is as long as read noise asks. */
  readonly cap: SubCap | null;
};

/** Longest sub that the mount follows without trails, seconds; common practice. */
export function trackingCapSeconds(
  rig: Pick<CameraRig, "mount" | "guided" | "focalLengthMm" | "focalRatio" | "sensor">,
  rules: ExposureRules,
  decDeg: number,
): number {
  if (rig.mount === "fixed") return michaudSeconds({ ...rig, pixelUm: rig.sensor.pixelUm }, decDeg);
  if (rig.guided) return rules.guidedSeconds;
  return Math.min(rules.unguidedSeconds, rules.unguidedSecondsTimesMm / rig.focalLengthMm);
}

/**
 * The sub to set: the least step not below the shortest, under every cap.
 *
 * @param shortestSeconds - from {@link shortestSubSeconds}
 * @param caps - seconds by what sets them; the least one binds
 * @returns a step that cameras offer, or the cap itself where it is below every step
 */
export function recommendedSub(
  shortestSeconds: number,
  caps: Readonly<Partial<Record<SubCap, number>>>,
  rules: ExposureRules,
): SubChoice {
  const longest = rules.subSteps[rules.subSteps.length - 1] ?? shortestSeconds;
  const wanted = rules.subSteps.find((step) => step >= shortestSeconds) ?? longest;
  let cap: SubCap | null = null;
  let capSeconds = Number.POSITIVE_INFINITY;
  for (const each of ["tracking", "saturation", "time"] as const) {
    const seconds = caps[each];
    if (seconds !== undefined && seconds < capSeconds) {
      cap = each;
      capSeconds = seconds;
    }
  }
  if (wanted <= capSeconds) return { subSeconds: wanted, cap: null };
  const below = rules.subSteps.filter((step) => step <= capSeconds);
  return { subSeconds: below[below.length - 1] ?? capSeconds, cap };
}

/** Clock time that one sub takes: exposure, download and its part of the dithering, seconds. */
export function cycleSeconds(subSeconds: number, rules: ExposureRules): number {
  return subSeconds + rules.downloadSeconds + rules.settlingSeconds / rules.subsPerDither;
}

/**
 * How many subs fit.
 *
 * @param windowSeconds - clock time at hand
 * @param flips - meridian flips within it
 */
export function subsThatFit(
  windowSeconds: number,
  subSeconds: number,
  flips: number,
  rules: ExposureRules,
): number {
  const left = windowSeconds - rules.startUpSeconds - flips * rules.flipSeconds;
  return Math.max(0, Math.floor(left / cycleSeconds(subSeconds, rules)));
}
