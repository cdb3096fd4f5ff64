/**
 * The log: subs, calibration frames, hours wanted, pooled targets, track record.
 *
 * @packageDocumentation
 */
import type { Migration } from "./migration.ts";

export const log: Migration = {
  number: 3,
  name: "log",

  async up(db) {
    await db.schema
      .createTable("log_frames")
      .addColumn("id", "bigint", (column) => column.primaryKey())
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("object", "text", (column) => column.notNull())
      .addColumn("passband", "text", (column) => column.notNull())
      .addColumn("frames", "integer", (column) => column.notNull())
      .addColumn("rejected", "integer", (column) => column.notNull())
      .addColumn("sub_seconds", "double precision", (column) => column.notNull())
      .addColumn("gain", "double precision")
      .addColumn("iso", "double precision")
      .addColumn("sensor_celsius", "double precision")
      .addColumn("rotation_deg", "double precision")
      .addColumn("rig", "text")
      .addColumn("started_ms", "bigint")
      .addColumn("counting_hours", "double precision")
      .addColumn("duplicate_key", "text", (column) => column.notNull())
      .addColumn("batch", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addUniqueConstraint("log_frames_once", ["club_id", "member_id", "duplicate_key"])
      .execute();

    await db.schema
      .createIndex("log_frames_batch")
      .on("log_frames")
      .columns(["club_id", "member_id", "batch"])
      .execute();
    await db.schema
      .createIndex("log_frames_night")
      .on("log_frames")
      .columns(["club_id", "member_id", "night"])
      .execute();

    await db.schema
      .createTable("log_sums")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("sum_key", "text", (column) => column.notNull())
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("object", "text", (column) => column.notNull())
      .addColumn("passband", "text", (column) => column.notNull())
      .addColumn("sub_seconds", "double precision", (column) => column.notNull())
      .addColumn("gain", "double precision")
      .addColumn("iso", "double precision")
      .addColumn("sensor_celsius", "double precision")
      .addColumn("rotation_deg", "double precision")
      .addColumn("rig", "text")
      .addColumn("frames", "integer", (column) => column.notNull())
      .addColumn("rejected", "integer", (column) => column.notNull())
      .addColumn("counting_hours", "double precision", (column) => column.notNull())
      .addColumn("summed_rows", "integer", (column) => column.notNull())
      .addColumn("counted_rows", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("log_sums_key", ["club_id", "member_id", "sum_key"])
      .execute();

    await db.schema
      .createTable("calibration_frames")
      .addColumn("id", "bigint", (column) => column.primaryKey())
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("kind", "text", (column) => column.notNull())
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("passband", "text")
      .addColumn("frames", "integer", (column) => column.notNull())
      .addColumn("sub_seconds", "double precision")
      .addColumn("gain", "double precision")
      .addColumn("iso", "double precision")
      .addColumn("sensor_celsius", "double precision")
      .addColumn("rotation_deg", "double precision")
      .addColumn("rig", "text")
      .addColumn("started_ms", "bigint")
      .addColumn("duplicate_key", "text", (column) => column.notNull())
      .addColumn("batch", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addUniqueConstraint("calibration_frames_once", ["club_id", "member_id", "duplicate_key"])
      .execute();

    await db.schema
      .createTable("wanted_hours")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("object", "text", (column) => column.notNull())
      .addColumn("passband", "text", (column) => column.notNull())
      .addColumn("hours", "double precision", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("wanted_hours_key", ["club_id", "member_id", "object", "passband"])
      .execute();

    await db.schema
      .createTable("pool_wishes")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("object", "text", (column) => column.notNull())
      .addColumn("passband", "text", (column) => column.notNull())
      .addColumn("hours", "double precision", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("pool_wishes_key", ["club_id", "object", "passband"])
      .execute();

    await db.schema
      .createTable("pool_members")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("object", "text", (column) => column.notNull())
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("name", "text", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("pool_members_key", ["club_id", "object", "member_id"])
      .execute();

    await db.schema
      .createTable("verdict_notes")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("site", "text", (column) => column.notNull())
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("lead_nights", "integer", (column) => column.notNull())
      .addColumn("model", "text", (column) => column.notNull())
      .addColumn("verdict", "text", (column) => column.notNull())
      .addColumn("agreement", "double precision")
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("verdict_notes_key", ["club_id", "site", "night", "lead_nights", "model"])
      .execute();

    await db.schema
      .createTable("sky_answers")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("site", "text", (column) => column.notNull())
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("good", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("sky_answers_key", ["club_id", "site", "night", "member_id"])
      .execute();
  },
};
