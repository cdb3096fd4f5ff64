/**
 * Clubs whose servers removed the bot while it was not there to hear of it.
 *
 * They are missed for some days before they are erased: a bot that signed in with the wrong
 * token must not cost every club its rows.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** A club of Discord's: its id is that of a server. The demo club and the like are not. */
const SERVER_ID = /^\d{15,21}$/;

/** Writes down which clubs are missing from the servers we are in, and which are back. */
export async function noteAbsences(
  db: Kysely<Tables>,
  present: ReadonlySet<string>,
  at: Date,
): Promise<void> {
  const clubs = await db.selectFrom("clubs").select("id").execute();
  for (const { id } of clubs.filter((club) => SERVER_ID.test(club.id))) {
    if (present.has(id)) {
      await db.deleteFrom("absent_clubs").where("club_id", "=", id).execute();
    } else {
      await db
        .insertInto("absent_clubs")
        .values({ club_id: id, since_ms: at.getTime() })
        .onConflict((conflict) => conflict.column("club_id").doNothing())
        .execute();
    }
  }
}

/** Erases clubs that have been missing since before an instant. @returns how many */
export async function eraseAbsentSince(db: Kysely<Tables>, before: Date): Promise<number> {
  const erased = await db
    .deleteFrom("clubs")
    .where("id", "in", (builder) =>
      builder.selectFrom("absent_clubs").select("club_id").where("since_ms", "<", before.getTime()),
    )
    .executeTakeFirst();
  return Number(erased.numDeletedRows);
}
