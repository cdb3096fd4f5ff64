/**
 * The store's tables, a row type each, as the query builder needs them.
 *
 * Instants are integer epoch milliseconds in columns that end in `_ms`; nested
 * values are JSON text in columns that end in `_json`; yes and no are 1 and 0.
 *
 * @packageDocumentation
 */

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

export interface Tables {
  clubs: ClubRow;
  members: MemberRow;
  sites: SiteRow;
  rigs: RigRow;
  forecast_answers: ForecastAnswerRow;
  schema_versions: SchemaVersionRow;
}
