/**
 * Everything kept of one member, for export and erasure.
 *
 * A table that holds something of a member's stands in `MEMBER_TABLES`; a test
 * reads the schema and finds one left off.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { MemberBook } from "../../commands/books.ts";
import { rowForPeople } from "./row-values.ts";
import { inTransaction } from "./store.ts";
import type { Tables } from "./tables.ts";

/** How one table's rows of a member are read and erased. */
export type MemberTable = {
  readonly table: keyof Tables;
  rows(db: Kysely<Tables>, club: string, member: string): Promise<readonly object[]>;
  erase(db: Kysely<Tables>, club: string, member: string): Promise<unknown>;
};

/** By hand; the member's own row comes last, as others may lean on it. */
export const MEMBER_TABLES: readonly MemberTable[] = [
  {
    table: "sites",
    rows: (db, club, member) =>
      db
        .selectFrom("sites")
        .selectAll()
        .where("club_id", "=", club)
        .where("owner_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("sites").where("club_id", "=", club).where("owner_id", "=", member).execute(),
  },
  {
    table: "rigs",
    rows: (db, club, member) =>
      db
        .selectFrom("rigs")
        .selectAll()
        .where("club_id", "=", club)
        .where("owner_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("rigs").where("club_id", "=", club).where("owner_id", "=", member).execute(),
  },
  {
    table: "notify_wishes",
    rows: (db, club, member) =>
      db
        .selectFrom("notify_wishes")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("notify_wishes").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "evening_people",
    rows: (db, club, member) =>
      db
        .selectFrom("evening_people")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("evening_people").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "answer_buttons",
    rows: (db, club, member) =>
      db
        .selectFrom("answer_buttons")
        .selectAll()
        .where("club_id", "=", club)
        .where("owner_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("answer_buttons").where("club_id", "=", club).where("owner_id", "=", member).execute(),
  },
  {
    table: "log_frames",
    rows: (db, club, member) =>
      db
        .selectFrom("log_frames")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("log_frames").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "log_sums",
    rows: (db, club, member) =>
      db
        .selectFrom("log_sums")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("log_sums").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "calibration_frames",
    rows: (db, club, member) =>
      db
        .selectFrom("calibration_frames")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db
        .deleteFrom("calibration_frames")
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .execute(),
  },
  {
    table: "wanted_hours",
    rows: (db, club, member) =>
      db
        .selectFrom("wanted_hours")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("wanted_hours").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "pool_members",
    rows: (db, club, member) =>
      db
        .selectFrom("pool_members")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("pool_members").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "sky_answers",
    rows: (db, club, member) =>
      db
        .selectFrom("sky_answers")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("sky_answers").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "outreach_guests",
    rows: (db, club, member) =>
      db
        .selectFrom("outreach_guests")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("outreach_guests").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
  {
    table: "members",
    rows: (db, club, member) =>
      db
        .selectFrom("members")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .execute(),
    erase: (db, club, member) =>
      db.deleteFrom("members").where("club_id", "=", club).where("member_id", "=", member).execute(),
  },
];

export function memberBook(db: Kysely<Tables>): MemberBook {
  return {
    exportAll(club, member) {
      return inTransaction(db, async (transaction) => {
        const everything: Record<string, unknown> = {};
        for (const { table, rows } of MEMBER_TABLES) {
          everything[table] = (await rows(transaction, club, member)).map(rowForPeople);
        }
        return everything;
      });
    },

    async eraseAll(club, member) {
      await inTransaction(db, async (transaction) => {
        for (const { erase } of MEMBER_TABLES) await erase(transaction, club, member);
      });
    },
  };
}
