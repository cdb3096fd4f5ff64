/**
 * SQLite for the query builder: one file, shared by several processes.
 *
 * A write transaction takes the write lock at its beginning: one that read first
 * and asked for the lock later would be refused as soon as another process wrote
 * in between. Faults of the file come out as one plain sentence.
 *
 * @packageDocumentation
 */
import Database from "better-sqlite3";
import {
  CompiledQuery,
  type DatabaseConnection,
  type QueryResult,
  SqliteDialect,
  SqliteDriver,
  type TransactionSettings,
} from "kysely";
import { WorldError } from "../../commands/ask-error.ts";

/** How long a statement waits for another process's write, milliseconds. */
const BUSY_TIMEOUT_MS = 5000;

/**
 * Opens the file, or makes it.
 *
 * @throws WorldError when it is no database, damaged, locked or out of reach
 */
export function openFile(path: string): Database.Database {
  try {
    const file = new Database(path, { timeout: BUSY_TIMEOUT_MS });
    try {
      writeAhead(file);
      file.pragma("synchronous = full");
      file.pragma("foreign_keys = on");
    } catch (fault) {
      file.close();
      throw fault;
    }
    return file;
  } catch (fault) {
    throw storeFault(fault, path);
  }
}

/**
 * Switches to write-ahead logging, so that readers and a writer do not wait for each other.
 *
 * The switch itself ignores the busy time-out; two processes that open a new file
 * at the same moment would trip over each other.
 */
function writeAhead(file: Database.Database): void {
  const giveUpAt = performance.now() + BUSY_TIMEOUT_MS;
  for (;;) {
    try {
      file.pragma("journal_mode = wal");
      return;
    } catch (fault) {
      if (codeOf(fault) !== "SQLITE_BUSY" || performance.now() > giveUpAt) throw fault;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

/** The query builder's dialect over an open file. */
export function sharedFileDialect(file: Database.Database, path: string): SqliteDialect {
  const dialect = new SqliteDialect({ database: file });
  dialect.createDriver = () => new SharedFileDriver(file, path);
  return dialect;
}

class SharedFileDriver extends SqliteDriver {
  readonly #path: string;

  constructor(file: Database.Database, path: string) {
    super({ database: file });
    this.#path = path;
  }

  override async acquireConnection(): Promise<DatabaseConnection> {
    return new PlainFaults(await super.acquireConnection(), this.#path);
  }

  override async beginTransaction(
    connection: DatabaseConnection,
    _settings?: TransactionSettings,
  ): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw("begin immediate"));
  }
}

/** A connection whose faults of the file are told in one sentence. */
class PlainFaults implements DatabaseConnection {
  readonly #inner: DatabaseConnection;
  readonly #path: string;

  constructor(inner: DatabaseConnection, path: string) {
    this.#inner = inner;
    this.#path = path;
  }

  async executeQuery<Row>(query: CompiledQuery): Promise<QueryResult<Row>> {
    try {
      return await this.#inner.executeQuery<Row>(query);
    } catch (fault) {
      throw storeFault(fault, this.#path);
    }
  }

  streamQuery<Row>(query: CompiledQuery, chunkSize: number): AsyncIterableIterator<QueryResult<Row>> {
    return this.#inner.streamQuery<Row>(query, chunkSize);
  }
}

/**
 * What a fault of the file means for those who keep it, or the fault itself when it is ours.
 *
 * @param fault - whatever was thrown
 * @param path - the store's file
 */
function storeFault(fault: unknown, path: string): unknown {
  const code = codeOf(fault) ?? "";
  const said = (sentence: string) => new WorldError(`The store ${path} ${sentence}`, fault);
  if (code.startsWith("SQLITE_CORRUPT") || code === "SQLITE_NOTADB") {
    return said("is damaged or no database: put a backup in its place, or move it away to begin anew.");
  }
  if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED")) {
    return said("is busy: another process has been writing for too long; try again.");
  }
  if (code.startsWith("SQLITE_READONLY") || code.startsWith("SQLITE_PERM")) {
    return said("may not be written to: check who owns the file and its folder.");
  }
  if (code.startsWith("SQLITE_CANTOPEN") || code.startsWith("SQLITE_AUTH") || code === "ENOTDIR") {
    return said("cannot be opened: check that its folder exists and may be written to.");
  }
  if (code.startsWith("SQLITE_FULL") || code.startsWith("SQLITE_IOERR")) {
    return said("cannot be read or written: the disk is full or failing.");
  }
  return fault;
}

function codeOf(fault: unknown): string | null {
  return fault instanceof Error && "code" in fault && typeof fault.code === "string" ? fault.code : null;
}
