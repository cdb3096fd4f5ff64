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
import { type CatalogueHours, cameraDetector, catalogueHours, catalogueSignals } from "./catalogue-hours.ts";
import { type BandWork, zenithVariance } from "./counting-hours.ts";
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
  /** One for each pass band of the filter. */
  readonly works: readonly BandWork[];
  readonly conditions: ObservingConditions;
  readonly clearance: Clearance;
  readonly rules: RankingRules;
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
 * @returns all that get any counting hours and that the filter suits at all, best first
 */
export function rankCamera(question: RankingQuestion): RankedObject[] {
  const { columns, works, rules } = question;
  const rig = works[0]?.rig;
  if (rig === undefined) return [];
  const widthDeg = fieldDeg(rig.sensor.widthMm, rig.focalLengthMm);
  const heightDeg = fieldDeg(rig.sensor.heightMm, rig.focalLengthMm);
  const bands = works.map((work) => {
    const detector = cameraDetector(columns, work);
    return {
      hours: catalogueHours(question.grid, detector, question.conditions, question.clearance),
      needed: secondsNeeded(question, work),
      suits: columns.suits[work.band.line ?? "continuum"],
    };
  });

  const ranked: RankedObject[] = [];
  columns.objects.forEach((object, index) => {
    const best = bestBand(bands, index);
    if (best === null) return;
    const major = columns.majorDeg[index] as number;
    const fit = fieldFit(major, columns.minorDeg[index] as number, widthDeg, heightDeg);
    const sized = object.majorArcmin !== null;
    const fitting = fit.objectInField * Math.min(1, fit.fillFraction / rules.fullFill);
    ranked.push({
      object,
      usableHours: best.usableHours,
      countingHours: Math.min(...bands.map(({ hours }) => hours.counting[index] as number)),
      reach: best.reach,
      fillFraction: sized ? fit.fillFraction : null,
      objectInField: sized ? fit.objectInField : null,
      suits: best.suits,
      rank: best.worth * fitting,
    });
  });
  return ranked.sort((one, other) => other.rank - one.rank);
}

type RankedBand = {
  readonly hours: CatalogueHours;
  readonly needed: Float64Array;
  readonly suits: Float64Array;
};

/** The pass band through which an object gains most; `null` when through none. */
function bestBand(bands: readonly RankedBand[], index: number) {
  let best: { usableHours: number; reach: number; suits: number; worth: number } | null = null;
  for (const band of bands) {
    const counting = band.hours.counting[index] as number;
    const suits = band.suits[index] as number;
    if (counting <= 0 || suits <= 0) continue;
    const reach = Math.min(1, (counting * SECONDS_PER_HOUR) / (band.needed[index] as number));
    if (reach <= 0) continue;
    const worth = counting * reach * suits;
    if (best === null || worth > best.worth) {
      best = { usableHours: band.hours.usable[index] as number, reach, suits, worth };
    }
  }
  return best;
}
