/**
 * The books that commands read and write, over one store or one transaction of it.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { Books } from "../../commands/books.ts";
import { clubBook } from "./club-book.ts";
import { logBook } from "./log-book.ts";
import { memberBook } from "./member-book.ts";
import { notifyBook } from "./notify-book.ts";
import { poolBook } from "./pool-book.ts";
import { recordBook } from "./record-book.ts";
import { rigBook } from "./rig-book.ts";
import { siteBook } from "./site-book.ts";
import type { Tables } from "./tables.ts";

/**
 * @param db - the store, or a transaction in which everything shall happen or nothing
 * @param clock - epoch milliseconds, for the time of writing
 */
export function storeBooks(db: Kysely<Tables>, clock: () => number): Books {
  return {
    clubs: clubBook(db, clock),
    notify: notifyBook(db, clock),
    sites: siteBook(db, clock),
    rigs: rigBook(db, clock),
    log: logBook(db, clock),
    pools: poolBook(db, clock),
    record: recordBook(db, clock),
    members: memberBook(db),
  };
}
