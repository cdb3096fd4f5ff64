/**
 * A night cut where the weather crosses a limit: stretches, each with what speaks against it.
 *
 * Within an hour the crossings are exact, for cloud, temperature and wind run
 * linearly. A step over an hour is taken whole or not at all: it makes no edges.
 *
 * @packageDocumentation
 */
import { type Interval, intersectIntervals } from "../interval.ts";
import type { ForecastHour } from "./forecast-hour.ts";
import { firstAtOrAfter, LONGEST_STEP_MS, weatherAt } from "./interpolate.ts";
import { type Grade, type Objection, objections, thresholds } from "./objections.ts";
import type { ObservingLimits } from "./observing-limits.ts";

export type Stretch = Interval & {
  /** Part of a step over an hour. */
  readonly coarse: boolean;
  /** Empty: usable. */
  readonly objections: readonly Objection[];
};

const FINE_STEP_MS = 3_600_000;

/**
 * The known parts of some spans, cut at every crossing of a limit.
 *
 * @param hours - in order of time, dew points filled
 * @param spans - in order, none overlapping; steps that touch none are left out
 * @returns stretches in order, within the spans; what is unknown is left out
 */
export function stretchesOf(
  hours: readonly ForecastHour[],
  spans: readonly Interval[],
  limits: ObservingLimits,
  grade: Grade,
): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let last: ForecastHour | null = null;
  for (const hour of hours) {
    if (hour.cloudPercent === null) continue;
    const stepMs = last === null ? Number.POSITIVE_INFINITY : hour.at.getTime() - last.at.getTime();
    if (last !== null && stepMs <= LONGEST_STEP_MS && touches(spans, last.at, hour.at)) {
      const cut = cutStep(hours, last.at, hour.at, limits, grade);
      if (stepMs <= FINE_STEP_MS) stretches.push(...cut);
      else stretches.push(wholeStep(cut, last.at, hour.at));
    }
    last = hour;
  }
  return stretches.flatMap((stretch) =>
    intersectIntervals([stretch], spans).map((part) => ({ ...stretch, ...part })),
  );
}

function touches(spans: readonly Interval[], start: Date, end: Date): boolean {
  return spans.some((span) => span.start < end && span.end > start);
}

/** A coarse step: every objection anywhere in it holds for all of it. */
function wholeStep(cut: readonly Stretch[], start: Date, end: Date): Stretch {
  const byKind = new Map<Objection["kind"], Objection>();
  for (const objection of cut.flatMap((stretch) => stretch.objections)) {
    if (!byKind.has(objection.kind)) byKind.set(objection.kind, objection);
  }
  return { start, end, coarse: true, objections: [...byKind.values()] };
}

function cutStep(
  hours: readonly ForecastHour[],
  start: Date,
  end: Date,
  limits: ObservingLimits,
  grade: Grade,
): Stretch[] {
  const corners = cornersBetween(hours, start, end);
  const cuts = new Set<number>(corners.map((corner) => corner.at.getTime()));
  corners.forEach((to, index) => {
    const from = corners[index - 1];
    if (from !== undefined) for (const ms of crossings(from, to, limits)) cuts.add(ms);
  });
  const ordered = [...cuts].sort((one, other) => one - other);
  return ordered.slice(1).flatMap((endMs, index) => {
    const startMs = ordered[index] ?? endMs;
    const middle = weatherAt(hours, new Date((startMs + endMs) / 2));
    if (middle === null || startMs === endMs) return [];
    return [
      {
        start: new Date(startMs),
        end: new Date(endMs),
        coarse: false,
        objections: objections(middle, limits, grade),
      },
    ];
  });
}

/** The weather at both ends and at every instant between that the model gives. */
function cornersBetween(hours: readonly ForecastHour[], start: Date, end: Date): ForecastHour[] {
  const first = firstAtOrAfter(hours, start.getTime());
  const last = firstAtOrAfter(hours, end.getTime());
  return hours.slice(first, last + 1).flatMap((hour) => weatherAt(hours, hour.at) ?? []);
}

/** Instants strictly between two corners at which a quantity passes a limit. */
function crossings(from: ForecastHour, to: ForecastHour, limits: ObservingLimits): number[] {
  const startMs = from.at.getTime();
  const lengthMs = to.at.getTime() - startMs;
  return thresholds(limits).flatMap(({ value, limit }) => {
    const first = value(from);
    const second = value(to);
    if (first === null || second === null || (first - limit) * (second - limit) >= 0) return [];
    return [Math.round(startMs + (lengthMs * (limit - first)) / (second - first))];
  });
}
