/**
 * From figures to pixels: linear scales, round steps, clock hours, and labels moved
 * apart so that none lies on another.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { Interval } from "../../core/interval.ts";

export type Scale = (value: number) => number;

/** Maps `[from, to]` onto `[low, high]`; everything to `low` when the domain is empty. */
export function linear(from: number, to: number, low: number, high: number): Scale {
  const span = to - from;
  return (value) => (span === 0 ? low : low + ((value - from) / span) * (high - low));
}

/** The value held between two bounds. */
export function held(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}

/** The least of 1, 2 and 5 times a power of ten that divides `span` into at most `most` steps. */
export function roundStep(span: number, most: number): number {
  if (!(span > 0)) return 1;
  const rough = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * ([1, 2, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10);
}

/**
 * Multiples of a round step within `[from, to]`.
 *
 * @param most - at most so many steps
 */
export function roundValues(from: number, to: number, most: number): number[] {
  const step = roundStep(to - from, most);
  const values: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + step * 1e-9; k++) {
    values.push(Number((k * step).toPrecision(12)));
  }
  return values;
}

const HOUR_STEPS = [1, 2, 3, 4, 6, 12] as const;

/** Whole hours of the zone's own clock within a span, at most `most` of them. */
export function clockHours(span: Interval, zone: string, most: number): Date[] {
  const hours = (span.end.getTime() - span.start.getTime()) / 3_600_000;
  const step = HOUR_STEPS.find((each) => hours / each <= most) ?? 24;
  const found: Date[] = [];
  let at = DateTime.fromJSDate(span.start, { zone }).startOf("hour");
  for (let i = 0; i < 400 && at.toMillis() <= span.end.getTime(); i++) {
    if (at.toMillis() >= span.start.getTime() && at.hour % step === 0) found.push(at.toJSDate());
    at = at.plus({ hours: 1 });
  }
  return found;
}

/**
 * Centres of labels along a line, moved as little as needed so that none overlap.
 *
 * @param wanted - where each would stand, and its extent
 * @returns centres in the order given; within `[low, high]` where they fit in it
 */
export function spread(
  wanted: readonly { readonly centre: number; readonly extent: number }[],
  low: number,
  high: number,
): number[] {
  const order = wanted.map((label, i) => ({ ...label, i })).sort((a, b) => a.centre - b.centre);
  let edge = low;
  const starts = order.map((label) => {
    const start = Math.max(edge, label.centre - label.extent / 2);
    edge = start + label.extent;
    return start;
  });
  let ceiling = Math.max(high, low + order.reduce((sum, label) => sum + label.extent, 0));
  const centres = new Array<number>(wanted.length).fill(low);
  for (let k = order.length - 1; k >= 0; k--) {
    const label = order[k];
    if (label === undefined) continue;
    const start = Math.min(starts[k] ?? low, ceiling - label.extent);
    ceiling = start;
    centres[label.i] = start + label.extent / 2;
  }
  return centres;
}
