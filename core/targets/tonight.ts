/**
 * What fits tonight: the ranking, made into a short list of many kinds with exact hours.
 *
 * @packageDocumentation
 */
import { type Interval, totalHours } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import type { Filter, Rig } from "../rig/rig.ts";
import { bodyPlace } from "../sky/bodies.ts";
import type { CatalogueColumns } from "./catalogue-columns.ts";
import type { EyepieceUse } from "./eyepiece-choice.ts";
import { eyepieceUses } from "./eyepiece-choice.ts";
import { nightGrid } from "./night-grid.ts";
import { type BrightnessBasis, type KindBrightness, objectBrightness } from "./object-brightness.ts";
import type { ObservingConditions } from "./observing-conditions.ts";
import { type RankedObject, rankCamera } from "./ranking.ts";
import type { RankingRules, VisualRules } from "./ranking-rules.ts";
import type { BodyName, ObjectKind, SkyObject, Target } from "./sky-object.ts";
import { type Looking, middleOf, type TargetNight, targetNight, usableSpans } from "./target-night.ts";
import type { Clearance } from "./visibility.ts";
import { rankVisual } from "./visual-ranking.ts";

/** The rig behind one of its filters. */
export type FilterLooking = { readonly filter: Filter; readonly looking: Looking };

export type TonightQuestion = {
  readonly columns: CatalogueColumns;
  readonly conditions: ObservingConditions;
  readonly times: NightTimes;
  /** Clear spans of the darkness; `null` when no forecast speaks of the night. */
  readonly clear: readonly Interval[] | null;
  readonly rig: Rig;
  readonly clearance: Clearance;
  /** Through each filter to be considered, at least one. */
  readonly lookings: readonly FilterLooking[];
  readonly rules: RankingRules;
  readonly visualRules: VisualRules;
  readonly byKind: KindBrightness;
  readonly limit: number;
  /** Objects already begun, by id, and how strongly each is preferred (1 is not at all). */
  readonly preferred: ReadonlyMap<string, number>;
};

export type FittingTarget = {
  readonly target: Target;
  readonly night: TargetNight;
  readonly filter: Filter;
  readonly fillFraction: number | null;
  readonly objectInField: number | null;
  readonly reach: number;
  readonly suits: number;
  /** Of its brightness; `null` of a body. */
  readonly basis: BrightnessBasis | null;
  /** The eyepiece that shows it best; `null` for a camera. */
  readonly use: EyepieceUse | null;
  /** What the order follows; never shown. */
  readonly rank: number;
};

export type FitsTonight = {
  readonly targets: readonly FittingTarget[];
  /** How many objects were weighed. */
  readonly considered: number;
};

/** An object through the filter that suits it best. */
type Candidate = RankedObject & { readonly from: FilterLooking; readonly use?: EyepieceUse | null };

/** More are looked at closely than are shown, as a few may turn out to have no window. */
const SPARE_LOOKS = 2;
/** The list is drawn from so many times its length of the best. */
const POOL_FOR_VARIETY = 10;
/** Another of a kind already shown counts for so much less: many kinds, not ten of one. */
const SAME_KIND_SHARE = 0.86;
const PLANETS: readonly BodyName[] = ["Moon", "Venus", "Mars", "Jupiter", "Saturn", "Uranus", "Neptune"];

/** What fits one night, best first. */
export function fitsTonight(question: TonightQuestion): FitsTonight {
  const { columns, times, clear } = question;
  const spans = usableSpans(times, { kind: "place", raDeg: 0, decDeg: 0 }, clear);
  const objects = totalHours(spans) > 0 ? variedBest(question, spans) : [];
  const bodies = bodiesInReach(question);
  const looked = objects.map((candidate) => lookCloser(question, candidate));
  const targets = [...looked, ...bodies]
    .filter(({ night }) => night.counted.countingHours > 0)
    .sort((one, other) => other.rank - one.rank)
    .slice(0, question.limit);
  return { targets, considered: columns.objects.length };
}

/** The best of all objects, each once, through whichever filter ranks it highest. */
function candidates(question: TonightQuestion, spans: readonly Interval[], most: number): Candidate[] {
  const { columns, conditions, clearance, rig, lookings, preferred } = question;
  const grid = nightGrid(conditions, spans, columns.directions);
  const shared = { columns, grid, conditions, clearance, preferred };
  const filters = lookings.map(({ looking }) => (looking.kind === "camera" ? looking.works : []));
  const ranked: readonly (RankedObject & { readonly use?: EyepieceUse | null })[] =
    rig.kind === "visual"
      ? rankVisual({ ...shared, rig, rules: question.visualRules }, most)
      : rankCamera({ ...shared, filters, rules: question.rules }, most);
  return ranked.flatMap((row) => {
    const from = lookings[row.filterIndex];
    return from === undefined ? [] : [{ ...row, from }];
  });
}

/** The whole that an object is a part of, else itself: one row is given to each. */
function familyOf({ object }: Candidate): string {
  return object.partOf ?? object.id;
}

/** The best of a ranking, one of a family, each further one of a kind counting a little less. */
function variedBest(question: TonightQuestion, spans: readonly Interval[]): Candidate[] {
  const wanted = question.limit + SPARE_LOOKS;
  let pool = candidates(question, spans, wanted * POOL_FOR_VARIETY);
  const chosen: Candidate[] = [];
  const counts = new Map<ObjectKind, number>();
  while (chosen.length < wanted && pool.length > 0) {
    const worth = (candidate: Candidate) =>
      candidate.rank * SAME_KIND_SHARE ** (counts.get(candidate.object.kind) ?? 0);
    const next = pool.reduce((best, each) => (worth(each) > worth(best) ? each : best));
    chosen.push({ ...next, rank: worth(next) });
    counts.set(next.object.kind, (counts.get(next.object.kind) ?? 0) + 1);
    pool = pool.filter((each) => familyOf(each) !== familyOf(next));
  }
  return chosen;
}

function nightOf(question: TonightQuestion, from: FilterLooking, target: Target, object: SkyObject | null) {
  const { conditions, times, clear, byKind, rig } = question;
  return targetNight({
    conditions,
    times,
    target,
    brightness:
      object === null
        ? { continuumMagArcsec2: null, rayleigh: {} }
        : objectBrightness(object, byKind).brightness,
    looking: from.looking,
    spans: usableSpans(times, target, clear),
    clearance: question.clearance,
    mount: rig.mount,
    flipAfterMinutes: rig.kind === "camera" ? rig.flipAfterMinutes : 0,
  });
}

function lookCloser(question: TonightQuestion, candidate: Candidate): FittingTarget {
  const { object, from } = candidate;
  const target: Target = { kind: "object", object };
  return {
    target,
    night: nightOf(question, from, target, object),
    filter: from.filter,
    fillFraction: candidate.fillFraction,
    objectInField: candidate.objectInField,
    reach: candidate.reach,
    suits: candidate.suits,
    basis: objectBrightness(object, question.byKind).basis,
    use: candidate.use ?? null,
    rank: candidate.rank,
  };
}

/** Moon and planets, for the eye: bright enough for any sky, as large as the eyepiece makes them. */
function bodiesInReach(question: TonightQuestion): FittingTarget[] {
  const { rig } = question;
  const [from] = question.lookings;
  if (rig.kind !== "visual" || from === undefined) return [];
  const strongest = eyepieceUses(rig).at(-1);
  if (strongest === undefined) return [];
  return PLANETS.map((body) => {
    const target: Target = { kind: "body", body };
    const night = nightOf(question, from, target, null);
    const seen = bodyPlace(body, question.conditions.site, middleOf(question.times.night));
    const acrossDeg = (2 * seen.semidiameterArcsec) / 3600;
    const use = acrossDeg > strongest.trueFieldDeg ? (eyepieceUses(rig)[0] ?? strongest) : strongest;
    const large = Math.min(1, (acrossDeg * 60 * use.power) / question.visualRules.largeArcmin);
    const lit = body === "Moon" ? Math.min(1, 4 * seen.illuminatedFraction) : 1;
    const enough = Math.min(1, night.counted.countingHours / question.visualRules.enoughHours);
    return {
      target,
      night,
      filter: from.filter,
      fillFraction: Math.min(1, (acrossDeg / use.trueFieldDeg) ** 2),
      objectInField: 1,
      reach: 1,
      suits: 1,
      basis: null,
      use,
      rank: enough * large * lit,
    };
  });
}
