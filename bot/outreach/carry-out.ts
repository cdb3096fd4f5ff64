/**
 * Carries an announcement, a change or a cancellation to its end: event and message stand or fall together.
 *
 * What is to be done stands in the store before anything is sent, so that whoever finds it
 * half done, after a restart or in another process, goes on from there.
 *
 * @packageDocumentation
 */
import { ATTEMPT_MS, ATTEMPT_PAUSES_MS, LEASE_MS } from "../../config/evening.ts";
import type { SendOutcome } from "../evening/evening-channel.ts";
import { postOnce } from "../evening/post-once.ts";
import type { SessionRecord } from "../store/outreach-book.ts";
import { makeEventOnce } from "./make-event.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import type { ClubEvent, EventOutcome } from "./scheduled-events.ts";
import { invitationKind, invitationMessage } from "./session-message.ts";

export type CarriedOut =
  | { readonly kind: "done"; readonly record: SessionRecord }
  | { readonly kind: "pending"; readonly record: SessionRecord }
  /** Undone again: nothing stands. */
  | { readonly kind: "failed"; readonly reason: string };

/** Goes on with a session from wherever it is. */
export async function carryOut(world: OutreachWorld, record: SessionRecord): Promise<CarriedOut> {
  switch (record.state) {
    case "announcing":
      return announce(world, record);
    case "changing":
      return follow(world, record, "announced");
    case "cancelling":
      return follow(world, record, "cancelled");
    case "announced":
    case "cancelled":
      return { kind: "done", record };
    case "failed":
      return { kind: "failed", reason: "It was given up before." };
  }
}

async function announce(world: OutreachWorld, begun: SessionRecord): Promise<CarriedOut> {
  let record = begun;
  if (world.clock() >= record.invitation.span.start) {
    return undo(world, record, "The session has begun: it is too late to announce it.");
  }
  if (record.eventWanted && record.eventId === null) {
    const made = await makeEventOnce(world, record.club, eventOf(record));
    if (made.kind === "held") return { kind: "pending", record };
    if (made.kind === "refused") return undo(world, record, eventRefusal(made.reason));
    const kept = await world.book.change(record, { eventId: made.eventId });
    if (kept === null) return { kind: "pending", record };
    record = kept;
  }
  const posted = await postInvitation(world, record);
  switch (posted.kind) {
    case "posted":
      return settle(world, record, { state: "announced", messageId: posted.messageId });
    case "settled":
      return posted.claim.messageId === null
        ? undo(world, record, "The message was given up before.")
        : settle(world, record, { state: "announced", messageId: posted.claim.messageId });
    case "held":
      return { kind: "pending", record };
    case "abandoned":
      return undo(world, record, messageRefusal(posted.reason, posted.detail));
  }
}

async function postInvitation(world: OutreachWorld, record: SessionRecord) {
  const guests = await world.book.guests(record.club, record.id);
  const { club, id, channelId, invitation } = record;
  return postOnce(
    {
      club,
      night: invitation.night,
      kind: invitationKind(id),
      channelId,
      message: invitationMessage(record, guests, world.clock()),
      sending: "now",
    },
    world,
  );
}

/** The message cannot stand, so the event must not; the other way round it is never sent. */
async function undo(world: OutreachWorld, record: SessionRecord, reason: string): Promise<CarriedOut> {
  if (record.eventId !== null) {
    const gone = await persist(world, () =>
      world.events.cancel(record.club, record.eventId ?? "", ATTEMPT_MS),
    );
    if (gone.kind === "unclear") return { kind: "pending", record };
  }
  await world.book.change(record, { state: "failed" });
  return { kind: "failed", reason };
}

/** A change or a cancellation: the event first, then the message. */
async function follow(
  world: OutreachWorld,
  record: SessionRecord,
  end: "announced" | "cancelled",
): Promise<CarriedOut> {
  const { club, eventId, channelId, messageId } = record;
  if (eventId !== null) {
    const outcome = await persist(world, () =>
      end === "cancelled"
        ? world.events.cancel(club, eventId, ATTEMPT_MS)
        : world.events.edit(club, eventId, eventOf(record), ATTEMPT_MS),
    );
    if (outcome.kind === "unclear") return { kind: "pending", record };
    if (outcome.kind === "refused" || outcome.kind === "invalid") {
      world.log(`a scheduled event could not be changed: ${outcome.reason}`);
    }
  }
  if (messageId !== null) {
    const guests = await world.book.guests(club, record.id);
    const message = invitationMessage(record, guests, world.clock());
    const outcome = await persist(world, () =>
      world.channel.edit(channelId, messageId, message, "replaced", ATTEMPT_MS),
    );
    if (outcome.kind === "unclear") return { kind: "pending", record };
    if (outcome.kind === "refused" || outcome.kind === "invalid") {
      world.log(`an invitation could not be changed: ${outcome.reason}`);
    }
  }
  return settle(world, record, { state: end });
}

async function settle(
  world: OutreachWorld,
  record: SessionRecord,
  changes: { readonly state: "announced" | "cancelled"; readonly messageId?: string },
): Promise<CarriedOut> {
  const kept = await world.book.change(record, changes);
  return kept === null ? { kind: "pending", record } : { kind: "done", record: kept };
}

/** Attempts at what may be repeated without harm, until one is clear. */
async function persist<Outcome extends SendOutcome | EventOutcome>(
  world: OutreachWorld,
  call: () => Promise<Outcome>,
): Promise<Outcome> {
  let outcome = await call();
  for (const pauseMs of ATTEMPT_PAUSES_MS) {
    if (outcome.kind !== "unclear") return outcome;
    await world.pause(Math.min(Math.max(pauseMs, outcome.retryAfterMs ?? 0), LEASE_MS));
    outcome = await call();
  }
  return outcome;
}

export function eventOf({ id, invitation, picture }: SessionRecord): ClubEvent {
  return { key: id, invitation, picture };
}

function eventRefusal(reason: string): string {
  return `The event could not be made, and nothing was announced: ${reason}. Give me “Create Events” in the server's settings, or switch events off with “outreach settings”.`;
}

function messageRefusal(reason: string, detail: string): string {
  const why = detail === "" ? reason : detail;
  return `The invitation could not be sent, and no event stands: ${why}. Choose another channel with “outreach settings”.`;
}
