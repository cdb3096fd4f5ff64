/**
 * Clubs, members, sites, rigs and the forecast cache.
 *
 * @packageDocumentation
 */
import type { Migration } from "./migration.ts";

export const firstTables: Migration = {
  number: 1,
  name: "first-tables",

  async up(db) {
    await db.schema
      .createTable("clubs")
      .addColumn("id", "text", (column) => column.primaryKey())
      .addColumn("name", "text", (column) => column.notNull())
      .addColumn("name_key", "text", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .execute();

    await db.schema
      .createTable("members")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("organiser", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("members_key", ["club_id", "member_id"])
      .execute();

    await db.schema
      .createTable("sites")
      .addColumn("id", "bigint", (column) => column.primaryKey())
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("owner_id", "text", (column) => column.notNull())
      .addColumn("name", "text", (column) => column.notNull())
      .addColumn("name_key", "text", (column) => column.notNull())
      .addColumn("latitude_deg", "double precision", (column) => column.notNull())
      .addColumn("longitude_deg", "double precision", (column) => column.notNull())
      .addColumn("elevation_metres", "double precision", (column) => column.notNull())
      .addColumn("time_zone", "text", (column) => column.notNull())
      .addColumn("skyline_json", "text", (column) => column.notNull())
      .addColumn("sky_json", "text")
      .addColumn("bright_directions_json", "text", (column) => column.notNull())
      .addColumn("seeing_arcsec", "double precision")
      .addColumn("is_default", "integer", (column) => column.notNull())
      .addColumn("shared", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addUniqueConstraint("sites_name", ["club_id", "owner_id", "name_key"])
      .execute();

    await db.schema
      .createTable("rigs")
      .addColumn("id", "bigint", (column) => column.primaryKey())
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("owner_id", "text", (column) => column.notNull())
      .addColumn("name", "text", (column) => column.notNull())
      .addColumn("name_key", "text", (column) => column.notNull())
      .addColumn("rig_json", "text", (column) => column.notNull())
      .addColumn("said_json", "text")
      .addColumn("is_default", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addUniqueConstraint("rigs_name", ["club_id", "owner_id", "name_key"])
      .execute();

    await db.schema
      .createTable("forecast_answers")
      .addColumn("cache_key", "text", (column) => column.primaryKey())
      .addColumn("body", "text", (column) => column.notNull())
      .addColumn("fetched_ms", "bigint", (column) => column.notNull())
      .addColumn("expires_ms", "bigint", (column) => column.notNull())
      .addColumn("last_modified", "text")
      .execute();
  },
};
