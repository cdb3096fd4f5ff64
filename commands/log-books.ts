/**
 * What the log keeps: subs, calibration frames, hours wanted, pooled targets, track record.
 *
 * Every call names the club and, but for pools and the record, the member: nobody
 * reads or changes another's log.
 *
 * @packageDocumentation
 */
import type { FrameSet, LibrarySet } from "../core/log/frame-set.ts";
import type { NightTally, WantedHours } from "../core/log/progress.ts";
import type { SkyAnswer, VerdictNote } from "../core/log/track-record.ts";

/** Subs to be kept, with what their hours are worth. */
export type NewFrames = {
  readonly set: FrameSet;
  /** Counting hours of the kept subs; `null` when they could not be reckoned. */
  readonly countingHours: number | null;
};

export type NewRows = { readonly frames: readonly NewFrames[]; readonly library: readonly LibrarySet[] };
export type KeptRows = { readonly frames: readonly FrameSet[]; readonly library: readonly LibrarySet[] };

/** What became of rows that were added: those kept already are left as they are. */
export type Added = KeptRows & { readonly duplicates: number };

export interface LogBook {
  /** Adds rows as one batch, which `undo` takes back as one. */
  add(club: string, member: string, rows: NewRows): Promise<Added>;
  /** Takes the latest batch back; `null` when nothing is left to take back. */
  undo(club: string, member: string): Promise<KeptRows | null>;
  /** The latest subs, the latest night first; of one object, or of all. */
  latest(club: string, member: string, limit: number, object: string | null): Promise<readonly FrameSet[]>;
  /** Every row, the oldest night first. */
  all(club: string, member: string): Promise<KeptRows>;
  /** The same subs with those of a night alike added up, from a night on; temperatures and turns to half a degree. */
  summed(club: string, member: string, fromNight: string): Promise<readonly FrameSet[]>;
  library(club: string, member: string): Promise<readonly LibrarySet[]>;
  /** Rows kept, of either kind. */
  count(club: string, member: string): Promise<number>;
  /** Hours in hand, one for each night, object and filter. */
  inHand(club: string, member: string): Promise<readonly NightTally[]>;
  wanted(club: string, member: string): Promise<readonly WantedHours[]>;
  /** Sets hours wanted of an object through a filter; `null` wants none. */
  want(
    club: string,
    member: string,
    wish: Omit<WantedHours, "hours"> & { readonly hours: number | null },
  ): Promise<void>;
}

/** A target that members shoot together: who is in, what is wanted. */
export type Pool = {
  readonly object: string;
  readonly wanted: readonly { readonly passband: string; readonly hours: number }[];
  readonly members: readonly { readonly id: string; readonly name: string }[];
};

/** Hours that one of a pool's members has in hand. */
export type PoolShare = {
  readonly member: string;
  readonly passband: string;
  readonly clockHours: number;
};

export interface PoolBook {
  list(club: string): Promise<readonly Pool[]>;
  /** Sets hours wanted, opening the pool if need be; `null` wants none through that filter. */
  want(club: string, object: string, passband: string, hours: number | null): Promise<void>;
  /** Only hours of those who joined are counted and shown. */
  join(club: string, object: string, member: { readonly id: string; readonly name: string }): Promise<void>;
  leave(club: string, object: string, member: string): Promise<void>;
  close(club: string, object: string): Promise<void>;
  shares(club: string, object: string): Promise<readonly PoolShare[]>;
}

export interface RecordBook {
  /** Keeps verdicts; the first of a night, lead and model stands. */
  note(club: string, site: string, notes: readonly VerdictNote[]): Promise<void>;
  /** Keeps what a member says of a night, in place of what they said before. */
  answer(club: string, site: string, answer: SkyAnswer): Promise<void>;
  notes(club: string, site: string): Promise<readonly VerdictNote[]>;
  answers(club: string, site: string): Promise<readonly SkyAnswer[]>;
}
