/**
 * The evening post's pace: what is due when, how long a claim holds, how often a post is looked after.
 *
 * Chosen by the project; Discord documents of a nonce only that it is remembered
 * for "the past few minutes".
 *
 * @packageDocumentation
 */

const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;

/** One tick every five minutes, in UTC: no clock change skips or repeats one. */
export const TICK_CRON = "*/5 * * * *";

/** A post that was missed still helps so long after dusk. */
export const USEFUL_AFTER_DUSK_HOURS = 1;
/** A night that turns good late is posted while so much of its window is left. */
export const LEAST_LEFT_HOURS = 2;

/** Who claims a message may send it for so long. */
export const LEASE_MS = 2 * MINUTE_MS;
/** One attempt to send is given up after this. */
export const ATTEMPT_MS = 15 * SECOND_MS;
/** Pauses between attempts; so many and one attempts fit the lease. */
export const ATTEMPT_PAUSES_MS: readonly number[] = [2 * SECOND_MS, 6 * SECOND_MS, 15 * SECOND_MS];
/** A nonce is trusted to prevent a second message for so long after the first attempt. */
export const NONCE_TRUSTED_MS = 100 * SECOND_MS;
/** The channel is read back to so long before the claim. */
export const LOOK_BACK_MS = 60 * MINUTE_MS;

/** A posted message is edited for its weather no oftener. */
export const EDIT_AGAIN_MS = 15 * MINUTE_MS;
/** The weather is looked at again after three ticks; a little less, since ticks are never to the second. */
export const LOOK_AGAIN_MS = 14 * MINUTE_MS;
/** A window that moved by so much, twice running, is worth an edit. */
export const WINDOW_MOVED_MS = 30 * MINUTE_MS;
/** Those who are out are warned of what will come within this. */
export const WARN_AHEAD_MS = 60 * MINUTE_MS;

/** Those who were out are asked how it was so long after the darkness, and not later than that. */
export const ASK_AFTER_MS = 3 * 60 * MINUTE_MS;
export const ASK_UNTIL_MS = 15 * 60 * MINUTE_MS;

/** Members rung by one message; the rest in the next. Leaves room for the longest caution before them. */
export const MENTIONS_A_MESSAGE = 40;

/** Claims are kept so long that no clock set back within reason finds one gone. */
export const KEEP_CLAIMS_MS = 400 * 24 * 60 * MINUTE_MS;
/** Who went out is forgotten after this. */
export const KEEP_PEOPLE_MS = 7 * 24 * 60 * MINUTE_MS;
/** A button under an answer works for so long. */
export const KEEP_BUTTONS_MS = 30 * 24 * 60 * MINUTE_MS;
/** What has been kept long enough is dropped so often. */
export const TIDY_EVERY_MS = 60 * MINUTE_MS;
/** A club whose server we left unnoticed is erased after this. */
export const ERASE_ABSENT_MS = 7 * 24 * 60 * MINUTE_MS;
