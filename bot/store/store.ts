/**
 * The store: one SQLite file, opened, brought up to date and closed.
 *
 * @packageDocumentation
 */
import { join } from "node:path";
import { Kysely } from "kysely";
import { WorldError } from "../../commands/ask-error.ts";
import { makeFolder } from "../folders.ts";
import { migrate } from "./migrations.ts";
import { openFile, sharedFileDialect } from "./sqlite.ts";
import type { Tables } from "./tables.ts";

export type Store = {
  /** The file's path, for messages and backups. */
  readonly path: string;
  readonly db: Kysely<Tables>;
  close(): Promise<void>;
};

/** The store's file in the data folder. */
const FILE_NAME = "duskbell.sqlite";

/**
 * Opens the store in a folder, making both when they are not there.
 *
 * @param folder - the data folder
 * @param now - epoch milliseconds, kept beside each step of its shape
 * @throws WorldError, one sentence, when the folder or the file cannot be used
 */
export async function openStore(folder: string, now: number): Promise<Store> {
  try {
    makeFolder(folder);
  } catch (fault) {
    throw new WorldError(`The data folder ${folder} cannot be made: check DUSKBELL_DATA.`, fault);
  }
  const path = join(folder, FILE_NAME);
  const file = openFile(path);
  const db = new Kysely<Tables>({ dialect: sharedFileDialect(file, path) });
  try {
    await migrate(db, now);
  } catch (fault) {
    await db.destroy();
    if (file.open) file.close();
    throw fault;
  }
  return {
    path,
    db,
    async close() {
      await db.destroy();
    },
  };
}

/** Runs work in one write transaction, or in the one that is already under way. */
export function inTransaction<Result>(
  db: Kysely<Tables>,
  work: (transaction: Kysely<Tables>) => Promise<Result>,
): Promise<Result> {
  return db.isTransaction ? work(db) : db.transaction().execute(work);
}
