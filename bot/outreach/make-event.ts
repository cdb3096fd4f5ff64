/**
 * Makes a session's scheduled event at most once, whatever dies in between.
 *
 * A claim comes before any network call, and before each attempt the club's events are looked
 * through for our key: what an earlier attempt left behind is adopted. Discord knows no nonce for
 * events; what is left is a request that is acted on after the look-up that follows it.
 *
 * @packageDocumentation
 */
import { ATTEMPT_MS, ATTEMPT_PAUSES_MS, LEASE_MS } from "../../config/evening.ts";
import type { ClaimKey } from "../store/evening-claims.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import type { ClubEvent } from "./scheduled-events.ts";

export type MadeEvent =
  | { readonly kind: "made"; readonly eventId: string }
  | { readonly kind: "refused"; readonly reason: string }
  /** Another process is at it, or nobody answers: a later tick takes it up. */
  | { readonly kind: "held" };

/** The claim on a session's event. */
export function eventClaim(club: string, night: string, id: string): ClaimKey {
  return { club, night, kind: `outreach-event-${id}` };
}

/** Carries the event from its claim to its end, as far as this process can. */
export async function makeEventOnce(
  world: OutreachWorld,
  club: string,
  event: ClubEvent,
): Promise<MadeEvent> {
  const { claims, holder, clock } = world;
  const key = eventClaim(club, event.invitation.night, event.key);
  const claim = await claims.find(key);
  if (claim === null) {
    if (!(await claims.claim(key, club, holder, clock(), LEASE_MS))) return { kind: "held" };
  } else if (claim.state === "posted" && claim.messageId !== null) {
    return { kind: "made", eventId: claim.messageId };
  } else if (claim.state === "abandoned") {
    return { kind: "refused", reason: "it was given up before" };
  } else {
    const leftMs = claim.leaseUntil.getTime() - clock().getTime();
    const isOwn = claim.holder === holder;
    // A lease that ends further ahead than any reaches was given before the clock was set back.
    if (!isOwn && leftMs >= 0 && leftMs <= LEASE_MS) return { kind: "held" };
    if (!(await claims.takeOver(claim, holder, clock(), LEASE_MS))) return { kind: "held" };
  }
  return make(world, key, club, event);
}

async function make(world: OutreachWorld, key: ClaimKey, club: string, event: ClubEvent): Promise<MadeEvent> {
  const { claims, events, holder, clock, pause } = world;
  for (const pauseMs of [...ATTEMPT_PAUSES_MS, 0]) {
    const outcome = await attempt(world, key, club, event);
    switch (outcome.kind) {
      case "done":
        await claims.settlePosted(key, outcome.eventId, clock());
        return { kind: "made", eventId: outcome.eventId };
      case "refused":
      case "invalid":
        await claims.settleAbandoned(key, holder, outcome.kind, clock());
        return { kind: "refused", reason: outcome.reason };
      case "gone":
        await claims.settleAbandoned(key, holder, "gone", clock());
        return { kind: "refused", reason: "the server is gone" };
      case "held":
        return { kind: "held" };
      case "unclear":
        await pause(Math.min(Math.max(pauseMs, outcome.retryAfterMs ?? 0), LEASE_MS));
    }
  }
  // The last attempt may have arrived all the same.
  const left = await events.find(club, event.key, ATTEMPT_MS);
  if (left.kind !== "found") return { kind: "held" };
  await claims.settlePosted(key, left.eventId, clock());
  return { kind: "made", eventId: left.eventId };
}

/** Looks for what is already there, and makes it where nothing is. */
async function attempt(world: OutreachWorld, key: ClaimKey, club: string, event: ClubEvent) {
  const { claims, events, holder, clock } = world;
  const found = await events.find(club, event.key, ATTEMPT_MS);
  if (found.kind === "found") return { kind: "done", eventId: found.eventId } as const;
  if (found.kind !== "absent") return found;
  const mayBegin = await claims.beginSend(key, holder, clock(), ATTEMPT_MS);
  return mayBegin ? events.create(club, event, ATTEMPT_MS) : ({ kind: "held" } as const);
}
