/**
 * Announced sessions, their guests and their notes.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { Invitation } from "../../commands/announcements.ts";
import type { Answer } from "../../commands/answer.ts";
import { matchKey } from "../../commands/read/names.ts";
import { addClub } from "./club-rows.ts";
import type { OutreachSessionRow } from "./outreach-tables.ts";
import { fromJson } from "./row-values.ts";
import { inTransaction } from "./store.ts";
import type { Tables } from "./tables.ts";

/** A picture that goes with an invitation, as drawn. */
export type KeptPicture = {
  readonly name: string;
  readonly alt: string;
  readonly base64: string;
};

export type SessionState = OutreachSessionRow["state"];

export type SessionRecord = {
  readonly club: string;
  readonly id: string;
  readonly state: SessionState;
  readonly revision: number;
  readonly channelId: string;
  readonly messageId: string | null;
  readonly eventWanted: boolean;
  readonly eventId: string | null;
  readonly invitation: Invitation;
  readonly picture: KeptPicture | null;
};

/** What the organisers were told, and what they may tell the public. */
export type NoteRecord = {
  readonly answer: Answer;
  readonly draft: Answer;
  /** Releasing it also cancels the session. */
  readonly cancels: boolean;
  readonly releasedAt: Date | null;
};

export interface OutreachBook {
  find(club: string, id: string): Promise<SessionRecord | null>;
  /** Not yet over at an instant, the soonest first; failed ones are left out. */
  upcoming(club: string, at: Date): Promise<readonly SessionRecord[]>;
  /** How often a session of that name was announced for that night. */
  count(club: string, name: string, night: string): Promise<number>;
  /** @returns whether it is new */
  add(record: SessionRecord, at: Date): Promise<boolean>;
  /** Changes a session as it was read. @returns the new record, or `null` when somebody else was faster */
  change(seen: SessionRecord, changes: SessionChanges): Promise<SessionRecord | null>;
  /** Everywhere: whatever is under way, and what is announced and not over. */
  alive(at: Date): Promise<readonly SessionRecord[]>;
  answer(club: string, id: string, member: string, isComing: boolean, at: Date): Promise<void>;
  guests(club: string, id: string): Promise<{ readonly coming: number; readonly notComing: number }>;
  note(club: string, id: string, kind: string): Promise<NoteRecord | null>;
  /** Keeps a note unless there is one. @returns the one that is kept */
  keepNote(club: string, id: string, kind: string, note: NoteRecord, at: Date): Promise<NoteRecord>;
  /** @returns whether it was not released before */
  release(club: string, id: string, kind: string, at: Date): Promise<boolean>;
  dropOlderThan(at: Date): Promise<void>;
}

export type SessionChanges = Partial<
  Pick<SessionRecord, "state" | "revision" | "messageId" | "eventId" | "invitation" | "picture">
>;

type Written = { readonly invitation: Invitation; readonly picture: KeptPicture | null };

export function outreachBook(db: Kysely<Tables>): OutreachBook {
  return {
    async find(club, id) {
      const row = await db
        .selectFrom("outreach_sessions")
        .selectAll()
        .where("club_id", "=", club)
        .where("id", "=", id)
        .executeTakeFirst();
      return row === undefined ? null : recordOf(row);
    },

    async upcoming(club, at) {
      const rows = await db
        .selectFrom("outreach_sessions")
        .selectAll()
        .where("club_id", "=", club)
        .where("end_ms", ">", at.getTime())
        .where("state", "!=", "failed")
        .orderBy("start_ms")
        .orderBy("id")
        .execute();
      return rows.map(recordOf);
    },

    async count(club, name, night) {
      const row = await db
        .selectFrom("outreach_sessions")
        .select(({ fn }) => fn.countAll().as("count"))
        .where("club_id", "=", club)
        .where("name_key", "=", matchKey(name))
        .where("night", "=", night)
        .executeTakeFirst();
      return Number(row?.count ?? 0);
    },

    add(record, at) {
      return inTransaction(db, async (transaction) => {
        await addClub(transaction, { id: record.club, name: record.club }, at.getTime());
        const added = await transaction
          .insertInto("outreach_sessions")
          .values(rowOf(record, at))
          .onConflict((conflict) => conflict.columns(["club_id", "id"]).doNothing())
          .executeTakeFirst();
        return Number(added.numInsertedOrUpdatedRows ?? 0) > 0;
      });
    },

    async change(seen, changes) {
      const record = { ...seen, ...changes };
      const { created_ms: _, ...row } = rowOf(record, new Date(0));
      const result = await db
        .updateTable("outreach_sessions")
        .set(row)
        .where("club_id", "=", seen.club)
        .where("id", "=", seen.id)
        .where("state", "=", seen.state)
        .where("revision", "=", seen.revision)
        .executeTakeFirst();
      return Number(result.numUpdatedRows) > 0 ? record : null;
    },

    async alive(at) {
      const rows = await db
        .selectFrom("outreach_sessions")
        .selectAll()
        .where(({ or, eb, and }) =>
          or([
            eb("state", "in", ["announcing", "changing", "cancelling"]),
            and([eb("state", "=", "announced"), eb("end_ms", ">", at.getTime())]),
          ]),
        )
        .orderBy("start_ms")
        .orderBy("id")
        .execute();
      return rows.map(recordOf);
    },

    async answer(club, id, member, isComing, at) {
      const row = {
        club_id: club,
        session_id: id,
        member_id: member,
        is_coming: isComing ? 1 : 0,
        created_ms: at.getTime(),
      };
      await db
        .insertInto("outreach_guests")
        .values(row)
        .onConflict((conflict) => conflict.columns(["club_id", "session_id", "member_id"]).doUpdateSet(row))
        .execute();
    },

    async guests(club, id) {
      const rows = await db
        .selectFrom("outreach_guests")
        .select(["is_coming", ({ fn }) => fn.countAll().as("count")])
        .where("club_id", "=", club)
        .where("session_id", "=", id)
        .groupBy("is_coming")
        .execute();
      const count = (value: number) =>
        Number(rows.find(({ is_coming }) => Number(is_coming) === value)?.count ?? 0);
      return { coming: count(1), notComing: count(0) };
    },

    async note(club, id, kind) {
      const row = await db
        .selectFrom("outreach_notes")
        .selectAll()
        .where("club_id", "=", club)
        .where("session_id", "=", id)
        .where("kind", "=", kind)
        .executeTakeFirst();
      if (row === undefined) return null;
      return {
        ...fromJson<Omit<NoteRecord, "releasedAt">>(row.note_json, "a note"),
        releasedAt: row.released_ms === null ? null : new Date(Number(row.released_ms)),
      };
    },

    async keepNote(club, id, kind, { releasedAt: _, ...note }, at) {
      await db
        .insertInto("outreach_notes")
        .values({
          club_id: club,
          session_id: id,
          kind,
          note_json: JSON.stringify(note),
          released_ms: null,
          created_ms: at.getTime(),
        })
        .onConflict((conflict) => conflict.columns(["club_id", "session_id", "kind"]).doNothing())
        .execute();
      return (await this.note(club, id, kind)) ?? { ...note, releasedAt: null };
    },

    async release(club, id, kind, at) {
      const result = await db
        .updateTable("outreach_notes")
        .set({ released_ms: at.getTime() })
        .where("club_id", "=", club)
        .where("session_id", "=", id)
        .where("kind", "=", kind)
        .where("released_ms", "is", null)
        .executeTakeFirst();
      return Number(result.numUpdatedRows) > 0;
    },

    async dropOlderThan(at) {
      const ms = at.getTime();
      const old = db.selectFrom("outreach_sessions").select("id").where("end_ms", "<", ms);
      await db.deleteFrom("outreach_guests").where("session_id", "in", old).execute();
      await db.deleteFrom("outreach_notes").where("session_id", "in", old).execute();
      await db.deleteFrom("outreach_sessions").where("end_ms", "<", ms).execute();
    },
  };
}

function rowOf(record: SessionRecord, at: Date): OutreachSessionRow {
  const { invitation, picture } = record;
  return {
    club_id: record.club,
    id: record.id,
    name: invitation.name,
    name_key: matchKey(invitation.name),
    night: invitation.night,
    start_ms: invitation.span.start.getTime(),
    end_ms: invitation.span.end.getTime(),
    state: record.state,
    revision: record.revision,
    channel_id: record.channelId,
    message_id: record.messageId,
    event_wanted: record.eventWanted ? 1 : 0,
    event_id: record.eventId,
    invitation_json: JSON.stringify({ invitation, picture } satisfies Written),
    created_ms: at.getTime(),
  };
}

function recordOf(row: OutreachSessionRow): SessionRecord {
  const { invitation, picture } = fromJson<Written>(row.invitation_json, "a public session");
  const span = { start: new Date(Number(row.start_ms)), end: new Date(Number(row.end_ms)) };
  return {
    club: row.club_id,
    id: row.id,
    state: row.state,
    revision: Number(row.revision),
    channelId: row.channel_id,
    messageId: row.message_id,
    eventWanted: Number(row.event_wanted) === 1,
    eventId: row.event_id,
    invitation: { ...invitation, span },
    picture,
  };
}
