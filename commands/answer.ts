/**
 * What a command gives back; the doors draw it.
 *
 * @packageDocumentation
 */
import type { Caution } from "../core/cautions.ts";
import type { Chart } from "./chart.ts";

/** A small table; the first row of `rows` is data, not a heading. */
export type Table = {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

export type Section = {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly table?: Table;
};

/** A question that may follow: a button in Discord, a suggestion at the console. */
export type FollowUp = {
  /** Words on the button, at most 80 characters. */
  readonly label: string;
  readonly command: string;
  /** Options by name; a subcommand stands under `subcommand`. */
  readonly options: Readonly<Record<string, string | number | boolean>>;
};

/** A file that goes with the answer (an export, an `.ics`, a sheet as text). */
export type Attachment = {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
  /** What a picture shows, for those who cannot see it. */
  readonly alt?: string;
};

/** JSON-ready: instants as ISO 8601 UTC, unknown as `null`. */
export type Figure =
  | string
  | number
  | boolean
  | null
  | readonly Figure[]
  | { readonly [name: string]: Figure };

export type Answer = {
  readonly title: string;
  /** One sentence a person can act on. */
  readonly summary: string;
  readonly sections: readonly Section[];
  readonly charts: readonly Chart[];
  /** Shown first, whole, through every door. */
  readonly cautions: readonly Caution[];
  readonly next: readonly FollowUp[];
  /** Every number behind the words. */
  readonly figures: { readonly [name: string]: Figure };
  /** Credit lines for the data shown, such as a weather provider's. */
  readonly credits: readonly string[];
  readonly attachments?: readonly Attachment[];
};

/** Instant as the figures carry it; `null` stays `null`. */
export function isoOrNull(instant: Date | null): string | null {
  return instant === null ? null : instant.toISOString();
}
