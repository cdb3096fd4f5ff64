/**
 * Rows of announced public sessions.
 *
 * @packageDocumentation
 */

/** A public session: its event and its message stand or fall together. */
export type OutreachSessionRow = {
  readonly club_id: string;
  readonly id: string;
  readonly name: string;
  readonly name_key: string;
  readonly night: string;
  readonly start_ms: number;
  readonly end_ms: number;
  readonly state: "announcing" | "announced" | "changing" | "cancelling" | "cancelled" | "failed";
  readonly revision: number;
  readonly channel_id: string;
  readonly message_id: string | null;
  readonly event_wanted: number;
  readonly event_id: string | null;
  readonly invitation_json: string;
  readonly created_ms: number;
};

/** Who comes, and who cannot. */
export type OutreachGuestRow = {
  readonly club_id: string;
  readonly session_id: string;
  readonly member_id: string;
  readonly is_coming: number;
  readonly created_ms: number;
};

/** What the organisers were told, with the words for the public that they may release. */
export type OutreachNoteRow = {
  readonly club_id: string;
  readonly session_id: string;
  readonly kind: string;
  readonly note_json: string;
  readonly released_ms: number | null;
  readonly created_ms: number;
};
