/**
 * `tonight` as figures.
 *
 * @packageDocumentation
 */
import type { BegunTarget } from "../core/log/progress.ts";
import type { Figure } from "./answer.ts";
import { begunOf, type Evening, eveningAssumptions } from "./evening.ts";
import { objectFigures, siteFigures, spanFigures } from "./object-figures.ts";
import { reasonSentences } from "./words/fit-words.ts";

/** All that `tonight` tells, by number. */
export function eveningFigures(found: Evening): { readonly [name: string]: Figure } {
  const { situation, rig, fits, card, ifItClears } = found;
  const { site, times, verdict } = situation;
  return {
    night: times.night.date,
    site: siteFigures(site),
    rig: rig.name,
    verdict: verdict.kind === "unknown" ? null : verdict.kind,
    outlook: verdict.outlook,
    ifItClears,
    targets: fits.targets.map((fit) => ({
      object: objectFigures(fit.target, site, times.night.noon),
      filter: fit.filter.name,
      windows: spanFigures(fit.night.windows),
      usableHours: fit.night.counted.usableHours,
      countingHours: fit.night.counted.countingHours,
      moonCost: fit.night.counted.moonCost,
      fillFraction: fit.fillFraction,
      objectInField: fit.objectInField,
      peakAltitudeDeg: fit.night.peak?.altitudeDeg ?? null,
      reach: fit.reach,
      meridianFlip: fit.night.meridianFlip?.toISOString() ?? null,
      reasons: reasonSentences(fit, site.timeZone, begunOf(found, fit)),
      begun: begunFigures(begunOf(found, fit)),
    })),
    considered: fits.considered,
    runCard:
      card === null
        ? null
        : card.steps.map((step) => ({
            at: step.at.toISOString(),
            step: step.kind,
            target: "target" in step ? step.target : null,
          })),
    assumptions: [...eveningAssumptions(found)],
  };
}

function begunFigures(begun: BegunTarget | null): Figure {
  if (begun === null) return null;
  return begun.filters.map(({ passband, inHandHours, wantedHours, leftHours }) => ({
    filter: passband,
    inHandHours,
    wantedHours,
    leftHours,
  }));
}
