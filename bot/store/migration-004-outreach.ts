/**
 * Announced public sessions, who comes to them, and the notes to their organisers.
 *
 * @packageDocumentation
 */
import type { Migration } from "./migration.ts";

export const outreach: Migration = {
  number: 4,
  name: "outreach",

  async up(db) {
    await db.schema
      .createTable("outreach_sessions")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("id", "text", (column) => column.notNull())
      .addColumn("name", "text", (column) => column.notNull())
      .addColumn("name_key", "text", (column) => column.notNull())
      .addColumn("night", "text", (column) => column.notNull())
      .addColumn("start_ms", "bigint", (column) => column.notNull())
      .addColumn("end_ms", "bigint", (column) => column.notNull())
      .addColumn("state", "text", (column) => column.notNull())
      .addColumn("revision", "integer", (column) => column.notNull())
      .addColumn("channel_id", "text", (column) => column.notNull())
      .addColumn("message_id", "text")
      .addColumn("event_wanted", "integer", (column) => column.notNull())
      .addColumn("event_id", "text")
      .addColumn("invitation_json", "text", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("outreach_sessions_key", ["club_id", "id"])
      .execute();

    await db.schema
      .createTable("outreach_guests")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("session_id", "text", (column) => column.notNull())
      .addColumn("member_id", "text", (column) => column.notNull())
      .addColumn("is_coming", "integer", (column) => column.notNull())
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("outreach_guests_key", ["club_id", "session_id", "member_id"])
      .execute();

    await db.schema
      .createTable("outreach_notes")
      .addColumn("club_id", "text", (column) => column.notNull().references("clubs.id").onDelete("cascade"))
      .addColumn("session_id", "text", (column) => column.notNull())
      .addColumn("kind", "text", (column) => column.notNull())
      .addColumn("note_json", "text", (column) => column.notNull())
      .addColumn("released_ms", "bigint")
      .addColumn("created_ms", "bigint", (column) => column.notNull())
      .addPrimaryKeyConstraint("outreach_notes_key", ["club_id", "session_id", "kind"])
      .execute();
  },
};
