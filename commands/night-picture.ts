/**
 * The night chart's description: twilights, up to three targets, cloud and Moon.
 *
 * @packageDocumentation
 */
import type { Interval } from "../core/interval.ts";
import type { NightTimes } from "../core/night/night.ts";
import type { Site } from "../core/site.ts";
import { heightTrack } from "../core/sky/topocentric.ts";
import type { TargetTrack } from "../core/targets/placer.ts";
import { skylineAltitudeDeg } from "../core/targets/skyline.ts";
import { oktas } from "../core/weather/cloud.ts";
import type { ForecastHour } from "../core/weather/forecast-hour.ts";
import type { NightChart, PathState } from "./chart.ts";
import { dateWords } from "./words/clock.ts";
import { twilightSteps } from "./words/night-words.ts";

const MARGIN_MS = 30 * 60_000;
const STEP_MS = 10 * 60_000;

/** A line of the chart. */
export type PicturedPath = {
  readonly name: string;
  readonly track: TargetTrack;
  readonly windows: readonly Interval[];
};

export type NightPicture = {
  readonly site: Site;
  readonly times: NightTimes;
  readonly hours: readonly ForecastHour[];
  readonly paths: readonly PicturedPath[];
  readonly window: (Interval & { readonly label: string }) | null;
  readonly title: string;
  readonly alt: string;
  readonly cautions: readonly string[];
};

/** From a little before sunset to a little after sunrise; noon to noon without either. */
export function nightChartSpan(times: NightTimes): Interval {
  const { sunset, sunrise, night } = times;
  if (sunset === null || sunrise === null) return { start: night.noon, end: night.nextNoon };
  return { start: new Date(sunset.getTime() - MARGIN_MS), end: new Date(sunrise.getTime() + MARGIN_MS) };
}

function stepsOf(span: Interval): Date[] {
  const instants: Date[] = [];
  for (let ms = span.start.getTime(); ms <= span.end.getTime(); ms += STEP_MS) instants.push(new Date(ms));
  return instants;
}

function stateOf(site: Site, path: PicturedPath, at: Date): PathState {
  const { altitudeDeg, azimuthDeg } = path.track(at.getTime());
  if (altitudeDeg < skylineAltitudeDeg(site.skyline, azimuthDeg)) return "hidden";
  return path.windows.some(({ start, end }) => start <= at && at <= end) ? "usable" : "poor";
}

/** Describes the chart of a night. */
export function nightPicture(picture: NightPicture): NightChart {
  const { site, times } = picture;
  const span = nightChartSpan(times);
  const instants = stepsOf(span);
  const moonHeight = heightTrack("Moon", site);
  return {
    kind: "night",
    name: "night",
    title: picture.title,
    alt: picture.alt,
    cautions: picture.cautions,
    caption: `${site.name}, ${dateWords(times.night.date)}`,
    timeZone: times.night.timeZone,
    span,
    twilights: twilightSteps(times),
    paths: picture.paths.map((path) => ({
      name: path.name,
      points: instants.map((at) => ({
        at,
        altitudeDeg: path.track(at.getTime()).altitudeDeg,
        state: stateOf(site, path, at),
      })),
    })),
    window: picture.window,
    cloud: picture.hours
      .filter(({ at }) => span.start <= at && at <= span.end)
      .map(({ at, cloudPercent }) => ({ at, oktas: cloudPercent === null ? null : oktas(cloudPercent) })),
    moon: {
      points: instants.map((at) => ({ at, altitudeDeg: moonHeight(at.getTime()).altitudeDeg })),
      illuminatedFraction: times.moon.illuminatedFraction,
      waxing: times.moon.waxing,
      southern: site.latitudeDeg < 0,
    },
  };
}
