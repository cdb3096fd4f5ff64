/**
 * Members' sites in the store.
 *
 * Coordinates are rounded to 0.01° on their way in: nothing finer is kept.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { SavedSite, SiteBook } from "../../commands/books.ts";
import { keptDegrees } from "../../commands/read/coordinates.ts";
import { matchKey } from "../../commands/read/names.ts";
import type { Site } from "../../core/site.ts";
import { enrol } from "./club-rows.ts";
import { fromJson, newRowId } from "./row-values.ts";
import { inTransaction } from "./store.ts";
import type { SiteRow, Tables } from "./tables.ts";

export function siteBook(db: Kysely<Tables>, clock: () => number): SiteBook {
  return {
    async list(club, member) {
      const rows = await db
        .selectFrom("sites")
        .selectAll()
        .where("club_id", "=", club)
        .where(({ eb, or }) => or([eb("owner_id", "=", member), eb("shared", "=", 1)]))
        .orderBy("created_ms")
        .orderBy("name_key")
        .execute();
      const saved = rows.map(savedSiteFromRow);
      return [
        ...saved.filter(({ ownerId }) => ownerId === member),
        ...saved.filter(({ ownerId }) => ownerId !== member),
      ];
    },

    save(club, member, site, options = {}) {
      return inTransaction(db, async (transaction) => {
        await enrol(transaction, club, member, clock());
        const own = await transaction
          .selectFrom("sites")
          .select(["id", "name_key", "is_default", "shared", "created_ms"])
          .where("club_id", "=", club)
          .where("owner_id", "=", member)
          .execute();
        const key = matchKey(site.name);
        const before = own.find((row) =>
          options.replaces === undefined ? row.name_key === key : Number(row.id) === options.replaces,
        );
        const makeDefault = options.makeDefault ?? (before ? before.is_default === 1 : own.length === 0);
        if (makeDefault) {
          await transaction
            .updateTable("sites")
            .set({ is_default: 0 })
            .where("club_id", "=", club)
            .where("owner_id", "=", member)
            .execute();
        }
        const row: SiteRow = {
          ...siteColumns(site),
          id: before?.id ?? newRowId(),
          club_id: club,
          owner_id: member,
          name_key: key,
          is_default: makeDefault ? 1 : 0,
          shared: (options.shared ?? before?.shared === 1) ? 1 : 0,
          created_ms: before?.created_ms ?? clock(),
        };
        await transaction
          .insertInto("sites")
          .values(row)
          .onConflict((conflict) => conflict.column("id").doUpdateSet(row))
          .execute();
        return savedSiteFromRow(row);
      });
    },

    async remove(club, member, id) {
      await db
        .deleteFrom("sites")
        .where("club_id", "=", club)
        .where("owner_id", "=", member)
        .where("id", "=", id)
        .execute();
    },
  };
}

/** A saved site from its row. */
function savedSiteFromRow(row: SiteRow): SavedSite {
  return {
    id: Number(row.id),
    ownerId: row.owner_id,
    isDefault: row.is_default === 1,
    shared: row.shared === 1,
    site: {
      name: row.name,
      latitudeDeg: row.latitude_deg,
      longitudeDeg: row.longitude_deg,
      elevationMetres: row.elevation_metres,
      timeZone: row.time_zone,
      skyline: fromJson(row.skyline_json, "a site's skyline"),
      sky: row.sky_json === null ? null : fromJson(row.sky_json, "a site's sky"),
      brightDirections: fromJson(row.bright_directions_json, "a site's bright directions"),
      seeingArcsec: row.seeing_arcsec,
    },
  };
}

function siteColumns(site: Site) {
  return {
    name: site.name,
    latitude_deg: keptDegrees(site.latitudeDeg),
    longitude_deg: keptDegrees(site.longitudeDeg),
    elevation_metres: site.elevationMetres,
    time_zone: site.timeZone,
    skyline_json: JSON.stringify(site.skyline),
    sky_json: site.sky === null ? null : JSON.stringify(site.sky),
    bright_directions_json: JSON.stringify(site.brightDirections),
    seeing_arcsec: site.seeingArcsec,
  };
}
