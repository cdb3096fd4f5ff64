/**
 * Sends one message at most once, whatever dies in between.
 *
 * A claim comes before any network call; a message goes out under an enforced
 * nonce; an unfinished claim is taken over when its lease has run out, and the
 * channel is read back before anything is sent again. What is left: a process
 * frozen between the last check and the send for longer than the nonce is
 * remembered and the lease holds.
 *
 * @packageDocumentation
 */
import {
  ATTEMPT_MS,
  ATTEMPT_PAUSES_MS,
  LEASE_MS,
  LOOK_BACK_MS,
  NONCE_TRUSTED_MS,
} from "../../config/evening.ts";
import type { Claim, ClaimBook, ClaimKey } from "../store/evening-claims.ts";
import type {
  EveningChannel,
  EveningMessage,
  FindOutcome,
  ReadyMessage,
  SendOutcome,
} from "./evening-channel.ts";

export type PostTools = {
  readonly claims: ClaimBook;
  readonly channel: EveningChannel;
  /** Names this process; no other has it. */
  readonly holder: string;
  clock(): Date;
  pause(ms: number): Promise<void>;
};

export type Posting = ClaimKey & {
  readonly channelId: string;
  readonly message: EveningMessage;
  /** An unfinished claim is looked up in any case; it is sent `now`, kept for `later`, or `never`. */
  readonly sending: "now" | "later" | "never";
};

export type PostOutcome =
  | { readonly kind: "posted"; readonly messageId: string; readonly adopted: boolean }
  /** Settled before, here or elsewhere. */
  | { readonly kind: "settled"; readonly claim: Claim }
  /** Another process holds it, or this one ran out of lease: a later tick takes it up. */
  | { readonly kind: "held" }
  | { readonly kind: "abandoned"; readonly reason: AbandonReason; readonly detail: string };

export type AbandonReason = "refused" | "deleted" | "invalid" | "unreadable" | "too-late";

/** Carries one message from its claim to its end, as far as this process can. */
export async function postOnce(posting: Posting, tools: PostTools): Promise<PostOutcome> {
  const { claims, holder, clock } = tools;
  const claim = await claims.find(posting);
  if (claim === null) {
    if (posting.sending !== "now") return { kind: "held" };
    const ready = await tools.channel.prepare(posting.message);
    const isNew = await claims.claim(posting, posting.channelId, holder, clock(), LEASE_MS);
    return isNew ? send({ ...posting, ready }, tools) : { kind: "held" };
  }
  if (claim.state !== "claimed") return { kind: "settled", claim };
  if (!leaseHasRunOut(claim, clock())) return { kind: "held" };
  const ready = await tools.channel.prepare(posting.message);
  if (!(await claims.takeOver(claim, holder, clock(), LEASE_MS))) return { kind: "held" };
  return resume({ ...posting, channelId: claim.channelId, ready }, claim, tools);
}

type ReadyPosting = Posting & { readonly ready: ReadyMessage };

/**
 * Whether the holder's time is up.
 *
 * A lease that ends further ahead than any lease reaches was given before the
 * clock was set back: it counts as run out, since waiting for it could take hours.
 */
function leaseHasRunOut(claim: Claim, at: Date): boolean {
  const leftMs = claim.leaseUntil.getTime() - at.getTime();
  return leftMs < 0 || leftMs > LEASE_MS;
}

/** What another holder began: adopted where it arrived, else sent under the same nonce. */
async function resume(posting: ReadyPosting, claim: Claim, tools: PostTools): Promise<PostOutcome> {
  if (claim.sendBeganAt === null) {
    // No attempt was ever begun, and the old holder can begin none.
    return sendOrKeep(posting, tools);
  }
  const found = await lookUp(posting, claim, tools);
  if (found.kind === "found") {
    await tools.claims.settlePosted(posting, found.messageId, tools.clock());
    return { kind: "posted", messageId: found.messageId, adopted: true };
  }
  if (found.kind === "absent") return sendOrKeep(posting, tools);
  if (posting.sending === "now" && nonceIsTrusted(claim.sendBeganAt, tools.clock())) {
    return send(posting, tools, claim.sendBeganAt);
  }
  return found.lasting ? abandon(posting, tools, "unreadable", "") : { kind: "held" };
}

/** What is certain not to have arrived. */
async function sendOrKeep(posting: ReadyPosting, tools: PostTools): Promise<PostOutcome> {
  switch (posting.sending) {
    case "now":
      return send(posting, tools);
    case "later":
      return { kind: "held" };
    case "never":
      return abandon(posting, tools, "too-late", "");
  }
}

async function lookUp(posting: ReadyPosting, claim: Claim, tools: PostTools): Promise<FindOutcome> {
  // A claim from before the clock was set back lies in the future.
  const fromMs = Math.min(claim.claimedAt.getTime(), tools.clock().getTime()) - LOOK_BACK_MS;
  return tools.channel.find(posting.channelId, posting.message.key, new Date(fromMs), ATTEMPT_MS);
}

function nonceIsTrusted(sendBeganAt: Date, at: Date): boolean {
  const ageMs = at.getTime() - sendBeganAt.getTime();
  return ageMs >= 0 && ageMs <= NONCE_TRUSTED_MS;
}

/**
 * Attempts under one nonce while the lease lasts.
 *
 * @param nonceBeganAt - set when nothing but the nonce prevents a second message: no
 * attempt begins once it may have been forgotten
 */
async function send(
  posting: ReadyPosting,
  tools: PostTools,
  nonceBeganAt: Date | null = null,
): Promise<PostOutcome> {
  for (const pauseMs of [...ATTEMPT_PAUSES_MS, 0]) {
    if (nonceBeganAt !== null && !nonceIsTrusted(nonceBeganAt, tools.clock())) return { kind: "held" };
    const mayBegin = await tools.claims.beginSend(posting, tools.holder, tools.clock(), ATTEMPT_MS);
    if (!mayBegin) return { kind: "held" };
    const outcome = await posting.ready.send(posting.channelId, ATTEMPT_MS);
    const settled = await settle(posting, outcome, tools);
    if (settled !== null) return settled;
    const askedMs = outcome.kind === "unclear" ? (outcome.retryAfterMs ?? 0) : 0;
    await tools.pause(Math.min(Math.max(pauseMs, askedMs), LEASE_MS));
  }
  return { kind: "held" };
}

/** The end that an attempt's outcome means; `null` when it means to try again. */
async function settle(
  posting: ReadyPosting,
  outcome: SendOutcome,
  tools: PostTools,
): Promise<PostOutcome | null> {
  switch (outcome.kind) {
    case "sent":
      await tools.claims.settlePosted(posting, outcome.messageId, tools.clock());
      return { kind: "posted", messageId: outcome.messageId, adopted: false };
    case "deleted":
      return abandon(posting, tools, "deleted", "");
    case "refused":
      return abandon(posting, tools, "refused", outcome.reason);
    case "invalid":
      return abandon(posting, tools, "invalid", outcome.reason);
    case "unclear":
      return null;
  }
}

async function abandon(
  posting: ReadyPosting,
  tools: PostTools,
  reason: AbandonReason,
  detail: string,
): Promise<PostOutcome> {
  await tools.claims.settleAbandoned(posting, tools.holder, reason, tools.clock());
  return { kind: "abandoned", reason, detail };
}
