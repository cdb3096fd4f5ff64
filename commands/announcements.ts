/**
 * What is announced to the public, and who carries it out: `bot/` does, where there is a chat.
 *
 * @packageDocumentation
 */

import type { Caution } from "../core/cautions.ts";
import type { Interval } from "../core/interval.ts";
import type { Site } from "../core/site.ts";
import type { Chart } from "./chart.ts";

/** A public session as people are told of it. */
export type Invitation = {
  readonly name: string;
  /** The local date of the session: by night, the one on which the night begins. */
  readonly night: string;
  readonly session: "night" | "sun";
  readonly span: Interval;
  /** For the weather; coordinates never leave the store. */
  readonly site: Site;
  /** In words, where people come to. */
  readonly place: string;
  /** One sentence: what there will be to see. */
  readonly summary: string;
  /** What to bring, what happens when clouds come: a sentence each. */
  readonly lines: readonly string[];
  readonly cautions: readonly Caution[];
  /** The options it was planned with, so that a change keeps the rest. */
  readonly asked: Readonly<Record<string, string | number | boolean>>;
};

export type AnnouncedState = "announced" | "cancelled" | "under-way";

export type Announced = {
  readonly id: string;
  readonly invitation: Invitation;
  /** Counts up with every change; 0 when new. */
  readonly revision: number;
  readonly state: AnnouncedState;
  readonly coming: number;
  readonly notComing: number;
};

/** How an announcement, a change or a cancellation ended. */
export type AnnounceOutcome =
  | { readonly kind: "done"; readonly announced: Announced }
  /** The chat did not answer in time: it is tried again until it does. */
  | { readonly kind: "pending"; readonly announced: Announced }
  /** Nothing was announced: one sentence why. */
  | { readonly kind: "refused"; readonly reason: string };

/** Where and how a club announces. */
export type OutreachSettings = {
  /** Where the invitation goes; `null` while none is set. */
  readonly channelId: string | null;
  /** Where the organisers get go or no-go; `null`: nobody is told. */
  readonly organisersChannelId: string | null;
  /** Whether the chat's own scheduled events are made. */
  readonly scheduledEvents: boolean;
};

export interface Announcements {
  announce(club: string, invitation: Invitation, chart: Chart | null): Promise<AnnounceOutcome>;
  /** The invitation of an announced session, changed. */
  change(club: string, id: string, invitation: Invitation, chart: Chart | null): Promise<AnnounceOutcome>;
  cancel(club: string, id: string): Promise<AnnounceOutcome>;
  /** Sessions not yet over, cancelled ones too, the soonest first. */
  list(club: string): Promise<readonly Announced[]>;
  /** What is missing before scheduled events can be made, in a sentence; `null` when nothing is. */
  eventTrouble(club: string): string | null;
}
