/**
 * Replies under a post, each part claimed as its own kind, and the people they ring.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { MENTIONS_A_MESSAGE } from "../../config/evening.ts";
import type { Person } from "./evening-channel.ts";
import type { EveningWorld } from "./evening-world.ts";
import { messageKey } from "./message-key.ts";
import { type PostOutcome, postOnce } from "./post-once.ts";

export type Reply = {
  readonly club: string;
  readonly night: string;
  readonly channelId: string;
  readonly replyTo: string;
  /** Such as `change-1`; parts after the first add their number. */
  readonly kind: string;
  readonly answer: Answer;
  readonly rings: readonly Person[];
  /** Whether it still helps. */
  readonly worthSending: boolean;
  readonly nightOver?: boolean;
};

/** So many at a time as one message may ring. */
export function inParts(people: readonly Person[]): readonly (readonly Person[])[] {
  const parts: (readonly Person[])[] = [];
  for (let from = 0; from < people.length; from += MENTIONS_A_MESSAGE) {
    parts.push(people.slice(from, from + MENTIONS_A_MESSAGE));
  }
  return parts;
}

/** Sends a reply in as many parts as its people need; each goes out once. */
export async function replyToPost(world: EveningWorld, reply: Reply): Promise<readonly PostOutcome[]> {
  const outcomes: PostOutcome[] = [];
  for (const [index, rings] of inParts(reply.rings).entries()) {
    const kind = index === 0 ? reply.kind : `${reply.kind}.${index + 1}`;
    const { club, night, answer, replyTo, channelId } = reply;
    const key = messageKey({ club, night, kind });
    const nightOver = reply.nightOver ?? false;
    const message = { key, club, night, answer, rings, goingOut: null, replyTo, nightOver };
    const sending = reply.worthSending ? "now" : "never";
    outcomes.push(await postOnce({ club, night, kind, channelId, message, sending }, world));
  }
  return outcomes;
}

/** Whether every part came to an end, good or bad. */
export function allSettled(outcomes: readonly PostOutcome[]): boolean {
  return outcomes.every(({ kind }) => kind !== "held");
}
