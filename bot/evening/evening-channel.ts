/**
 * What the evening run asks of a chat: to send, to edit, to look a message up.
 *
 * `bot/discord` fills it. One call is one attempt, with its own time-out: how
 * often and how long is the evening run's to decide.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";

/** A member of the club, as a message names or rings one. */
export type Person = { readonly id: string; readonly name: string };

/** A button that stands in place of "I'm going out"; its id ends with `:` and the message's key. */
export type EveningButton = {
  readonly id: string;
  readonly label: string;
  readonly primary: boolean;
  /** Shown, and not to be pressed. */
  readonly disabled?: boolean;
};

/** A heading with words of ours under a message, as the chat writes them: nothing in it is escaped. */
export type EveningField = { readonly name: string; readonly value: string };

export type EveningMessage = {
  /** The mark its buttons carry; also the nonce. */
  readonly key: string;
  readonly club: string;
  readonly night: string;
  /** What it says; a notice says it in a title and a summary alone. */
  readonly answer: Answer;
  /** Who is rung, in these words' company; nobody else is. */
  readonly rings: readonly Person[];
  /** Who said they are going out; `null` where names are not shown. */
  readonly goingOut: readonly Person[] | null;
  /** The message this one replies to. */
  readonly replyTo: string | null;
  /** Nobody can go out in that night any more: its mark is no button to press. */
  readonly nightOver?: boolean;
  /** Absent: "I'm going out" marks the message; one of these has to otherwise. */
  readonly buttons?: readonly EveningButton[];
  readonly fields?: readonly EveningField[];
};

/** What became of an attempt to send or edit. */
export type SendOutcome =
  | { readonly kind: "sent"; readonly messageId: string }
  /** The message with this nonce, or the one to edit, was deleted: it is never made again. */
  | { readonly kind: "deleted" }
  /** The channel is gone or closed to us: it is left alone until it is set anew. */
  | { readonly kind: "refused"; readonly reason: string }
  /** The message itself was found wrong: a fault of ours. */
  | { readonly kind: "invalid"; readonly reason: string }
  /** Nobody knows whether it arrived; it may be tried again. */
  | { readonly kind: "unclear"; readonly retryAfterMs: number | null };

export type FindOutcome =
  | { readonly kind: "found"; readonly messageId: string }
  | { readonly kind: "absent" }
  /** Nothing is known: the history may not be read (`lasting`), or could not be just now. */
  | { readonly kind: "unreadable"; readonly lasting: boolean };

/** A message drawn and worded: what is left is the one call. */
export interface ReadyMessage {
  /** One attempt under the message's nonce. */
  send(channelId: string, timeoutMs: number): Promise<SendOutcome>;
}

export interface EveningChannel {
  /** Draws and words a message before it is claimed, so that nothing slow stands before the send. */
  prepare(message: EveningMessage): Promise<ReadyMessage>;
  edit(
    channelId: string,
    messageId: string,
    message: EveningMessage,
    /** Charts are `kept` when only names changed. */
    files: "kept" | "replaced",
    timeoutMs: number,
  ): Promise<SendOutcome>;
  /** Looks through the channel, back to `since`, for a message of ours with that key. */
  find(channelId: string, key: string, since: Date, timeoutMs: number): Promise<FindOutcome>;
}
