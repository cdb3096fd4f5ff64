/**
 * Charts of an exposure: hours lost to each choice of sub, signal-to-noise by hours.
 *
 * @packageDocumentation
 */
import { EXPOSURE_RULES } from "../config/exposure-rules.ts";
import { scaleArcsecPerPixel } from "../core/rig/optics.ts";
import { patchSignalToNoise } from "../core/rig/signal-to-noise.ts";
import { hoursLost } from "../core/rig/sub-cost.ts";
import type { ChannelRates } from "../core/rig/window-rates.ts";
import type { Chart, CurveChart, SubLengthChart } from "./chart.ts";
import type { ExposureSum } from "./exposure-sum.ts";
import { lightWords, secondsWords } from "./words/exposure-words.ts";

/** Bars of the chart: read at a glance on a phone. */
const BARS = 9;

/** Where there are no hours at hand, losses are shown of so many. */
const HOURS_TO_SHOW = 4;

/** Nearer to the start than this share of the curve, a mark says nothing. */
const SEEN_SHARE = 0.03;

/** Points of a curve. */
const POINTS = 40;

/** Steps around the chosen one, and the chosen one itself. */
function stepsShown(chosenSeconds: number): readonly number[] {
  const steps = [...new Set([...EXPOSURE_RULES.subSteps, chosenSeconds])].sort((one, other) => one - other);
  const at = steps.indexOf(chosenSeconds);
  const first = Math.max(0, Math.min(at - Math.floor(BARS / 2), steps.length - BARS));
  return steps.slice(first, first + BARS);
}

function subChart(sum: ExposureSum, cautions: readonly string[]): SubLengthChart {
  const { plan } = sum;
  const hours = plan.elapsedSeconds > 0 ? plan.elapsedSeconds / 3600 : HOURS_TO_SHOW;
  const lost = (subSeconds: number) =>
    hoursLost(plan.leading.rates.leading, subSeconds, hours, EXPOSURE_RULES);
  const title = `Subs of ${secondsWords(plan.subSeconds)} lose ${lightWords(lost(plan.subSeconds))} of ${lightWords(hours)}`;
  return {
    kind: "sub-length",
    name: "sub-length",
    title,
    caption: "To downloads, dithering and read noise",
    alt: `A bar for each choice of sub, as long as the hours it loses. ${title}.`,
    cautions,
    hoursAtHand: hours,
    choices: stepsShown(plan.subSeconds).map((subSeconds) => ({
      subSeconds,
      hoursLost: lost(subSeconds),
      chosen: subSeconds === plan.subSeconds,
    })),
  };
}

function curveChart(sum: ExposureSum, cautions: readonly string[]): CurveChart | null {
  const { plan, signalToNoise, question, moonCost } = sum;
  if (signalToNoise === null || !Number.isFinite(signalToNoise.hoursToWanted)) return null;
  const { rig, asked } = question;
  const pixelArcsec = scaleArcsecPerPixel(rig.sensor.pixelUm, rig.focalLengthMm);
  const now = plan.totalSeconds / 3600;
  const most = Math.max(1, 2 * now, Math.min(1.3 * signalToNoise.hoursToWanted, 4 * Math.max(now, 1)));
  const curve = (dyes: readonly ChannelRates[]) =>
    Array.from({ length: POINTS + 1 }, (_, point) => {
      // Closer together where the curve bends.
      const hours = most * (point / POINTS) ** 2;
      const subs = { subSeconds: plan.subSeconds, count: (hours * 3600) / plan.subSeconds };
      return { x: hours, y: patchSignalToNoise(dyes, EXPOSURE_RULES.patchArcsec, pixelArcsec, subs) };
    });
  const { channels } = plan.leading.rates;
  const dark = channels.map((dye) => ({ ...dye, moon: 0 }));
  const { wanted } = asked;
  const reached = signalToNoise.hoursToWanted <= most && signalToNoise.hoursToWanted > SEEN_SHARE * most;
  const title = reached
    ? `Signal-to-noise ${wanted} after ${lightWords(signalToNoise.hoursToWanted)}`
    : `Signal-to-noise ${Number(signalToNoise.perPatch.toPrecision(3))} in ${lightWords(now)}`;
  return {
    kind: "curve",
    name: "signal-to-noise",
    title,
    caption: `In a patch of ${EXPOSURE_RULES.patchArcsec}″ × ${EXPOSURE_RULES.patchArcsec}″, subs of ${secondsWords(plan.subSeconds)}`,
    alt: `Signal-to-noise of a faint patch rising with the square root of the hours of light. ${title}.`,
    cautions,
    xLabel: "hours of light",
    yLabel: "signal-to-noise",
    lines: [
      { name: moonCost > 1.02 ? "with this Moon" : "this night", points: curve(channels) },
      ...(moonCost > 1.02 ? [{ name: "no Moon", points: curve(dark) }] : []),
    ],
    marks: [
      ...(reached ? [{ x: signalToNoise.hoursToWanted, y: wanted, label: `${wanted} wanted` }] : []),
      ...(now > 0 ? [{ x: now, y: signalToNoise.perPatch, label: "time at hand" }] : []),
    ],
  };
}

/** The charts that the sum has figures for. */
export function exposureCharts(sum: ExposureSum, cautions: readonly string[]): readonly Chart[] {
  const curve = curveChart(sum, cautions);
  return curve === null ? [subChart(sum, cautions)] : [subChart(sum, cautions), curve];
}
