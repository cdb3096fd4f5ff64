/**
 * Clubs' settings, wishes to be mentioned, the evening post and the buttons under answers.
 *
 * @packageDocumentation
 */
import type { Migration } from "./migration.ts";

export const evening: Migration = {
  number: 2,
  name: "evening",

  async up(db) {
    await db.schema
      .createTable("club_settings")
      .addColumn("club_id", "text", (column) =>
        column.primaryKey().references("clubs.id").onDelete("cascade"),
      )
      .addColumn("settings_json", "text", (column) => column.notNull())
      .execute();

    await db.schema
      .createTable("absent_clubs")
      .addColumn("club_id", "text", (column) =>
        column.primaryKey().references("clubs.id").onDelete("cascade"),
      )
      .addColumn("since_ms", "bigint", (column) => column.notNull())
      .execute();

    await db.schema
      .createTable("notify_wishes")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("site_name", "text")
      .addColumn("least_hours", "double precision", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("notify_wishes_key", ["club_id", "member_id"])
      .execute();

    await db.schema
      .createTable("evening_claims")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("kind", "text", (column) => column.notNull())
      .addColumn("state", "text", (column) => column.notNull())
      .addColumn("holder", "text", (column) => column.notNull())
      .addColumn("lease_until_ms", "bigint", (column) => column.notNull())
      .addColumn("claimed_ms", "bigint", (column) => column.notNull())
      .addColumn("send_began_ms", "bigint")
      .addColumn("channel_id", "text", (column) => column.notNull())
      .addColumn("message_id", "text")
      .addColumn("settled_ms", "bigint")
      .addColumn("reason", "text")
      .addPrimaryKeyConstraint("evening_claims_key", ["club_id", "night", "kind"])
      .execute();

    await db.schema
      .createTable("evening_watches")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("turn", "integer", (column) => column.notNull())
      .addColumn("watch_json", "text", (column) => column.notNull())
      .addPrimaryKeyConstraint("evening_watches_key", ["club_id", "night"])
      .execute();

    await db.schema
      .createTable("evening_people")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("part", "text", (column) => column.notNull())
      .addColumn("name", "text", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("evening_people_key", ["club_id", "night", "member_id", "part"])
      .execute();

    await db.schema
      .createTable("answer_buttons")
      .addColumn("id", "text", (column) => column.primaryKey())
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("owner_id", "text")
      .addColumn("kind", "text", (column) => column.notNull())
      .addColumn("question_json", "text", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .execute();
  },
};
