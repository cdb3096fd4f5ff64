/**
 * Claims on the evening's messages: who may send which, until when, and what came of it.
 *
 * Every change is one statement that names the state it found, so any number of
 * processes may try and one succeeds.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { EveningClaimRow, Tables } from "./tables.ts";

/** One message: a club's night and the kind of message. */
export type ClaimKey = { readonly club: string; readonly night: string; readonly kind: string };

export type Claim = ClaimKey & {
  readonly state: "claimed" | "posted" | "abandoned";
  readonly holder: string;
  readonly leaseUntil: Date;
  readonly claimedAt: Date;
  /** When a first attempt to send began, by whomever; `null` when none ever did. */
  readonly sendBeganAt: Date | null;
  readonly channelId: string;
  readonly messageId: string | null;
};

export interface ClaimBook {
  find(key: ClaimKey): Promise<Claim | null>;
  /** @returns whether the claim is new, and the holder's */
  claim(key: ClaimKey, channelId: string, holder: string, at: Date, leaseMs: number): Promise<boolean>;
  /** Takes over a claim as it was seen, its lease run out. @returns whether nobody else was faster */
  takeOver(seen: Claim, holder: string, at: Date, leaseMs: number): Promise<boolean>;
  /**
   * The last check before a send: still the holder's, with at least `roomMs` of lease left.
   * Writes down that an attempt begins.
   */
  beginSend(key: ClaimKey, holder: string, at: Date, roomMs: number): Promise<boolean>;
  /** @returns whether it was still open */
  settlePosted(key: ClaimKey, messageId: string, at: Date): Promise<boolean>;
  settleAbandoned(key: ClaimKey, holder: string, reason: string, at: Date): Promise<boolean>;
  /** Claims that nobody settled. */
  unfinished(): Promise<readonly Claim[]>;
  dropOlderThan(at: Date): Promise<void>;
}

export function claimBook(db: Kysely<Tables>): ClaimBook {
  const open = (key: ClaimKey) =>
    db
      .updateTable("evening_claims")
      .where("club_id", "=", key.club)
      .where("night", "=", key.night)
      .where("kind", "=", key.kind)
      .where("state", "=", "claimed");

  return {
    async find(key) {
      const row = await db
        .selectFrom("evening_claims")
        .selectAll()
        .where("club_id", "=", key.club)
        .where("night", "=", key.night)
        .where("kind", "=", key.kind)
        .executeTakeFirst();
      return row === undefined ? null : claimFromRow(row);
    },

    async claim(key, channelId, holder, at, leaseMs) {
      const row: EveningClaimRow = {
        club_id: key.club,
        night: key.night,
        kind: key.kind,
        state: "claimed",
        holder,
        lease_until_ms: at.getTime() + leaseMs,
        claimed_ms: at.getTime(),
        send_began_ms: null,
        channel_id: channelId,
        message_id: null,
        settled_ms: null,
        reason: null,
      };
      const added = await db
        .insertInto("evening_claims")
        .values(row)
        .onConflict((conflict) => conflict.columns(["club_id", "night", "kind"]).doNothing())
        .executeTakeFirst();
      return Number(added.numInsertedOrUpdatedRows ?? 0) > 0;
    },

    async takeOver(seen, holder, at, leaseMs) {
      const result = await open(seen)
        .set({ holder, lease_until_ms: at.getTime() + leaseMs })
        .where("holder", "=", seen.holder)
        .where("lease_until_ms", "=", seen.leaseUntil.getTime())
        .executeTakeFirst();
      return Number(result.numUpdatedRows) > 0;
    },

    async beginSend(key, holder, at, roomMs) {
      const result = await open(key)
        .set(({ fn, val }) => ({ send_began_ms: fn.coalesce("send_began_ms", val(at.getTime())) }))
        .where("holder", "=", holder)
        .where("lease_until_ms", ">=", at.getTime() + roomMs)
        .executeTakeFirst();
      return Number(result.numUpdatedRows) > 0;
    },

    async settlePosted(key, messageId, at) {
      const result = await open(key)
        .set({ state: "posted", message_id: messageId, settled_ms: at.getTime() })
        .executeTakeFirst();
      return Number(result.numUpdatedRows) > 0;
    },

    async settleAbandoned(key, holder, reason, at) {
      const result = await open(key)
        .set({ state: "abandoned", reason, settled_ms: at.getTime() })
        .where("holder", "=", holder)
        .executeTakeFirst();
      return Number(result.numUpdatedRows) > 0;
    },

    async unfinished() {
      const rows = await db
        .selectFrom("evening_claims")
        .selectAll()
        .where("state", "=", "claimed")
        .orderBy("claimed_ms")
        .execute();
      return rows.map(claimFromRow);
    },

    async dropOlderThan(at) {
      await db.deleteFrom("evening_claims").where("claimed_ms", "<", at.getTime()).execute();
    },
  };
}

function claimFromRow(row: EveningClaimRow): Claim {
  const instant = (ms: number) => new Date(Number(ms));
  return {
    club: row.club_id,
    night: row.night,
    kind: row.kind,
    state: row.state,
    holder: row.holder,
    leaseUntil: instant(row.lease_until_ms),
    claimedAt: instant(row.claimed_ms),
    sendBeganAt: row.send_began_ms === null ? null : instant(row.send_began_ms),
    channelId: row.channel_id,
    messageId: row.message_id,
  };
}
