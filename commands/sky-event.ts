/**
 * An event in the sky as `events` lists it: when, what, and whether the site sees it.
 *
 * @packageDocumentation
 */
import type { Figure } from "./answer.ts";

export const EVENT_KINDS = [
  "eclipses",
  "meteors",
  "conjunctions",
  "planets",
  "moon",
  "seasons",
  "comets",
] as const;

export type EventKind = (typeof EVENT_KINDS)[number];

export type SkyEvent = {
  /** The same for the same event whenever it is asked for. */
  readonly key: string;
  readonly kind: EventKind;
  /** The instant it is filed under. */
  readonly at: Date;
  /** From when to when to look, for a calendar; as good as an instant where there is nothing to see. */
  readonly start: Date;
  readonly end: Date;
  /** A few words: `Geminids at their peak`. */
  readonly title: string;
  /** What the site has of it, in a sentence or less. */
  readonly fromHere: string;
  /** More about it, a sentence each. */
  readonly lines: readonly string[];
  /** Whether the site can see it; `null` where there is nothing to see. */
  readonly seen: boolean | null;
  /** Seen, and worth telling people of. */
  readonly notable: boolean;
  /** About the Sun, or so near it that the solar caution belongs to it. */
  readonly solar: boolean;
  readonly figures: { readonly [name: string]: Figure };
};

/** Span of time in which events are sought. */
export type EventSpan = { readonly from: Date; readonly to: Date };

const MS_PER_MINUTE = 60_000;

/** An end so many minutes after a start. */
export function minutesAfter(at: Date, minutes: number): Date {
  return new Date(at.getTime() + minutes * MS_PER_MINUTE);
}

/** The UTC date of an instant, for keys. */
export function utcDate(at: Date): string {
  return at.toISOString().slice(0, 10);
}
