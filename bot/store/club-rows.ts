/**
 * Clubs and their members' rows.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import { matchKey } from "../../commands/read/names.ts";
import type { Tables } from "./tables.ts";

export type ClubRecord = { readonly id: string; readonly name: string };

/** Every club kept, the oldest first. */
export async function listClubs(db: Kysely<Tables>): Promise<readonly ClubRecord[]> {
  return db.selectFrom("clubs").select(["id", "name"]).orderBy("created_ms").orderBy("id").execute();
}

/**
 * Keeps a club under an id, unless it is kept already.
 *
 * @returns whether it is new
 */
export async function addClub(db: Kysely<Tables>, club: ClubRecord, now: number): Promise<boolean> {
  const added = await db
    .insertInto("clubs")
    .values({ id: club.id, name: club.name, name_key: matchKey(club.name), created_ms: now })
    .onConflict((conflict) => conflict.column("id").doNothing())
    .executeTakeFirst();
  return Number(added.numInsertedOrUpdatedRows ?? 0) > 0;
}

/**
 * Makes sure that the club and the member have their rows before something else refers to them.
 *
 * Who first keeps something in a club that nobody set up runs it, as far as the console asks.
 */
export async function enrol(db: Kysely<Tables>, club: string, member: string, now: number): Promise<void> {
  const isNew = await addClub(db, { id: club, name: club }, now);
  await db
    .insertInto("members")
    .values({ club_id: club, member_id: member, organiser: isNew ? 1 : 0, created_ms: now })
    .onConflict((conflict) => conflict.columns(["club_id", "member_id"]).doNothing())
    .execute();
}

/** Writes down who runs a club, as the console asks. */
export async function makeOrganiser(
  db: Kysely<Tables>,
  club: string,
  member: string,
  now: number,
): Promise<void> {
  await enrol(db, club, member, now);
  await db
    .updateTable("members")
    .set({ organiser: 1 })
    .where("club_id", "=", club)
    .where("member_id", "=", member)
    .execute();
}

/** Whether the member is written down as one who runs the club. */
export async function isOrganiser(db: Kysely<Tables>, club: string, member: string): Promise<boolean> {
  const row = await db
    .selectFrom("members")
    .select("organiser")
    .where("club_id", "=", club)
    .where("member_id", "=", member)
    .executeTakeFirst();
  return row?.organiser === 1;
}

/** Forgets a club with everything of its members': every table refers to it and goes with it. */
export async function removeClub(db: Kysely<Tables>, club: string): Promise<void> {
  await db.deleteFrom("clubs").where("id", "=", club).execute();
}
