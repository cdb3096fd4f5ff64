/**
 * Members' rigs in the store, each whole as JSON: a rig is read and written as one.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { RigBook, SavedRig } from "../../commands/books.ts";
import { matchKey } from "../../commands/read/names.ts";
import { enrol } from "./club-rows.ts";
import { fromJson, newRowId } from "./row-values.ts";
import { inTransaction } from "./store.ts";
import type { RigRow, Tables } from "./tables.ts";

export function rigBook(db: Kysely<Tables>, clock: () => number): RigBook {
  return {
    async list(club, member) {
      const rows = await db
        .selectFrom("rigs")
        .selectAll()
        .where("club_id", "=", club)
        .where("owner_id", "=", member)
        .orderBy("created_ms")
        .orderBy("name_key")
        .execute();
      return rows.map(savedRigFromRow);
    },

    save(club, member, rig, options = {}) {
      return inTransaction(db, async (transaction) => {
        await enrol(transaction, club, member, clock());
        const own = await transaction
          .selectFrom("rigs")
          .select(["id", "name_key", "said_json", "is_default", "created_ms"])
          .where("club_id", "=", club)
          .where("owner_id", "=", member)
          .execute();
        const key = matchKey(rig.name);
        const before = own.find((row) =>
          options.replaces === undefined ? row.name_key === key : Number(row.id) === options.replaces,
        );
        const makeDefault = options.makeDefault ?? (before ? before.is_default === 1 : own.length === 0);
        if (makeDefault) {
          await transaction
            .updateTable("rigs")
            .set({ is_default: 0 })
            .where("club_id", "=", club)
            .where("owner_id", "=", member)
            .execute();
        }
        const row: RigRow = {
          id: before?.id ?? newRowId(),
          club_id: club,
          owner_id: member,
          name: rig.name,
          name_key: key,
          rig_json: JSON.stringify(rig),
          said_json: options.said === undefined ? (before?.said_json ?? null) : JSON.stringify(options.said),
          is_default: makeDefault ? 1 : 0,
          created_ms: before?.created_ms ?? clock(),
        };
        await transaction
          .insertInto("rigs")
          .values(row)
          .onConflict((conflict) => conflict.column("id").doUpdateSet(row))
          .execute();
        return savedRigFromRow(row);
      });
    },

    async remove(club, member, id) {
      await db
        .deleteFrom("rigs")
        .where("club_id", "=", club)
        .where("owner_id", "=", member)
        .where("id", "=", id)
        .execute();
    },
  };
}

/** A saved rig from its row. */
function savedRigFromRow(row: RigRow): SavedRig {
  return {
    id: Number(row.id),
    ownerId: row.owner_id,
    isDefault: row.is_default === 1,
    rig: fromJson(row.rig_json, "a rig"),
    ...(row.said_json === null ? {} : { said: fromJson(row.said_json, "a rig") }),
  };
}
