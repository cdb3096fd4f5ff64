/**
 * Who said they are going out, and whom a post mentioned.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { EveningPersonRow, Tables } from "./tables.ts";

/** A member by id, and the name shown. */
export type EveningPerson = { readonly id: string; readonly name: string };

export type Part = EveningPersonRow["part"];

export interface PeopleBook {
  /** In the order they said so. */
  list(club: string, night: string, part: Part): Promise<readonly EveningPerson[]>;
  add(club: string, night: string, part: Part, people: readonly EveningPerson[], at: Date): Promise<void>;
  /** @returns whether the member was down */
  remove(club: string, night: string, part: Part, member: string): Promise<boolean>;
  dropOlderThan(at: Date): Promise<void>;
}

export function peopleBook(db: Kysely<Tables>): PeopleBook {
  return {
    async list(club, night, part) {
      const rows = await db
        .selectFrom("evening_people")
        .select(["member_id", "name"])
        .where("club_id", "=", club)
        .where("night", "=", night)
        .where("part", "=", part)
        .orderBy("created_ms")
        .orderBy("member_id")
        .execute();
      return rows.map((row) => ({ id: row.member_id, name: row.name }));
    },

    async add(club, night, part, people, at) {
      for (const { id, name } of people) {
        await db
          .insertInto("evening_people")
          .values({ club_id: club, night, part, member_id: id, name, created_ms: at.getTime() })
          .onConflict((conflict) => conflict.columns(["club_id", "night", "member_id", "part"]).doNothing())
          .execute();
      }
    },

    async remove(club, night, part, member) {
      const removed = await db
        .deleteFrom("evening_people")
        .where("club_id", "=", club)
        .where("night", "=", night)
        .where("part", "=", part)
        .where("member_id", "=", member)
        .executeTakeFirst();
      return Number(removed.numDeletedRows) > 0;
    },

    async dropOlderThan(at) {
      await db.deleteFrom("evening_people").where("created_ms", "<", at.getTime()).execute();
    },
  };
}
