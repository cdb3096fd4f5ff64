/**
 * Providers' answers kept through a restart.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import { REFRESH } from "../../config/forecast-services.ts";
import type { ForecastAnswerRow, Tables } from "./tables.ts";

export type KeptAnswer = {
  readonly body: string;
  readonly fetchedAt: Date;
  /** The provider is not asked again before. */
  readonly expiresAt: Date;
  /** The exact `Last-Modified` text, for a conditional request. */
  readonly lastModified: string | null;
};

export type ForecastShelf = {
  get(key: string): Promise<KeptAnswer | null>;
  /** Keeps an answer, and drops those that have become useless meanwhile. */
  put(key: string, answer: KeptAnswer): Promise<void>;
};

export function forecastShelf(db: Kysely<Tables>): ForecastShelf {
  return {
    async get(key) {
      const row = await db
        .selectFrom("forecast_answers")
        .selectAll()
        .where("cache_key", "=", key)
        .executeTakeFirst();
      return row === undefined ? null : keptAnswerFromRow(row);
    },

    async put(key, answer) {
      const row: ForecastAnswerRow = {
        cache_key: key,
        body: answer.body,
        fetched_ms: answer.fetchedAt.getTime(),
        expires_ms: answer.expiresAt.getTime(),
        last_modified: answer.lastModified,
      };
      await db
        .insertInto("forecast_answers")
        .values(row)
        .onConflict((conflict) => conflict.column("cache_key").doUpdateSet(row))
        .execute();
      await db
        .deleteFrom("forecast_answers")
        .where("fetched_ms", "<", row.fetched_ms - REFRESH.uselessAfterMs)
        .execute();
    },
  };
}

function keptAnswerFromRow(row: ForecastAnswerRow): KeptAnswer {
  return {
    body: row.body,
    fetchedAt: new Date(Number(row.fetched_ms)),
    expiresAt: new Date(Number(row.expires_ms)),
    lastModified: row.last_modified,
  };
}
