/**
 * One exposure worked out: a rig behind a filter on a target, under a night's conditions.
 *
 * @packageDocumentation
 */
import { COOLED_CELSIUS, EXPOSURE_RULES } from "../config/exposure-rules.ts";
import { PHOTOMETRY } from "../config/photometry.ts";
import { KIND_BRIGHTNESS } from "../config/ranking.ts";
import { SEEING_ARCSEC } from "../config/rig-defaults.ts";
import { type Interval, totalHours } from "../core/interval.ts";
import { magArcsec2 } from "../core/night/sky-brightness.ts";
import { type BandResponse, bandResponses } from "../core/rig/band-response.ts";
import { sensorCelsius } from "../core/rig/electrons.ts";
import { type ExposurePlan, exposurePlan } from "../core/rig/exposure-plan.ts";
import { type Improvement, improvements } from "../core/rig/improvements.ts";
import { pixelsAcross, scaleArcsecPerPixel } from "../core/rig/optics.ts";
import type { CameraRig, Filter } from "../core/rig/rig.ts";
import {
  hoursToSignalToNoise,
  patchRate,
  patchSignalToNoise,
  pixelSignalToNoise,
} from "../core/rig/signal-to-noise.ts";
import { usualSubSeconds } from "../core/rig/usual-sub.ts";
import {
  type BandRates,
  bandRates,
  meanAirCelsius,
  meanAirmass,
  meanSkyNanolamberts,
  type WindowLight,
} from "../core/rig/window-rates.ts";
import { countedHours } from "../core/targets/counting-hours.ts";
import { V_BAND_NM } from "../core/targets/extinction.ts";
import { type BrightnessBasis, objectBrightness } from "../core/targets/object-brightness.ts";
import { extinctionAt } from "../core/targets/observing-conditions.ts";
import type { SurfaceBrightness } from "../core/targets/sky-object.ts";
import { middleOf } from "../core/targets/target-night.ts";
import { AskError } from "./ask-error.ts";
import type { ExposureAsked } from "./exposure-asked.ts";
import {
  type ExposureQuestion,
  type ExposureTarget,
  type ExposureWindow,
  flipIn,
  nightsOf,
  type SumsFor,
  turningSeconds,
  windowOf,
} from "./exposure-window.ts";

/** What is known of the object's surface, and how: `given` by the asker. */
export type KnownBrightness = {
  readonly brightness: SurfaceBrightness;
  readonly basis: BrightnessBasis | "given" | "none";
};

export type ExposureSum = {
  readonly question: ExposureQuestion;
  readonly sumsFor: SumsFor;
  /** The target's windows, and the part of them that is used. */
  readonly windows: readonly Interval[];
  readonly used: readonly Interval[];
  /** Whether the forecast's clouds cut the windows. */
  readonly cutByCloud: boolean;
  readonly plan: ExposurePlan;
  readonly known: KnownBrightness;
  readonly skyMagArcsec2: number;
  readonly airmasses: number;
  readonly sensorCelsius: number;
  readonly seeingArcsec: number;
  readonly starMagnitude: number;
  /** Of the leading band; `null` when nothing is known of the object's surface. */
  readonly signalToNoise: SignalToNoise | null;
  /** The Moon's cost to each band, in the plan's order, and the worst. */
  readonly moonCosts: readonly number[];
  readonly moonCost: number;
  readonly helps: readonly Improvement[];
  readonly storageBytes: number;
  /** When a german mount must turn over within the time used; `null` otherwise. */
  readonly flipAt: Date | null;
  /** What a second adds to a faint patch's squared signal-to-noise: two sums compare by it. */
  readonly rate: number;
};

export type SignalToNoise = {
  readonly perPixel: number;
  readonly perPatch: number;
  readonly hoursToWanted: number;
};

/** A faint surface, to compare rigs and places by where the object's own is not known. */
const FAINT: SurfaceBrightness = {
  continuumMagArcsec2: 25,
  rayleigh: { "h-alpha": 5, "o-iii": 5, "s-ii": 5, "h-beta": 5 },
};

const NOTHING_KNOWN: SurfaceBrightness = { continuumMagArcsec2: null, rayleigh: {} };

/** The surface the sums are made with: what was given, else the object's own. */
function knownBrightness(
  target: ExposureTarget | null,
  asked: Pick<ExposureAsked, "brightness" | "rayleigh">,
): KnownBrightness {
  const { brightness, rayleigh } = asked;
  if (brightness !== null || rayleigh !== null) {
    const lines =
      rayleigh === null
        ? {}
        : { "h-alpha": rayleigh, "o-iii": rayleigh, "s-ii": rayleigh, "h-beta": rayleigh };
    return { brightness: { continuumMagArcsec2: brightness, rayleigh: lines }, basis: "given" };
  }
  if (target?.kind !== "object") return { brightness: NOTHING_KNOWN, basis: "none" };
  return objectBrightness(target.object, KIND_BRIGHTNESS);
}

function signalToNoiseOf(sum: {
  readonly rig: CameraRig;
  readonly plan: ExposurePlan;
  readonly wanted: number;
}): SignalToNoise | null {
  const { rig, plan, wanted } = sum;
  const { rates } = plan.leading;
  if (!rates.leading.signalKnown) return null;
  const pixelArcsec = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
  const subs = { subSeconds: plan.subSeconds, count: plan.subCount };
  const { patchArcsec } = EXPOSURE_RULES;
  return {
    perPixel: pixelSignalToNoise(rates.leading, subs),
    perPatch: patchSignalToNoise(rates.channels, patchArcsec, pixelArcsec, subs),
    hoursToWanted: hoursToSignalToNoise(rates.channels, patchArcsec, pixelArcsec, plan.subSeconds, wanted),
  };
}

/** What a second is worth on a faint patch, through the band that stands for the filter. */
function faintRate(rig: CameraRig, plan: ExposurePlan, light: WindowLight): number {
  const { band } = plan.leading.rates;
  const { channels } = bandRates(rig, band, light, FAINT);
  const pixelArcsec = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
  return patchRate(channels, EXPOSURE_RULES.patchArcsec, pixelArcsec, plan.subSeconds);
}

/** Bytes of one sub as cameras keep it. */
function bytesOfSub({ sensor }: CameraRig): number {
  const pixels = pixelsAcross(sensor.widthMm, sensor.pixelUm) * pixelsAcross(sensor.heightMm, sensor.pixelUm);
  return pixels * (sensor.bitsPerPixel > 8 ? 2 : 1);
}

function nonEmpty(
  bands: readonly BandRates[],
  rig: CameraRig,
  filter: Filter,
): readonly [BandRates, ...BandRates[]] {
  const [first, ...others] = bands;
  if (first !== undefined) return [first, ...others];
  throw new AskError(
    "blind-filter",
    "filter",
    `“filter”: the sensor of ${rig.name} sees nothing through ${filter.name}; name another filter, or none.`,
  );
}

/**
 * The Moon's cost to each band, as the target's own night counts it: with the usual sub, over the time
 * used; 1 where there is no window.
 */
function moonCostsOf(
  question: ExposureQuestion,
  bands: readonly BandResponse[],
  brightness: SurfaceBrightness,
  { track, used }: ExposureWindow,
): readonly number[] {
  const { situation, rig, filter } = question;
  const { conditions, times } = situation;
  if (track === null) return bands.map(() => 1);
  const middle = middleOf(times.night);
  const subSeconds = usualSubSeconds(rig, filter, bands, conditions, middle, EXPOSURE_RULES);
  return bands.map(
    (band) => countedHours({ rig, band, subSeconds }, conditions, brightness, track, used).moonCost ?? 1,
  );
}

/**
 * Works one exposure out.
 *
 * @throws AskError when no pixel of the rig sees anything through the filter
 */
export function exposureSum(question: ExposureQuestion): ExposureSum {
  const { situation, rig, filter, target, asked } = question;
  const { conditions, site } = situation;
  const responses = bandResponses(rig, filter, PHOTOMETRY);
  const window = windowOf(question, responses);
  const { light } = window;
  const known = knownBrightness(target, asked);
  const bands = nonEmpty(
    responses.map((band) => bandRates(rig, band, light, known.brightness)),
    rig,
    filter,
  );
  const hours = asked.hours ?? totalHours(window.used);
  const flipAt = flipIn(question, window);
  const airmasses = meanAirmass(light);
  const seeingArcsec = asked.seeingArcsec ?? site.seeingArcsec ?? SEEING_ARCSEC;
  const above = asked.star?.magnitude ?? EXPOSURE_RULES.unnamedStarMagnitude;
  const starMagnitude = above + extinctionAt(conditions, V_BAND_NM) * airmasses;
  const plan = exposurePlan({
    rig,
    bands,
    windowSeconds: hours * 3600,
    flips: flipAt === null ? 0 : nightsOf(asked, window.used),
    airmasses,
    seeingArcsec,
    starMagnitude,
    starNamed: asked.star !== null,
    decDeg: declinationOf(target, site.latitudeDeg),
    turningSeconds: turningSeconds(question, window),
    subSeconds: asked.subSeconds,
    rules: { ...EXPOSURE_RULES, readNoiseShare: asked.share },
  });
  const moonCosts = moonCostsOf(question, responses, known.brightness, window);
  const warmth = sensorCelsius(rig, meanAirCelsius(light));
  return {
    question,
    sumsFor: window.sumsFor,
    windows: window.windows,
    used: window.used,
    cutByCloud: window.cutByCloud,
    plan,
    known,
    skyMagArcsec2: magArcsec2(meanSkyNanolamberts(light)),
    airmasses,
    sensorCelsius: warmth,
    seeingArcsec,
    starMagnitude: above,
    signalToNoise: signalToNoiseOf({ rig, plan, wanted: asked.wanted }),
    moonCosts,
    moonCost: Math.max(...moonCosts),
    helps: improvements({
      rates: plan.leading.rates.leading,
      subSeconds: plan.subSeconds,
      totalHours: plan.totalSeconds / 3600,
      sensor: rig.sensor,
      sensorCelsius: warmth,
      cooledCelsius: COOLED_CELSIUS,
      moonCost: moonCosts[plan.bands.indexOf(plan.leading)] ?? 1,
      line: plan.leading.rates.band.line !== null,
    }),
    flipAt,
    storageBytes: plan.subCount * bytesOfSub(rig),
    rate: faintRate(rig, plan, light),
  };
}

/** Where stars trail: at the target, or overhead. */
function declinationOf(target: ExposureTarget | null, latitudeDeg: number): number {
  if (target === null) return latitudeDeg;
  return target.kind === "object" ? target.object.decDeg : target.decDeg;
}
