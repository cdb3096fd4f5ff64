/**
 * Wishes to be mentioned in the evening post.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { NotifyBook, NotifyWish } from "../../commands/books.ts";
import { enrol } from "./club-rows.ts";
import { inTransaction } from "./store.ts";
import type { NotifyWishRow, Tables } from "./tables.ts";

export function notifyBook(db: Kysely<Tables>, clock: () => number): NotifyBook {
  return {
    async get(club, member) {
      const row = await db
        .selectFrom("notify_wishes")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .executeTakeFirst();
      return row === undefined ? null : wishFromRow(row);
    },

    set(club, member, wish) {
      return inTransaction(db, async (transaction) => {
        await enrol(transaction, club, member, clock());
        const row: NotifyWishRow = {
          club_id: club,
          member_id: member,
          site_name: wish.siteName,
          least_hours: wish.leastHours,
          created_ms: clock(),
        };
        await transaction
          .insertInto("notify_wishes")
          .values(row)
          .onConflict((conflict) => conflict.columns(["club_id", "member_id"]).doUpdateSet(row))
          .execute();
      });
    },

    async remove(club, member) {
      await db
        .deleteFrom("notify_wishes")
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .execute();
    },
  };
}

export type MemberWish = { readonly member: string; readonly wish: NotifyWish };

/** Every wish of a club, in the order they were made. */
export async function listWishes(db: Kysely<Tables>, club: string): Promise<readonly MemberWish[]> {
  const rows = await db
    .selectFrom("notify_wishes")
    .selectAll()
    .where("club_id", "=", club)
    .orderBy("created_ms")
    .orderBy("member_id")
    .execute();
  return rows.map((row) => ({ member: row.member_id, wish: wishFromRow(row) }));
}

function wishFromRow(row: NotifyWishRow): NotifyWish {
  return { siteName: row.site_name, leastHours: row.least_hours };
}
