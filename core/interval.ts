/**
 * Spans of time: joined, cut and measured.
 *
 * @packageDocumentation
 */
import { MS_PER_HOUR } from "./sky/time.ts";

/** A span of time, `start` before `end`. */
export type Interval = { readonly start: Date; readonly end: Date };

/** Length of a span in hours. */
export function intervalHours(interval: Interval): number {
  return (interval.end.getTime() - interval.start.getTime()) / MS_PER_HOUR;
}

/** Total length in hours of spans that do not overlap. */
export function totalHours(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, interval) => sum + intervalHours(interval), 0);
}

/**
 * What two sets of spans have in common.
 *
 * @param first - spans in order, none overlapping
 * @param second - likewise
 * @returns spans in order; touching ends give nothing
 */
export function intersectIntervals(first: readonly Interval[], second: readonly Interval[]): Interval[] {
  const shared: Interval[] = [];
  for (const one of first) {
    for (const other of second) {
      const start = Math.max(one.start.getTime(), other.start.getTime());
      const end = Math.min(one.end.getTime(), other.end.getTime());
      if (start < end) shared.push({ start: new Date(start), end: new Date(end) });
    }
  }
  return shared;
}

/**
 * What is left of the first spans when the second are taken away.
 *
 * @param whole - spans in order, none overlapping
 * @param taken - likewise
 */
export function subtractIntervals(whole: readonly Interval[], taken: readonly Interval[]): Interval[] {
  const left: Interval[] = [];
  for (const span of whole) {
    let from = span.start.getTime();
    for (const hole of taken) {
      const holeStart = hole.start.getTime();
      const holeEnd = hole.end.getTime();
      if (holeEnd <= from || holeStart >= span.end.getTime()) continue;
      if (holeStart > from) left.push({ start: new Date(from), end: new Date(holeStart) });
      from = Math.max(from, holeEnd);
    }
    if (from < span.end.getTime()) left.push({ start: new Date(from), end: span.end });
  }
  return left;
}

/** The longest span, or `null` of none; the earlier of two alike. */
export function longestInterval(intervals: readonly Interval[]): Interval | null {
  let longest: Interval | null = null;
  for (const interval of intervals) {
    if (longest === null || intervalHours(interval) > intervalHours(longest)) longest = interval;
  }
  return longest;
}
