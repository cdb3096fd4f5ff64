/**
 * Clubs' settings in the store, each club's whole as JSON.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { ClubBook, ClubSettings } from "../../commands/books.ts";
import { HOURS_BEFORE_SUNSET } from "../../config/club-defaults.ts";
import { addClub } from "./club-rows.ts";
import { fromJson } from "./row-values.ts";
import { inTransaction } from "./store.ts";
import type { Tables } from "./tables.ts";

const BEGIN_WITH: ClubSettings = {
  channelId: null,
  sites: [],
  hoursBeforeSunset: HOURS_BEFORE_SUNSET,
  rig: null,
  postOn: "go",
  units: "metric",
  limits: {},
  organiserRoleId: null,
  trouble: null,
  troubleTold: false,
};

export function clubBook(db: Kysely<Tables>, clock: () => number): ClubBook {
  const read = async (from: Kysely<Tables>, club: string): Promise<ClubSettings> => {
    const row = await from
      .selectFrom("club_settings")
      .select("settings_json")
      .where("club_id", "=", club)
      .executeTakeFirst();
    if (row === undefined) return BEGIN_WITH;
    return { ...BEGIN_WITH, ...fromJson<Partial<ClubSettings>>(row.settings_json, "a club's settings") };
  };
  return {
    settings: (club) => read(db, club),

    change(club, changes) {
      return inTransaction(db, async (transaction) => {
        await addClub(transaction, { id: club, name: club }, clock());
        const settings = { ...(await read(transaction, club)), ...changes };
        const row = { club_id: club, settings_json: JSON.stringify(settings) };
        await transaction
          .insertInto("club_settings")
          .values(row)
          .onConflict((conflict) => conflict.column("club_id").doUpdateSet(row))
          .execute();
        return settings;
      });
    },
  };
}

/** A club with a channel for its evening post. */
export type PostingClub = {
  readonly id: string;
  readonly name: string;
  readonly settings: ClubSettings & { readonly channelId: string };
};

/** Every club that wants an evening post, in one reading. */
export async function postingClubs(db: Kysely<Tables>): Promise<readonly PostingClub[]> {
  const rows = await db
    .selectFrom("club_settings")
    .innerJoin("clubs", "clubs.id", "club_settings.club_id")
    .select(["clubs.id", "clubs.name", "club_settings.settings_json"])
    .orderBy("clubs.id")
    .execute();
  return rows.flatMap(({ id, name, settings_json }) => {
    const kept = fromJson<Partial<ClubSettings>>(settings_json, "a club's settings");
    const settings = { ...BEGIN_WITH, ...kept };
    const { channelId } = settings;
    return channelId === null ? [] : [{ id, name, settings: { ...settings, channelId } }];
  });
}
