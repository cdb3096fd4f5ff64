/**
 * The words for the public, once an organiser releases them: a reply to the invitation, sent once.
 *
 * @packageDocumentation
 */
import type { NoteKind } from "../../config/announcements.ts";
import { messageKey } from "../evening/message-key.ts";
import { postOnce } from "../evening/post-once.ts";
import type { NoteRecord, SessionRecord } from "../store/outreach-book.ts";
import { type CarriedOut, carryOut } from "./carry-out.ts";
import { noteRow } from "./go-or-no-go.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import { sessionButtons, whenField } from "./session-message.ts";

export type Released =
  | { readonly kind: "told"; readonly calledOff: boolean }
  | { readonly kind: "told-before" }
  | { readonly kind: "over" }
  | { readonly kind: "pending" }
  | { readonly kind: "refused"; readonly reason: string };

/** Releases a note's words; whoever presses twice, or after another, tells nobody twice. */
export async function releaseWord(
  world: OutreachWorld,
  record: SessionRecord,
  kind: NoteKind,
): Promise<Released> {
  const { book, clock } = world;
  const row = noteRow(kind, record);
  const note = await book.note(record.club, record.id, row);
  if (note === null || clock() >= record.invitation.span.end) return { kind: "over" };
  if (record.state === "cancelled") return { kind: "told-before" };
  const isFirst = await book.release(record.club, record.id, row, clock());
  const outcome = await tell(world, record, row, note);
  if (outcome.kind === "settled" && !isFirst) return { kind: "told-before" };
  if (outcome.kind === "held") return { kind: "pending" };
  if (outcome.kind === "abandoned") {
    return { kind: "refused", reason: outcome.detail === "" ? outcome.reason : outcome.detail };
  }
  if (!note.cancels) return { kind: "told", calledOff: false };
  const cancelled = await callOff(world, record);
  return cancelled.kind === "done" ? { kind: "told", calledOff: true } : { kind: "pending" };
}

/** Words released before a restart that never went out, and sessions called off by them. */
export async function resumeReleased(
  world: OutreachWorld,
  record: SessionRecord,
  kinds: readonly NoteKind[],
): Promise<void> {
  for (const kind of kinds) {
    const row = noteRow(kind, record);
    const note = await world.book.note(record.club, record.id, row);
    if (note === null || note.releasedAt === null) continue;
    const outcome = await tell(world, record, row, note);
    const isTold = outcome.kind === "posted" || outcome.kind === "settled";
    if (isTold && note.cancels) await callOff(world, record);
  }
}

/** Calls a session off from whatever state it is in. */
export async function callOff(world: OutreachWorld, record: SessionRecord): Promise<CarriedOut> {
  const changed = await world.book.change(record, { state: "cancelling", revision: record.revision + 1 });
  if (changed !== null) return carryOut(world, changed);
  const now = await world.book.find(record.club, record.id);
  return now === null || now.state !== "cancelled"
    ? { kind: "pending", record }
    : { kind: "done", record: now };
}

async function tell(world: OutreachWorld, record: SessionRecord, row: string, note: NoteRecord) {
  const { club, id, channelId, messageId, invitation } = record;
  const claim = { club, night: invitation.night, kind: `outreach-word-${row}-${id}` };
  const key = messageKey(claim);
  const shown: SessionRecord = note.cancels ? { ...record, state: "cancelling" } : record;
  const message = {
    key,
    club,
    night: invitation.night,
    answer: note.draft,
    rings: [],
    goingOut: null,
    replyTo: messageId,
    buttons: sessionButtons(shown, key),
    fields: [whenField(record)],
  };
  return postOnce({ ...claim, channelId, message, sending: "now" }, world);
}
