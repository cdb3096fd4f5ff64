/**
 * Rows of the log, a type for each of its tables.
 *
 * @packageDocumentation
 */

/** Subs shot alike in one go. */
export type LogFrameRow = {
  readonly id: number;
  readonly club_id: string;
  readonly member_id: string;
  readonly night: string;
  readonly object: string;
  readonly passband: string;
  readonly frames: number;
  readonly rejected: number;
  readonly sub_seconds: number;
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensor_celsius: number | null;
  readonly rotation_deg: number | null;
  readonly rig: string | null;
  readonly started_ms: number | null;
  readonly counting_hours: number | null;
  /** Unique to the member: the same subs are kept once. */
  readonly duplicate_key: string;
  /** Counted up by the member: rows of one batch go together. */
  readonly batch: number;
  readonly created_ms: number;
};

/**
 * Subs of a night alike in everything but their start, added up: kept beside the rows
 * they sum, so that a log of any length is told at once.
 */
export type LogSumRow = {
  readonly club_id: string;
  readonly member_id: string;
  readonly sum_key: string;
  readonly night: string;
  readonly object: string;
  readonly passband: string;
  readonly sub_seconds: number;
  readonly gain: number | null;
  readonly iso: number | null;
  /** To half a degree, as the rotation is. */
  readonly sensor_celsius: number | null;
  readonly rotation_deg: number | null;
  readonly rig: string | null;
  readonly frames: number;
  readonly rejected: number;
  /** Of the rows whose counting hours are known. */
  readonly counting_hours: number;
  readonly summed_rows: number;
  readonly counted_rows: number;
  readonly created_ms: number;
};

/** Calibration frames shot alike. */
export type CalibrationFrameRow = {
  readonly id: number;
  readonly club_id: string;
  readonly member_id: string;
  readonly kind: "dark" | "flat" | "bias";
  readonly night: string;
  readonly passband: string | null;
  readonly frames: number;
  readonly sub_seconds: number | null;
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensor_celsius: number | null;
  readonly rotation_deg: number | null;
  readonly rig: string | null;
  readonly started_ms: number | null;
  readonly duplicate_key: string;
  readonly batch: number;
  readonly created_ms: number;
};

export type WantedHoursRow = {
  readonly club_id: string;
  readonly member_id: string;
  readonly object: string;
  readonly passband: string;
  readonly hours: number;
  readonly created_ms: number;
};

/** Hours that a club's pool wants; a pool is there while it wants something or has members. */
export type PoolWishRow = {
  readonly club_id: string;
  readonly object: string;
  readonly passband: string;
  readonly hours: number;
  readonly created_ms: number;
};

export type PoolMemberRow = {
  readonly club_id: string;
  readonly object: string;
  readonly member_id: string;
  readonly name: string;
  readonly created_ms: number;
};

/** A verdict as it was given; `model` is empty for that of all together. */
export type VerdictNoteRow = {
  readonly club_id: string;
  readonly site: string;
  readonly night: string;
  readonly lead_nights: number;
  readonly model: string;
  readonly verdict: "go" | "marginal" | "no-go";
  readonly agreement: number | null;
  readonly created_ms: number;
};

export type SkyAnswerRow = {
  readonly club_id: string;
  readonly site: string;
  readonly night: string;
  readonly member_id: string;
  readonly good: number;
  readonly created_ms: number;
};
