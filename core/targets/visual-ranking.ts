/**
 * The whole catalogue in order of what shows well to the eye in one telescope tonight.
 *
 * Counting hours × reach × fit × suits, with contrast and exit pupil in place of electrons.
 *
 * @packageDocumentation
 */

import { magArcsec2 } from "../night/sky-brightness.ts";
import type { VisualRig } from "../rig/rig.ts";
import type { CatalogueColumns } from "./catalogue-columns.ts";
import { catalogueHours } from "./catalogue-hours.ts";
import { eyeDetector } from "./detector.ts";
import { V_BAND_NM } from "./extinction.ts";
import { bestView, type EyepieceUse, eyepieceUses, telescopeLimitMag } from "./eyepiece-choice.ts";
import type { NightGrid } from "./night-grid.ts";
import { magnitudeIsItsOwn } from "./object-brightness.ts";
import { extinctionAt, type ObservingConditions } from "./observing-conditions.ts";
import { bestOf, preferenceFor, type RankedObject } from "./ranking.ts";
import type { VisualRules } from "./ranking-rules.ts";
import type { ObjectKind, SkyObject } from "./sky-object.ts";
import type { Clearance } from "./visibility.ts";

export type VisualQuestion = {
  readonly columns: CatalogueColumns;
  readonly grid: NightGrid;
  readonly rig: VisualRig;
  readonly conditions: ObservingConditions;
  readonly clearance: Clearance;
  readonly rules: VisualRules;
  /** As for a camera. */
  readonly preferred: ReadonlyMap<string, number>;
};

export type RankedView = RankedObject & {
  /** The eyepiece that shows it best; `null` for a rig without. */
  readonly use: EyepieceUse | null;
};

/** Kinds that are seen star by star: their surface says little. */
const MADE_OF_STARS: ReadonlySet<ObjectKind> = new Set([
  "open-cluster",
  "asterism",
  "star-cloud",
  "double-star",
  "star",
]);

/**
 * Ranks every object of the catalogue for the eye.
 *
 * @param most - so many of the best are given
 * @returns those that are above the limits at some time and can be seen, best first
 */
export function rankVisual(question: VisualQuestion, most: number): RankedView[] {
  const { columns, conditions, rig, rules, preferred } = question;
  const hours = catalogueHours(question.grid, [eyeDetector(columns)], conditions, question.clearance);
  const counted = hours.counting[0] ?? new Float64Array(0);
  const uses = eyepieceUses(rig);
  const limitMag = telescopeLimitMag(conditions.zenithMagArcsec2, rig.apertureMm);
  const overheadMag = extinctionAt(conditions, V_BAND_NM);
  const suitsOf = (object: SkyObject) =>
    rules.suits[object.kind] * (object.showpiece ? 1 : (rules.undescribed[object.kind] ?? 1));

  const ranks = counted.map((counting, index) => {
    const object = columns.objects[index];
    if (counting <= 0 || object === undefined || suitsOf(object) <= 0) return 0;
    const seen = seenBy(question, object, index, uses, limitMag, overheadMag);
    if (seen === null) return 0;
    const enough = Math.min(1, counting / rules.enoughHours);
    return enough * seen.reach * seen.fit * suitsOf(object) * preferenceFor(object, preferred);
  });
  return bestOf(ranks, most).flatMap((index) => {
    const object = columns.objects[index];
    const seen = object === undefined ? null : seenBy(question, object, index, uses, limitMag, overheadMag);
    if (object === undefined || seen === null) return [];
    return [
      {
        object,
        filterIndex: 0,
        usableHours: hours.usable[index] as number,
        countingHours: counted[index] as number,
        suits: suitsOf(object),
        rank: ranks[index] as number,
        reach: seen.reach,
        fillFraction: seen.fillFraction,
        objectInField: seen.objectInField,
        use: seen.use,
      },
    ];
  });
}

type Seen = {
  readonly reach: number;
  readonly fit: number;
  readonly fillFraction: number | null;
  readonly objectInField: number | null;
  readonly use: EyepieceUse | null;
};

function seenBy(
  { columns, conditions, rules }: VisualQuestion,
  object: SkyObject,
  index: number,
  uses: readonly EyepieceUse[],
  limitMag: number,
  overheadMag: number,
): Seen | null {
  const majorArcmin = (columns.majorDeg[index] as number) * 60;
  const minorArcmin = (columns.minorDeg[index] as number) * 60;
  const surface = columns.toTheEye[index] as number;
  const ownMag = magnitudeIsItsOwn(object.kind) ? object.magnitude : null;
  if (ownMag === null && surface <= 0) return null;
  // Without a magnitude of its own, the light of its surface over its area.
  const surfaceMag = surface > 0 ? magArcsec2(surface) : null;
  const areaArcsec2 = (Math.PI / 4) * majorArcmin * minorArcmin * 3600;
  const magnitude = ownMag ?? (surfaceMag ?? Number.POSITIVE_INFINITY) - 2.5 * Math.log10(areaArcsec2);
  const aboveLimitMag = limitMag - overheadMag - magnitude;
  if (aboveLimitMag <= 0) return null;

  const starry = MADE_OF_STARS.has(object.kind);
  const coreMag = (surfaceMag ?? rules.starryMagArcsec2) - (rules.coreAboveMeanMag[object.kind] ?? 0);
  const seenMag = starry ? rules.starryMagArcsec2 : coreMag + overheadMag;
  const patch = { majorArcmin, minorArcmin, magArcsec2: seenMag };
  const view = bestView(uses, patch, conditions.zenithMagArcsec2);
  if (view === null || (!starry && view.level < 1)) return null;
  const contrast = 10 ** (0.4 * (conditions.zenithMagArcsec2 - seenMag));
  const level = Math.min(view.level, contrast / rules.softEdgeContrast);
  const apparentArcmin = majorArcmin * view.use.power;
  const large = starry && object.majorArcmin === null ? 1 : Math.min(1, apparentArcmin / rules.largeArcmin);
  return {
    reach: nearing(aboveLimitMag, rules.easyAboveLimitMag) * (starry ? 1 : nearing(level, rules.easyLevel)),
    // What is larger than the field is looked at piece by piece: half in the field is not half the fun.
    fit: Math.sqrt(view.objectInField) * large,
    fillFraction: object.majorArcmin === null ? null : view.fillFraction,
    objectInField: object.majorArcmin === null ? null : view.objectInField,
    use: view.use,
  };
}

/** From 0 towards 1, two thirds of the way at `scale`: more is always better, but less and less so. */
function nearing(value: number, scale: number): number {
  return 1 - Math.exp(-value / scale);
}
