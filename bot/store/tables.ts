/**
 * The store's tables, a row type each, as the query builder needs them.
 *
 * Instants are integer epoch milliseconds in columns that end in `_ms`; nested
 * values are JSON text in columns that end in `_json`; yes and no are 1 and 0.
 *
 * @packageDocumentation
 */

import type {
  CalibrationFrameRow,
  LogFrameRow,
  LogSumRow,
  PoolMemberRow,
  PoolWishRow,
  SkyAnswerRow,
  VerdictNoteRow,
  WantedHoursRow,
} from "./log-tables.ts";
import type { OutreachGuestRow, OutreachNoteRow, OutreachSessionRow } from "./outreach-tables.ts";

export type ClubRow = {
  readonly id: string;
  readonly name: string;
  readonly name_key: string;
  readonly created_ms: number;
};

export type MemberRow = {
  readonly club_id: string;
  readonly member_id: string;
  /** Kept for the console alone; in Discord the server's permissions settle it. */
  readonly organiser: number;
  readonly created_ms: number;
};

export type SiteRow = {
  readonly id: number;
  readonly club_id: string;
  readonly owner_id: string;
  readonly name: string;
  readonly name_key: string;
  readonly latitude_deg: number;
  readonly longitude_deg: number;
  readonly elevation_metres: number;
  readonly time_zone: string;
  readonly skyline_json: string;
  readonly sky_json: string | null;
  readonly bright_directions_json: string;
  readonly seeing_arcsec: number | null;
  readonly is_default: number;
  readonly shared: number;
  readonly created_ms: number;
};

export type RigRow = {
  readonly id: number;
  readonly club_id: string;
  readonly owner_id: string;
  readonly name: string;
  readonly name_key: string;
  readonly rig_json: string;
  /** What its owner said of it, where the rig was made of that. */
  readonly said_json: string | null;
  readonly is_default: number;
  readonly created_ms: number;
};

/** A provider's answer, kept so that a restart asks for nothing twice. */
export type ForecastAnswerRow = {
  /** Provider, variables and rounded coordinates; the provider's file decides how. */
  readonly cache_key: string;
  readonly body: string;
  readonly fetched_ms: number;
  /** Not asked again before. */
  readonly expires_ms: number;
  /** The exact `Last-Modified` text, for a conditional request. */
  readonly last_modified: string | null;
};

export type SchemaVersionRow = {
  readonly number: number;
  readonly name: string;
  readonly applied_ms: number;
};

export type ClubSettingsRow = { readonly club_id: string; readonly settings_json: string };

/** A club whose server we are no longer in, since when it was first missed. */
export type AbsentClubRow = { readonly club_id: string; readonly since_ms: number };

export type NotifyWishRow = {
  readonly club_id: string;
  readonly member_id: string;
  readonly site_name: string | null;
  readonly least_hours: number;
  readonly created_ms: number;
};

/** One message the evening run sends, at most once: `claimed`, then `posted` or `abandoned`. */
export type EveningClaimRow = {
  readonly club_id: string;
  readonly night: string;
  readonly kind: string;
  readonly state: "claimed" | "posted" | "abandoned";
  /** The process that may send it until the lease runs out. */
  readonly holder: string;
  readonly lease_until_ms: number;
  readonly claimed_ms: number;
  /** When a first attempt to send began; `null` when none ever did. */
  readonly send_began_ms: number | null;
  readonly channel_id: string;
  readonly message_id: string | null;
  readonly settled_ms: number | null;
  readonly reason: string | null;
};

/** What a night's post shows and what was seen since; `turn` counts its changes. */
export type EveningWatchRow = {
  readonly club_id: string;
  readonly night: string;
  readonly turn: number;
  readonly watch_json: string;
};

/** Who is going out, and whom the post mentioned. */
export type EveningPersonRow = {
  readonly club_id: string;
  readonly night: string;
  readonly member_id: string;
  readonly part: "out" | "mentioned";
  readonly name: string;
  readonly created_ms: number;
};

/** A button under an answer: what it asks, and who may press it. */
export type AnswerButtonRow = {
  readonly id: string;
  readonly club_id: string;
  /** `null`: anyone in the club. */
  readonly owner_id: string | null;
  readonly kind: "next" | "share";
  readonly question_json: string;
  readonly created_ms: number;
};

export interface Tables {
  clubs: ClubRow;
  members: MemberRow;
  sites: SiteRow;
  rigs: RigRow;
  forecast_answers: ForecastAnswerRow;
  schema_versions: SchemaVersionRow;
  club_settings: ClubSettingsRow;
  absent_clubs: AbsentClubRow;
  notify_wishes: NotifyWishRow;
  evening_claims: EveningClaimRow;
  evening_watches: EveningWatchRow;
  evening_people: EveningPersonRow;
  answer_buttons: AnswerButtonRow;
  log_frames: LogFrameRow;
  log_sums: LogSumRow;
  calibration_frames: CalibrationFrameRow;
  wanted_hours: WantedHoursRow;
  pool_wishes: PoolWishRow;
  pool_members: PoolMemberRow;
  verdict_notes: VerdictNoteRow;
  sky_answers: SkyAnswerRow;
  outreach_sessions: OutreachSessionRow;
  outreach_guests: OutreachGuestRow;
  outreach_notes: OutreachNoteRow;
}
