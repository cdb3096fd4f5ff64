/**
 * Pooled targets in the store.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { PoolBook } from "../../commands/log-books.ts";
import { addClub, enrol } from "./club-rows.ts";
import { inTransaction } from "./store.ts";
import type { Tables } from "./tables.ts";

export function poolBook(db: Kysely<Tables>, clock: () => number): PoolBook {
  return {
    async list(club) {
      const wishes = await db
        .selectFrom("pool_wishes")
        .select(["object", "passband", "hours"])
        .where("club_id", "=", club)
        .orderBy("created_ms")
        .execute();
      const members = await db
        .selectFrom("pool_members")
        .select(["object", "member_id", "name"])
        .where("club_id", "=", club)
        .orderBy("created_ms")
        .execute();
      const objects = new Set([...wishes, ...members].map(({ object }) => object));
      return [...objects].map((object) => ({
        object,
        wanted: wishes
          .filter((wish) => wish.object === object)
          .map(({ passband, hours }) => ({ passband, hours })),
        members: members
          .filter((member) => member.object === object)
          .map(({ member_id, name }) => ({ id: member_id, name })),
      }));
    },

    want(club, object, passband, hours) {
      return inTransaction(db, async (transaction) => {
        if (hours === null) {
          await transaction
            .deleteFrom("pool_wishes")
            .where("club_id", "=", club)
            .where("object", "=", object)
            .where("passband", "=", passband)
            .execute();
          return;
        }
        await addClub(transaction, { id: club, name: club }, clock());
        await transaction
          .insertInto("pool_wishes")
          .values({ club_id: club, object, passband, hours, created_ms: clock() })
          .onConflict((conflict) =>
            conflict.columns(["club_id", "object", "passband"]).doUpdateSet({ hours }),
          )
          .execute();
      });
    },

    join(club, object, member) {
      return inTransaction(db, async (transaction) => {
        await enrol(transaction, club, member.id, clock());
        await transaction
          .insertInto("pool_members")
          .values({ club_id: club, object, member_id: member.id, name: member.name, created_ms: clock() })
          .onConflict((conflict) =>
            conflict.columns(["club_id", "object", "member_id"]).doUpdateSet({ name: member.name }),
          )
          .execute();
      });
    },

    async leave(club, object, member) {
      await db
        .deleteFrom("pool_members")
        .where("club_id", "=", club)
        .where("object", "=", object)
        .where("member_id", "=", member)
        .execute();
    },

    close(club, object) {
      return inTransaction(db, async (transaction) => {
        for (const table of ["pool_wishes", "pool_members"] as const) {
          await transaction
            .deleteFrom(table)
            .where("club_id", "=", club)
            .where("object", "=", object)
            .execute();
        }
      });
    },

    async shares(club, object) {
      const rows = await db
        .selectFrom("log_sums")
        .innerJoin("pool_members", (join) =>
          join
            .onRef("pool_members.club_id", "=", "log_sums.club_id")
            .onRef("pool_members.member_id", "=", "log_sums.member_id")
            .onRef("pool_members.object", "=", "log_sums.object"),
        )
        .select(({ fn, eb }) => [
          "log_sums.member_id as member",
          "log_sums.passband as passband",
          fn.sum<number>(eb("log_sums.frames", "*", eb.ref("log_sums.sub_seconds"))).as("seconds"),
        ])
        .where("log_sums.club_id", "=", club)
        .where("log_sums.object", "=", object)
        .groupBy(["log_sums.member_id", "log_sums.passband"])
        .execute();
      return rows.map(({ member, passband, seconds }) => ({
        member,
        passband,
        clockHours: Number(seconds) / 3600,
      }));
    },
  };
}
