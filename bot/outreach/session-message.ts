/**
 * A public session as a message: the invitation with its two buttons, and the words that follow it.
 *
 * @packageDocumentation
 */
import { createHash } from "node:crypto";
import type { Answer, Attachment } from "../../commands/answer.ts";
import { CALENDAR_MEDIA_TYPE, calendarFile } from "../../commands/calendar-file.ts";
import type { EveningButton, EveningField, EveningMessage } from "../evening/evening-channel.ts";
import { messageKey } from "../evening/message-key.ts";
import type { SessionRecord } from "../store/outreach-book.ts";

export type Guests = { readonly coming: number; readonly notComing: number };

const ID_LENGTH = 24;

/** A session's id: 24 hex digits of SHA-256, the same for the same name, night and turn. */
export function sessionId(club: string, nameKey: string, night: string, turn: number): string {
  return createHash("sha256").update(`${club}|${nameKey}|${night}|${turn}`).digest("hex").slice(0, ID_LENGTH);
}

/** The kind under which a session's invitation is claimed. */
export function invitationKind(id: string): string {
  return `outreach-${id}`;
}

export const COMING_LABEL = "I'll come";
export const NOT_COMING_LABEL = "Can't come";
const CALLED_OFF_LABEL = "Called off";

/** The id of a button under an invitation; it ends with the key that marks the message as ours. */
export function comingButtonId(isComing: boolean, id: string, key: string): string {
  return `come:${isComing ? "yes" : "no"}:${id}:${key}`;
}

/** The invitation as it stands now. */
export function invitationMessage(record: SessionRecord, guests: Guests, at: Date): EveningMessage {
  const { club, id, invitation } = record;
  const key = messageKey({ club, night: invitation.night, kind: invitationKind(id) });
  return {
    key,
    club,
    night: invitation.night,
    answer: invitationAnswer(record, at),
    rings: [],
    goingOut: null,
    replyTo: null,
    buttons: sessionButtons(record, key),
    fields: [whenField(record), countField(guests)],
  };
}

/** Both buttons, or one that cannot be pressed once the session is called off. */
export function sessionButtons({ id, state }: SessionRecord, key: string): readonly EveningButton[] {
  if (isCalledOff(state)) {
    return [{ id: comingButtonId(false, id, key), label: CALLED_OFF_LABEL, primary: false, disabled: true }];
  }
  return [
    { id: comingButtonId(true, id, key), label: COMING_LABEL, primary: true },
    { id: comingButtonId(false, id, key), label: NOT_COMING_LABEL, primary: false },
  ];
}

export function isCalledOff(state: SessionRecord["state"]): boolean {
  return state === "cancelling" || state === "cancelled";
}

/** In each reader's own zone: the chat turns these into clock times. */
export function whenField({ invitation }: SessionRecord): EveningField {
  const seconds = (at: Date) => Math.round(at.getTime() / 1000);
  const { start, end } = invitation.span;
  return { name: "When", value: `<t:${seconds(start)}:F> to <t:${seconds(end)}:t>` };
}

function countField({ coming, notComing }: Guests): EveningField {
  return { name: "Who comes", value: `Coming: ${coming}. Can't come: ${notComing}.` };
}

function invitationAnswer(record: SessionRecord, at: Date): Answer {
  const { invitation, state, picture } = record;
  const off = isCalledOff(state);
  return {
    title: off ? `Called off: ${invitation.name}` : invitation.name,
    summary: off ? "This session does not take place." : invitation.summary,
    sections: [{ heading: "", lines: [`Where: ${invitation.place}`, ...(off ? [] : invitation.lines)] }],
    charts: [],
    cautions: invitation.cautions,
    next: [],
    figures: {},
    credits: [],
    attachments: [...(picture === null || off ? [] : [pictureFile(picture)]), calendarOf(record, at)],
  };
}

function pictureFile({ name, alt, base64 }: NonNullable<SessionRecord["picture"]>): Attachment {
  return { name, mediaType: "image/png", bytes: Buffer.from(base64, "base64"), alt };
}

/** The session for people's own calendars: the same key ever after, cautions first. */
export function calendarOf({ id, invitation, revision, state }: SessionRecord, at: Date): Attachment {
  const { span, name, cautions, summary, lines, place, night } = invitation;
  const file = calendarFile(
    `outreach-${night}`,
    [
      {
        key: `outreach-${id}`,
        start: span.start,
        end: span.end,
        title: isCalledOff(state) ? `Called off: ${name}` : name,
        cautions: cautions.map(({ text }) => text),
        lines: [summary, ...lines],
        place,
        revision,
        cancelled: isCalledOff(state),
      },
    ],
    at,
  );
  return { ...file, mediaType: CALENDAR_MEDIA_TYPE };
}
