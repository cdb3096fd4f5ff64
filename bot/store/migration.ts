/**
 * One step of the store's shape.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** Forward only, and never edited once it has shipped. */
export type Migration = {
  /** One more than the step before. */
  readonly number: number;
  readonly name: string;
  up(db: Kysely<Tables>): Promise<void>;
};
