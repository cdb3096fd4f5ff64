/**
 * Members' logs in the store.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { LogBook, NewFrames } from "../../commands/log-books.ts";
import { duplicateKey, type FrameSet, type LibrarySet, libraryKey } from "../../core/log/frame-set.ts";
import type { NightTally } from "../../core/log/progress.ts";
import { enrol } from "./club-rows.ts";
import { addToSums, takeFromSums } from "./log-sums.ts";
import type { CalibrationFrameRow, LogFrameRow } from "./log-tables.ts";
import { newRowId } from "./row-values.ts";
import { inTransaction } from "./store.ts";
import type { Tables } from "./tables.ts";

/** Rows in one statement: SQLite takes 32,766 values, other databases more. */
const ROWS_AT_ONCE = 1000;

/** Whose rows. */
type Owner = { readonly club: string; readonly member: string };

export function logBook(db: Kysely<Tables>, clock: () => number): LogBook {
  return {
    add(club, member, rows) {
      const owner = { club, member };
      return inTransaction(db, async (transaction) => {
        await enrol(transaction, club, member, clock());
        const batch = (await latestBatch(transaction, owner)) + 1;
        const stamp = { ...owner, batch, now: clock() };
        const frames = rows.frames.map((row) => ({ row: frameRow(row, stamp), set: row.set }));
        const library = rows.library.map((set) => ({ row: libraryRow(set, stamp), set }));
        const newFrames = new Set<string>();
        for (const some of inPieces(frames)) {
          const added = await transaction
            .insertInto("log_frames")
            .values(some.map(({ row }) => row))
            .onConflict((conflict) => conflict.columns(["club_id", "member_id", "duplicate_key"]).doNothing())
            .returning("duplicate_key")
            .execute();
          for (const { duplicate_key } of added) newFrames.add(duplicate_key);
        }
        const keptFrames = keptOnce(frames, newFrames);
        await addToSums(
          transaction,
          keptFrames.map(({ row }) => row),
          stamp.now,
        );
        const newLibrary = new Set<string>();
        for (const some of inPieces(library)) {
          const added = await transaction
            .insertInto("calibration_frames")
            .values(some.map(({ row }) => row))
            .onConflict((conflict) => conflict.columns(["club_id", "member_id", "duplicate_key"]).doNothing())
            .returning("duplicate_key")
            .execute();
          for (const { duplicate_key } of added) newLibrary.add(duplicate_key);
        }
        return {
          frames: keptFrames.map(({ set }) => set),
          library: keptOnce(library, newLibrary).map(({ set }) => set),
          duplicates: frames.length + library.length - newFrames.size - newLibrary.size,
        };
      });
    },

    undo(club, member) {
      const owner = { club, member };
      return inTransaction(db, async (transaction) => {
        const batch = await latestBatch(transaction, owner);
        if (batch === 0) return null;
        const frames = await transaction
          .deleteFrom("log_frames")
          .where("club_id", "=", club)
          .where("member_id", "=", member)
          .where("batch", "=", batch)
          .returningAll()
          .execute();
        await takeFromSums(transaction, frames);
        const library = await transaction
          .deleteFrom("calibration_frames")
          .where("club_id", "=", club)
          .where("member_id", "=", member)
          .where("batch", "=", batch)
          .returningAll()
          .execute();
        return { frames: frames.map(frameSetFromRow), library: library.map(librarySetFromRow) };
      });
    },

    async latest(club, member, limit, object) {
      const mine = db
        .selectFrom("log_frames")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member);
      const rows = await (object === null ? mine : mine.where("object", "=", object))
        .orderBy("night", "desc")
        .orderBy("created_ms", "desc")
        .orderBy("id")
        .limit(limit)
        .execute();
      return rows.map(frameSetFromRow);
    },

    async all(club, member) {
      const frames = await db
        .selectFrom("log_frames")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("night")
        .orderBy("started_ms")
        .orderBy("created_ms")
        .orderBy("id")
        .execute();
      return { frames: frames.map(frameSetFromRow), library: await libraryOf(db, { club, member }) };
    },

    async summed(club, member, fromNight) {
      const rows = await db
        .selectFrom("log_sums")
        .selectAll()
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .where("night", ">=", fromNight)
        .orderBy("night")
        .execute();
      return rows.map((row) => frameSetFromRow({ ...row, started_ms: null }));
    },

    library: (club, member) => libraryOf(db, { club, member }),

    async count(club, member) {
      const count = async (table: "log_frames" | "calibration_frames") => {
        const row = await db
          .selectFrom(table)
          .select(({ fn }) => fn.countAll<number>().as("rows"))
          .where("club_id", "=", club)
          .where("member_id", "=", member)
          .executeTakeFirst();
        return Number(row?.rows ?? 0);
      };
      return (await count("log_frames")) + (await count("calibration_frames"));
    },

    async inHand(club, member) {
      const rows = await db
        .selectFrom("log_sums")
        .select(({ fn, eb }) => [
          ...(["object", "passband", "night"] as const),
          fn.sum<number>("frames").as("frames"),
          fn.sum<number>("rejected").as("rejected"),
          fn.sum<number>(eb("frames", "*", eb.ref("sub_seconds"))).as("seconds"),
          fn.sum<number>("counting_hours").as("counting_hours"),
          fn.sum<number>("counted_rows").as("counted"),
          fn.sum<number>("summed_rows").as("rows"),
        ])
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .groupBy(["object", "passband", "night"])
        .execute();
      return rows.map(
        (row): NightTally => ({
          object: row.object,
          passband: row.passband,
          night: row.night,
          frames: Number(row.frames),
          rejected: Number(row.rejected),
          clockHours: Number(row.seconds) / 3600,
          countingHours: Number(row.counted) === Number(row.rows) ? Number(row.counting_hours) : null,
        }),
      );
    },

    async wanted(club, member) {
      const rows = await db
        .selectFrom("wanted_hours")
        .select(["object", "passband", "hours"])
        .where("club_id", "=", club)
        .where("member_id", "=", member)
        .orderBy("created_ms")
        .execute();
      return rows;
    },

    want(club, member, { object, passband, hours }) {
      return inTransaction(db, async (transaction) => {
        if (hours === null) {
          await transaction
            .deleteFrom("wanted_hours")
            .where("club_id", "=", club)
            .where("member_id", "=", member)
            .where("object", "=", object)
            .where("passband", "=", passband)
            .execute();
          return;
        }
        await enrol(transaction, club, member, clock());
        await transaction
          .insertInto("wanted_hours")
          .values({ club_id: club, member_id: member, object, passband, hours, created_ms: clock() })
          .onConflict((conflict) =>
            conflict.columns(["club_id", "member_id", "object", "passband"]).doUpdateSet({ hours }),
          )
          .execute();
      });
    },
  };
}

/** The number of the latest batch that still has rows; 0 for none. */
async function latestBatch(db: Kysely<Tables>, owner: Owner): Promise<number> {
  const latest = async (table: "log_frames" | "calibration_frames") => {
    const row = await db
      .selectFrom(table)
      .select(({ fn }) => fn.max("batch").as("batch"))
      .where("club_id", "=", owner.club)
      .where("member_id", "=", owner.member)
      .executeTakeFirst();
    return Number(row?.batch ?? 0);
  };
  return Math.max(await latest("log_frames"), await latest("calibration_frames"));
}

async function libraryOf(db: Kysely<Tables>, owner: Owner): Promise<readonly LibrarySet[]> {
  const rows = await db
    .selectFrom("calibration_frames")
    .selectAll()
    .where("club_id", "=", owner.club)
    .where("member_id", "=", owner.member)
    .orderBy("night")
    .orderBy("created_ms")
    .orderBy("id")
    .execute();
  return rows.map(librarySetFromRow);
}

type Stamp = Owner & { readonly batch: number; readonly now: number };

function frameRow({ set, countingHours }: NewFrames, stamp: Stamp): LogFrameRow {
  return {
    id: newRowId(),
    club_id: stamp.club,
    member_id: stamp.member,
    night: set.night,
    object: set.object,
    passband: set.passband,
    frames: set.frames,
    rejected: set.rejected,
    sub_seconds: set.subSeconds,
    gain: set.gain,
    iso: set.iso,
    sensor_celsius: set.sensorCelsius,
    rotation_deg: set.rotationDeg,
    rig: set.rig,
    started_ms: set.startedAt === null ? null : set.startedAt.getTime(),
    counting_hours: countingHours,
    duplicate_key: duplicateKey(set),
    batch: stamp.batch,
    created_ms: stamp.now,
  };
}

function libraryRow(set: LibrarySet, stamp: Stamp): CalibrationFrameRow {
  return {
    id: newRowId(),
    club_id: stamp.club,
    member_id: stamp.member,
    kind: set.kind,
    night: set.night,
    passband: set.passband,
    frames: set.frames,
    sub_seconds: set.subSeconds,
    gain: set.gain,
    iso: set.iso,
    sensor_celsius: set.sensorCelsius,
    rotation_deg: set.rotationDeg,
    rig: set.rig,
    started_ms: set.startedAt === null ? null : set.startedAt.getTime(),
    duplicate_key: libraryKey(set),
    batch: stamp.batch,
    created_ms: stamp.now,
  };
}

type FrameColumns = Pick<
  LogFrameRow,
  | "night"
  | "object"
  | "passband"
  | "frames"
  | "rejected"
  | "sub_seconds"
  | "gain"
  | "iso"
  | "sensor_celsius"
  | "rotation_deg"
  | "rig"
  | "started_ms"
>;

function frameSetFromRow(row: FrameColumns): FrameSet {
  return {
    night: row.night,
    object: row.object,
    passband: row.passband,
    frames: Number(row.frames),
    rejected: Number(row.rejected),
    subSeconds: row.sub_seconds,
    gain: row.gain,
    iso: row.iso,
    sensorCelsius: row.sensor_celsius,
    rotationDeg: row.rotation_deg,
    rig: row.rig,
    startedAt: row.started_ms === null ? null : new Date(Number(row.started_ms)),
  };
}

function librarySetFromRow(row: CalibrationFrameRow): LibrarySet {
  return {
    kind: row.kind,
    night: row.night,
    passband: row.passband,
    frames: row.frames,
    subSeconds: row.sub_seconds,
    gain: row.gain,
    iso: row.iso,
    sensorCelsius: row.sensor_celsius,
    rotationDeg: row.rotation_deg,
    rig: row.rig,
    startedAt: row.started_ms === null ? null : new Date(Number(row.started_ms)),
  };
}

type RowAndSet<Row, Kept> = { readonly row: Row; readonly set: Kept };

/** Those whose rows were new, each once, in the order given. */
function keptOnce<Row extends { readonly duplicate_key: string }, Kept>(
  rows: readonly RowAndSet<Row, Kept>[],
  added: ReadonlySet<string>,
): RowAndSet<Row, Kept>[] {
  const left = new Set(added);
  return rows.filter(({ row }) => left.delete(row.duplicate_key));
}

function inPieces<Item>(items: readonly Item[]): Item[][] {
  const pieces: Item[][] = [];
  for (let from = 0; from < items.length; from += ROWS_AT_ONCE) {
    pieces.push(items.slice(from, from + ROWS_AT_ONCE));
  }
  return pieces;
}
