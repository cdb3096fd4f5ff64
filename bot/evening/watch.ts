/**
 * A night being looked after: what its post shows, what was seen since, what is owed.
 *
 * Kept whole beside a turn that counts its changes: who writes names the turn that was
 * read, so of two processes one succeeds and the other reads again.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { WINDOW_MOVED_MS } from "../../config/evening.ts";
import type { Interval } from "../../core/interval.ts";
import type { VerdictKind } from "../../core/weather/night-judgement.ts";

/** What the post says of the night, as far as a change of it is worth an edit. */
export type Shown = { readonly verdict: VerdictKind; readonly window: Interval | null };

export type PostedWatch = Shown & {
  readonly siteName: string;
  readonly channelId: string;
  readonly messageId: string;
  /** When it was posted or last edited for its weather. */
  readonly changedAt: Date;
  /** A window that had moved when last looked at: a second time in a row is worth an edit. */
  readonly movedTo: Interval | null;
  /** How often the weather's change was shown; the number of the last notice. */
  readonly changes: number;
  /** The words as shown, without charts: what an edit for names alone is made of. */
  readonly answer: Answer;
  /** The message does not show `answer` yet. */
  readonly editOwed: boolean;
  /** Words of the notice `changes` to those going out, while it is owed. */
  readonly noticeOwed: Answer | null;
  /** The end of the darkness: later nobody goes out any more. */
  readonly nightEnds: Date;
  /** Deleted, or its channel closed to us: left alone for good. */
  readonly gone: boolean;
};

export type Watch = {
  /** When the weather was last judged. */
  readonly lookedAt: Date;
  /** Whether it was looked at while a post was due. */
  readonly lookedInTime: boolean;
  readonly posted: PostedWatch | null;
};

/** What to do about what a look saw. */
export type WatchStep =
  | { readonly kind: "leave"; readonly movedTo: Interval | null }
  | { readonly kind: "edit"; readonly because: "verdict" | "window" };

/**
 * Whether a look is worth an edit: a changed verdict, or a window that stands half an
 * hour or more from the one shown for the second time running.
 *
 * An unknown verdict says nothing and changes nothing.
 *
 * @param movedTo - where the window stood at the look before, when it had moved
 */
export function watchStep(shown: Shown, seen: Shown, movedTo: Interval | null): WatchStep {
  if (seen.verdict === "unknown") return { kind: "leave", movedTo };
  if (seen.verdict !== shown.verdict) return { kind: "edit", because: "verdict" };
  if (!hasMoved(shown.window, seen.window)) return { kind: "leave", movedTo: null };
  if (seen.window === null) return { kind: "leave", movedTo: null };
  return movedTo === null ? { kind: "leave", movedTo: seen.window } : { kind: "edit", because: "window" };
}

function hasMoved(from: Interval | null, to: Interval | null): boolean {
  if (from === null || to === null) return from !== to;
  const byMs = (one: Date, other: Date) => Math.abs(one.getTime() - other.getTime());
  return byMs(from.start, to.start) >= WINDOW_MOVED_MS || byMs(from.end, to.end) >= WINDOW_MOVED_MS;
}
