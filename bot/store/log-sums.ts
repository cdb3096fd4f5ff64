/**
 * Sums kept beside the rows of a log: written with every batch, taken back with it.
 *
 * @packageDocumentation
 */
import type { Kysely } from "kysely";
import type { LogFrameRow, LogSumRow } from "./log-tables.ts";
import type { Tables } from "./tables.ts";

/** Adds rows to their sums. */
export async function addToSums(
  db: Kysely<Tables>,
  rows: readonly LogFrameRow[],
  now: number,
): Promise<void> {
  for (const sum of sumsOf(rows, now)) {
    await db
      .insertInto("log_sums")
      .values(sum)
      .onConflict((conflict) =>
        conflict.columns(["club_id", "member_id", "sum_key"]).doUpdateSet(({ ref, eb }) => ({
          frames: eb("log_sums.frames", "+", ref("excluded.frames")),
          rejected: eb("log_sums.rejected", "+", ref("excluded.rejected")),
          counting_hours: eb("log_sums.counting_hours", "+", ref("excluded.counting_hours")),
          summed_rows: eb("log_sums.summed_rows", "+", ref("excluded.summed_rows")),
          counted_rows: eb("log_sums.counted_rows", "+", ref("excluded.counted_rows")),
        })),
      )
      .execute();
  }
}

/** Takes rows out of their sums again; a sum of nothing goes. */
export async function takeFromSums(db: Kysely<Tables>, rows: readonly LogFrameRow[]): Promise<void> {
  for (const sum of sumsOf(rows, 0)) {
    const here = db
      .updateTable("log_sums")
      .where("club_id", "=", sum.club_id)
      .where("member_id", "=", sum.member_id)
      .where("sum_key", "=", sum.sum_key);
    await here
      .set(({ eb }) => ({
        frames: eb("frames", "-", sum.frames),
        rejected: eb("rejected", "-", sum.rejected),
        counting_hours: eb("counting_hours", "-", sum.counting_hours),
        summed_rows: eb("summed_rows", "-", sum.summed_rows),
        counted_rows: eb("counted_rows", "-", sum.counted_rows),
      }))
      .execute();
    await db
      .deleteFrom("log_sums")
      .where("club_id", "=", sum.club_id)
      .where("member_id", "=", sum.member_id)
      .where("sum_key", "=", sum.sum_key)
      .where("summed_rows", "<=", 0)
      .execute();
  }
}

/** One sum for each kind of subs among the rows. */
function sumsOf(rows: readonly LogFrameRow[], now: number): readonly LogSumRow[] {
  const sums = new Map<string, LogSumRow>();
  for (const row of rows) {
    const sum = sumOf(row, now);
    const key = `${row.club_id}|${row.member_id}|${sum.sum_key}`;
    const before = sums.get(key);
    sums.set(
      key,
      before === undefined
        ? sum
        : {
            ...sum,
            frames: before.frames + sum.frames,
            rejected: before.rejected + sum.rejected,
            counting_hours: before.counting_hours + sum.counting_hours,
            summed_rows: before.summed_rows + 1,
            counted_rows: before.counted_rows + sum.counted_rows,
          },
    );
  }
  return [...sums.values()];
}

function sumOf(row: LogFrameRow, now: number): LogSumRow {
  const settings = {
    night: row.night,
    object: row.object,
    passband: row.passband,
    sub_seconds: row.sub_seconds,
    gain: row.gain,
    iso: row.iso,
    sensor_celsius: halves(row.sensor_celsius),
    rotation_deg: halves(row.rotation_deg),
    rig: row.rig,
  };
  return {
    club_id: row.club_id,
    member_id: row.member_id,
    sum_key: Object.values(settings).map(String).join("|"),
    ...settings,
    frames: row.frames,
    rejected: row.rejected,
    counting_hours: row.counting_hours ?? 0,
    summed_rows: 1,
    counted_rows: row.counting_hours === null ? 0 : 1,
    created_ms: now,
  };
}

/** Finer than any two sets are told apart by. */
function halves(value: number | null): number | null {
  return value === null ? null : Math.round(value * 2) / 2;
}
