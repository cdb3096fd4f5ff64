/**
 * Every step of the store's shape in order, and taking those that are missing.
 *
 * All missing steps are taken in one transaction, so that a process which dies
 * half way, or another that starts at the same moment, finds the old shape or the new.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import { WorldError } from "../../commands/ask-error.ts";
import type { Migration } from "./migration.ts";
import { firstTables } from "./migration-001-first-tables.ts";
import { evening } from "./migration-002-evening.ts";
import { log } from "./migration-003-log.ts";
import { outreach } from "./migration-004-outreach.ts";
import type { Tables } from "./tables.ts";

/** By hand, in order; a new one goes to the end. */
export const MIGRATIONS: readonly Migration[] = [firstTables, evening, log, outreach];

/**
 * Takes the steps a store has not taken yet; writes nothing when there are none.
 *
 * @param now - epoch milliseconds, kept beside each step
 * @throws WorldError when the store was written by a newer program
 */
export async function migrate(
  db: Kysely<Tables>,
  now: number,
  steps: readonly Migration[] = MIGRATIONS,
): Promise<void> {
  const newest = steps.at(-1)?.number ?? 0;
  if ((await takenSoFar(db, newest)) === newest) return;
  await db.transaction().execute(async (transaction) => {
    const taken = await takenSoFar(transaction, newest);
    for (const step of steps) {
      if (step.number <= taken) continue;
      await step.up(transaction);
      await transaction
        .insertInto("schema_versions")
        .values({ number: step.number, name: step.name, applied_ms: now })
        .execute();
    }
  });
}

async function takenSoFar(db: Kysely<Tables>, newest: number): Promise<number> {
  await db.schema
    .createTable("schema_versions")
    .ifNotExists()
    .addColumn("number", "integer", (column) => column.primaryKey())
    .addColumn("name", "text", (column) => column.notNull())
    .addColumn("applied_ms", "bigint", (column) => column.notNull())
    .execute();
  const row = await db
    .selectFrom("schema_versions")
    .select(({ fn }) => fn.max("number").as("taken"))
    .executeTakeFirst();
  const taken = Number(row?.taken ?? 0);
  if (taken > newest) {
    throw new WorldError(
      `The store was written by a newer Duskbell (step ${taken}; this one knows ${newest} steps): update this one.`,
    );
  }
  return taken;
}
