/**
 * The Moon's phases: new, first quarter, full, last quarter.
 *
 * By the Almanac's definition: the Moon's apparent longitude exceeds the Sun's by 0°,
 * 90°, 180° or 270°, seen from the Earth's centre. Within 6 s.
 *
 * @packageDocumentation
 */
import { EclipticGeoMoon, SunPosition } from "astronomy-engine";
import { halfTurnDeg, turnDeg } from "../sky/angles.ts";
import { engineTime, MS_PER_DAY } from "../sky/time.ts";

export type MoonPhaseName = "new" | "first-quarter" | "full" | "last-quarter";

export type MoonPhase = { readonly name: MoonPhaseName; readonly at: Date };

const PHASES: readonly { readonly name: MoonPhaseName; readonly elongationDeg: number }[] = [
  { name: "new", elongationDeg: 0 },
  { name: "first-quarter", elongationDeg: 90 },
  { name: "full", elongationDeg: 180 },
  { name: "last-quarter", elongationDeg: 270 },
];

const MEAN_MONTH_MS = 29.530589 * MS_PER_DAY;

/**
 * How far the Moon's apparent longitude is ahead of the Sun's.
 *
 * @returns degrees, in [0, 360): 0 new, 90 first quarter, 180 full
 */
export function moonElongationDeg(at: Date): number {
  const time = engineTime(at);
  return turnDeg(EclipticGeoMoon(time).lon - SunPosition(time).elon);
}

/** Phases within a span, in order; all four kinds unless one is named. */
export function moonPhases(from: Date, to: Date, only?: MoonPhaseName): MoonPhase[] {
  const found: MoonPhase[] = [];
  for (const phase of PHASES) {
    if (only !== undefined && phase.name !== only) continue;
    // Half a month early, so that a guess off by the orbit's 0.9 days loses none.
    let guess = from.getTime() - MEAN_MONTH_MS / 2;
    for (;;) {
      const at = phaseNear(phase.elongationDeg, guess);
      if (at.getTime() >= to.getTime()) break;
      if (at >= from) found.push({ name: phase.name, at });
      guess = at.getTime() + MEAN_MONTH_MS;
    }
  }
  return found.sort((one, other) => one.at.getTime() - other.at.getTime());
}

/** The phase closest to an instant: Newton's steps at the Moon's mean rate, which settle by a factor of ten each. */
function phaseNear(elongationDeg: number, guessMs: number): Date {
  let at = guessMs;
  for (let step = 0; step < 30; step++) {
    const aheadDeg = halfTurnDeg(moonElongationDeg(new Date(Math.round(at))) - elongationDeg);
    const correction = (aheadDeg / 360) * MEAN_MONTH_MS;
    at -= correction;
    if (Math.abs(correction) < 1) break;
  }
  return new Date(Math.round(at));
}
