/**
 * The whole catalogue in order of what fits one night, one camera and one filter.
 *
 * Counting hours × reach × fit × suits. Every object is evaluated; none is
 * left out for being little known.
 *
 * @packageDocumentation
 */
import { fieldFit } from "../rig/ellipse-in-frame.ts";
import { fieldDeg, scaleArcsecPerPixel } from "../rig/optics.ts";
import type { CatalogueColumns } from "./catalogue-columns.ts";
import { catalogueHours } from "./catalogue-hours.ts";
import { type BandWork, zenithVariance } from "./counting-hours.ts";
import { cameraDetector, catalogueSignals } from "./detector.ts";
import { transmission } from "./extinction.ts";
import type { NightGrid } from "./night-grid.ts";
import { extinctionAt, type ObservingConditions } from "./observing-conditions.ts";
import type { RankingRules } from "./ranking-rules.ts";
import type { SkyObject } from "./sky-object.ts";
import type { Clearance } from "./visibility.ts";

const SECONDS_PER_HOUR = 3600;
const NO_BRIGHTNESS = { continuumMagArcsec2: null, rayleigh: {} } as const;

export type RankedObject = {
  readonly object: SkyObject;
  /** Which of the filters suits it best, by its place in the question; 0 for the eye. */
  readonly filterIndex: number;
  readonly usableHours: number;
  /** Through the filter's least favoured pass band. */
  readonly countingHours: number;
  /** How far the night's hours go towards the wanted signal-to-noise, at most 1. */
  readonly reach: number;
  readonly fillFraction: number | null;
  readonly objectInField: number | null;
  /** How well the filter suits it, 0 to 1. */
  readonly suits: number;
  /** What the order follows; never shown. */
  readonly rank: number;
};

export type RankingQuestion = {
  readonly columns: CatalogueColumns;
  readonly grid: NightGrid;
  /** For each filter of one rig, its pass bands. */
  readonly filters: readonly (readonly BandWork[])[];
  readonly conditions: ObservingConditions;
  readonly clearance: Clearance;
  readonly rules: RankingRules;
  /** Objects already begun, by id, and how strongly each is preferred (1 is not at all). */
  readonly preferred: ReadonlyMap<string, number>;
};

/**
 * Seconds of counting time to the wanted signal-to-noise in the patch, by object.
 *
 * From the sum over dyes of S²·n/(S·T + noise), with n the patch's pixels of the dye, all at the
 * zenith without Moon; infinite for what gives no signal.
 */
function secondsNeeded(question: RankingQuestion, work: BandWork): Float64Array {
  const { columns, conditions, rules, grid } = question;
  const { rig, band } = work;
  const scale = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
  const pixels = (rules.patchArcsec / scale) ** 2;
  const airCelsius = grid.instants[0]?.airCelsius ?? 0;
  const rates = new Float64Array(columns.objects.length);
  for (const channel of band.channels) {
    const arriving = transmission(extinctionAt(conditions, channel.wavelengthNm), 1);
    const noise = zenithVariance(work, conditions, NO_BRIGHTNESS, airCelsius, channel);
    const signals = catalogueSignals(columns, band, channel);
    for (let index = 0; index < rates.length; index++) {
      const signal = (signals[index] as number) * arriving;
      rates[index] =
        (rates[index] as number) + (signal * signal * pixels * channel.pixelShare) / (signal + noise);
    }
  }
  return rates.map((rate) => rules.wantedSignalToNoise ** 2 / rate);
}

/**
 * Ranks every object of the catalogue for the night.
 *
 * @param most - so many of the best are given
 * @returns those that get any counting hours and that a filter suits at all, each once with the filter
 *   that suits it best, best first
 */
export function rankCamera(question: RankingQuestion, most: number): RankedObject[] {
  const { columns, rules, preferred } = question;
  const works = question.filters.flat();
  const rig = works[0]?.rig;
  if (rig === undefined) return [];
  const widthDeg = fieldDeg(rig.sensor.widthMm, rig.focalLengthMm);
  const heightDeg = fieldDeg(rig.sensor.heightMm, rig.focalLengthMm);
  const detectors = question.filters.flatMap((filter) => {
    const worthwhile = worthwhileThrough(columns, filter);
    return filter.map((work) => cameraDetector(columns, work, worthwhile));
  });
  const hours = catalogueHours(question.grid, detectors, question.conditions, question.clearance);
  const bands = works.map(
    (work, index): RankedBand => ({
      filterIndex: question.filters.findIndex((filter) => filter.includes(work)),
      counting: hours.counting[index] as Float64Array,
      needed: secondsNeeded(question, work),
      suits: columns.suits[work.band.line ?? "continuum"],
    }),
  );
  const fitOf = (index: number) =>
    fieldFit(columns.majorDeg[index] as number, columns.minorDeg[index] as number, widthDeg, heightDeg);

  const ranks = hours.usable.map((usable, index) => {
    const best = usable > 0 ? bestBand(bands, index) : null;
    if (best === null) return 0;
    const fit = fitOf(index);
    const fitting = fit.objectInField * Math.min(1, fit.fillFraction / rules.fullFill);
    return worthOf(best, index) * fitting * preferenceFor(columns.objects[index], preferred);
  });
  return bestOf(ranks, most).flatMap((index) => {
    const object = columns.objects[index];
    const best = bestBand(bands, index);
    if (object === undefined || best === null) return [];
    const fit = object.majorArcmin === null ? null : fitOf(index);
    const through = bands.filter(({ filterIndex }) => filterIndex === best.filterIndex);
    return [
      {
        object,
        filterIndex: best.filterIndex,
        usableHours: hours.usable[index] as number,
        countingHours: Math.min(...through.map(({ counting }) => counting[index] as number)),
        reach: reachOf(best, index),
        fillFraction: fit?.fillFraction ?? null,
        objectInField: fit?.objectInField ?? null,
        suits: best.suits[index] as number,
        rank: ranks[index] as number,
      },
    ];
  });
}

/** The objects that any pass band of a filter shows anything of. */
function worthwhileThrough(columns: CatalogueColumns, filter: readonly BandWork[]): Uint8Array {
  const worthwhile = new Uint8Array(columns.objects.length);
  for (const { band } of filter) {
    const suits = columns.suits[band.line ?? "continuum"];
    for (let index = 0; index < worthwhile.length; index++) {
      if ((suits[index] as number) > 0) worthwhile[index] = 1;
    }
  }
  return worthwhile;
}

/** What the order is multiplied by for an object that is already begun; 1 for the rest. */
export function preferenceFor(object: SkyObject | undefined, preferred: ReadonlyMap<string, number>): number {
  return object === undefined || preferred.size === 0 ? 1 : (preferred.get(object.id) ?? 1);
}

/** Places of the largest values above 0, largest first. */
export function bestOf(ranks: Float64Array, most: number): number[] {
  const placed: number[] = [];
  for (let index = 0; index < ranks.length; index++) {
    if ((ranks[index] as number) > 0) placed.push(index);
  }
  return placed.sort((one, other) => (ranks[other] as number) - (ranks[one] as number)).slice(0, most);
}

type RankedBand = {
  readonly filterIndex: number;
  readonly counting: Float64Array;
  readonly needed: Float64Array;
  readonly suits: Float64Array;
};

/** The pass band through which an object gains most; `null` when through none. */
function bestBand(bands: readonly RankedBand[], index: number): RankedBand | null {
  let best: RankedBand | null = null;
  let most = 0;
  for (const band of bands) {
    const worth = worthOf(band, index);
    if (worth > most) {
      best = band;
      most = worth;
    }
  }
  return best;
}

function reachOf(band: RankedBand, index: number): number {
  const seconds = (band.counting[index] as number) * SECONDS_PER_HOUR;
  return Math.min(1, seconds / (band.needed[index] as number));
}

function worthOf(band: RankedBand, index: number): number {
  return (band.counting[index] as number) * reachOf(band, index) * (band.suits[index] as number);
}
