/**
 * Verdicts given and what became of the nights, in the store.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { RecordBook } from "../../commands/log-books.ts";
import { addClub, enrol } from "./club-rows.ts";
import { inTransaction } from "./store.ts";
import type { Tables } from "./tables.ts";

export function recordBook(db: Kysely<Tables>, clock: () => number): RecordBook {
  return {
    note(club, site, notes) {
      if (notes.length === 0) return Promise.resolve();
      return inTransaction(db, async (transaction) => {
        await addClub(transaction, { id: club, name: club }, clock());
        await transaction
          .insertInto("verdict_notes")
          .values(
            notes.map(({ night, leadNights, model, verdict, agreement }) => ({
              club_id: club,
              site,
              night,
              lead_nights: leadNights,
              model: model ?? "",
              verdict,
              agreement,
              created_ms: clock(),
            })),
          )
          .onConflict((conflict) =>
            conflict.columns(["club_id", "site", "night", "lead_nights", "model"]).doNothing(),
          )
          .execute();
      });
    },

    answer(club, site, { night, member, good }) {
      return inTransaction(db, async (transaction) => {
        await enrol(transaction, club, member, clock());
        const said = good ? 1 : 0;
        await transaction
          .insertInto("sky_answers")
          .values({ club_id: club, site, night, member_id: member, good: said, created_ms: clock() })
          .onConflict((conflict) =>
            conflict.columns(["club_id", "site", "night", "member_id"]).doUpdateSet({ good: said }),
          )
          .execute();
      });
    },

    async notes(club, site) {
      const rows = await db
        .selectFrom("verdict_notes")
        .selectAll()
        .where("club_id", "=", club)
        .where("site", "=", site)
        .orderBy("night")
        .execute();
      return rows.map(({ night, lead_nights, model, verdict, agreement }) => ({
        night,
        leadNights: lead_nights,
        model: model === "" ? null : model,
        verdict,
        agreement,
      }));
    },

    async answers(club, site) {
      const rows = await db
        .selectFrom("sky_answers")
        .selectAll()
        .where("club_id", "=", club)
        .where("site", "=", site)
        .orderBy("night")
        .execute();
      return rows.map(({ night, member_id, good }) => ({ night, member: member_id, good: good === 1 }));
    },
  };
}
