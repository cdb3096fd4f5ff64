/**
 * What announcing asks of a chat's scheduled events. `bot/discord` fills it; one call is one attempt.
 *
 * @packageDocumentation
 */
import type { Invitation } from "../../commands/announcements.ts";
import type { KeptPicture } from "../store/outreach-book.ts";

/** A session as the chat's own event. */
export type ClubEvent = {
  /** The mark in its description, by which it is found again. */
  readonly key: string;
  readonly invitation: Invitation;
  readonly picture: KeptPicture | null;
};

export type EventOutcome =
  | { readonly kind: "done"; readonly eventId: string }
  /** Somebody removed it, or it is over: it is never made again. */
  | { readonly kind: "gone" }
  /** We may not. */
  | { readonly kind: "refused"; readonly reason: string }
  /** Found wrong: a fault of ours. */
  | { readonly kind: "invalid"; readonly reason: string }
  /** Nobody knows whether it arrived. */
  | { readonly kind: "unclear"; readonly retryAfterMs: number | null };

export type EventSearch =
  | { readonly kind: "found"; readonly eventId: string }
  | { readonly kind: "absent" }
  | { readonly kind: "refused"; readonly reason: string }
  | { readonly kind: "unclear"; readonly retryAfterMs: number | null };

export interface ScheduledEvents {
  /** An event of ours with the key in its description, not completed or cancelled. */
  find(club: string, key: string, timeoutMs: number): Promise<EventSearch>;
  create(club: string, event: ClubEvent, timeoutMs: number): Promise<EventOutcome>;
  edit(club: string, eventId: string, event: ClubEvent, timeoutMs: number): Promise<EventOutcome>;
  cancel(club: string, eventId: string, timeoutMs: number): Promise<EventOutcome>;
}
