/**
 * Nights being looked after, each as JSON beside the turn that counts its changes.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { Interval } from "../../core/interval.ts";
import type { PostedWatch, Watch } from "../evening/watch.ts";
import { fromJson } from "./row-values.ts";
import type { Tables } from "./tables.ts";

/** A watch as read, with the turn that a change of it must name. */
export type WatchRecord = { readonly turn: number; readonly watch: Watch };

export interface WatchBook {
  find(club: string, night: string): Promise<WatchRecord | null>;
  /**
   * Writes what follows from the turn that was read; 0 for a night not watched yet.
   *
   * @returns the new turn, or `null` when somebody else wrote first
   */
  save(club: string, night: string, watch: Watch, turn: number): Promise<number | null>;
  dropBefore(night: string): Promise<void>;
}

export function watchBook(db: Kysely<Tables>): WatchBook {
  return {
    async find(club, night) {
      const row = await db
        .selectFrom("evening_watches")
        .selectAll()
        .where("club_id", "=", club)
        .where("night", "=", night)
        .executeTakeFirst();
      return row === undefined ? null : { turn: row.turn, watch: watchFromJson(row.watch_json) };
    },

    async save(club, night, watch, turn) {
      const watch_json = JSON.stringify(watch);
      if (turn === 0) {
        const added = await db
          .insertInto("evening_watches")
          .values({ club_id: club, night, turn: 1, watch_json })
          .onConflict((conflict) => conflict.columns(["club_id", "night"]).doNothing())
          .executeTakeFirst();
        return Number(added.numInsertedOrUpdatedRows ?? 0) > 0 ? 1 : null;
      }
      const changed = await db
        .updateTable("evening_watches")
        .set({ turn: turn + 1, watch_json })
        .where("club_id", "=", club)
        .where("night", "=", night)
        .where("turn", "=", turn)
        .executeTakeFirst();
      return Number(changed.numUpdatedRows) > 0 ? turn + 1 : null;
    },

    async dropBefore(night) {
      await db.deleteFrom("evening_watches").where("night", "<", night).execute();
    },
  };
}

type WrittenSpan = { readonly start: string; readonly end: string } | null;

/** As JSON holds it: instants are text. Answers are kept without charts and files, so they are plain. */
type WrittenPosted = Omit<PostedWatch, "window" | "movedTo" | "changedAt" | "nightEnds"> & {
  readonly window: WrittenSpan;
  readonly movedTo: WrittenSpan;
  readonly changedAt: string;
  readonly nightEnds: string;
};
type WrittenWatch = {
  readonly lookedAt: string;
  readonly lookedInTime: boolean;
  readonly posted: WrittenPosted | null;
};

function watchFromJson(text: string): Watch {
  const written = fromJson<WrittenWatch>(text, "an evening's watch");
  const { posted } = written;
  return {
    lookedAt: new Date(written.lookedAt),
    lookedInTime: written.lookedInTime,
    posted: posted && {
      ...posted,
      window: span(posted.window),
      movedTo: span(posted.movedTo),
      changedAt: new Date(posted.changedAt),
      nightEnds: new Date(posted.nightEnds),
    },
  };
}

function span(written: WrittenSpan): Interval | null {
  return written && { start: new Date(written.start), end: new Date(written.end) };
}
