/**
 * The buttons under answers: what each asks, and who may press it.
 *
 * @packageDocumentation
 */
import { randomBytes } from "node:crypto";
import type { Kysely } from "kysely";
import type { OptionValue } from "../../commands/request.ts";
import { fromJson } from "./row-values.ts";
import type { AnswerButtonRow, Tables } from "./tables.ts";

/** A question as a button keeps it; files are not kept. */
export type KeptQuestion = {
  readonly command: string;
  readonly subcommand: string | null;
  readonly options: Readonly<Record<string, Exclude<OptionValue, object>>>;
  /** The clock of the question, ISO 8601: what is shared is what was shown. `null`: the clock of the press. */
  readonly at: string | null;
};

export type AnswerButton = {
  readonly id: string;
  /** `null`: anyone in the club. */
  readonly ownerId: string | null;
  readonly kind: AnswerButtonRow["kind"];
  readonly question: KeptQuestion;
};

export interface ButtonBook {
  /** Keeps the buttons of one answer, in one go. */
  keep(club: string, buttons: readonly Omit<AnswerButton, "id">[], at: Date): Promise<readonly string[]>;
  find(club: string, id: string): Promise<AnswerButton | null>;
  dropOlderThan(at: Date): Promise<void>;
}

/** Unguessable, and short enough for a button's 100 characters. */
const ID_BYTES = 16;

export function buttonBook(db: Kysely<Tables>): ButtonBook {
  return {
    async keep(club, buttons, at) {
      if (buttons.length === 0) return [];
      const rows = buttons.map(({ ownerId, kind, question }) => ({
        id: randomBytes(ID_BYTES).toString("hex"),
        club_id: club,
        owner_id: ownerId,
        kind,
        question_json: JSON.stringify(question),
        created_ms: at.getTime(),
      }));
      await db.insertInto("answer_buttons").values(rows).execute();
      return rows.map(({ id }) => id);
    },

    async find(club, id) {
      const row = await db
        .selectFrom("answer_buttons")
        .selectAll()
        .where("club_id", "=", club)
        .where("id", "=", id)
        .executeTakeFirst();
      if (row === undefined) return null;
      const question = fromJson<KeptQuestion>(row.question_json, "a button's question");
      return { id: row.id, ownerId: row.owner_id, kind: row.kind, question };
    },

    async dropOlderThan(at) {
      await db.deleteFrom("answer_buttons").where("created_ms", "<", at.getTime()).execute();
    },
  };
}
