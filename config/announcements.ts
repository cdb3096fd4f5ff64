/**
 * Announced sessions: what Discord takes of a scheduled event, and when organisers are told go or no-go.
 *
 * Limits: Discord's developer documentation, Guild Scheduled Event. The rest is chosen by the project.
 *
 * @packageDocumentation
 */

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

export const EVENT_NAME_LENGTH = 100;
export const EVENT_DESCRIPTION_LENGTH = 1000;
export const EVENT_PLACE_LENGTH = 100;
/** Pictures beyond this are left out of the event, bytes. */
export const EVENT_PICTURE_BYTES = 2_000_000;

/** The organisers are told so long before the beginning; the later note replaces the earlier. */
export const NOTES = [
  { kind: "day-before", beforeMs: DAY_MS, untilMs: 3 * HOUR_MS },
  { kind: "three-hours", beforeMs: 3 * HOUR_MS, untilMs: 0 },
] as const;

export type NoteKind = (typeof NOTES)[number]["kind"];

/** Who came, and all else of a session, is forgotten so long after its end. */
export const KEEP_SESSIONS_MS = 30 * DAY_MS;

/** Sessions of a club that stand announced at one time. */
export const SESSIONS_AT_MOST = 20;
