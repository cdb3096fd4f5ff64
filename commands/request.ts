/**
 * A question, as a door hands it to a command.
 *
 * @packageDocumentation
 */

/** A file a member sent with the question; already limited in size by the door. */
export type SentFile = {
  readonly name: string;
  readonly mediaType: string | null;
  readonly bytes: Uint8Array;
};

export type OptionValue = string | number | boolean | SentFile;

/** Who asks. `organiser` is settled by the bot, never by what the asker says. */
export type Asker = {
  readonly id: string;
  readonly name: string;
  /** May manage the server, or holds the club's organiser role. */
  readonly organiser: boolean;
};

export type Request = {
  readonly command: string;
  readonly subcommand: string | null;
  /** Typed as the definition says: a door refuses what does not fit. Names without dashes, as defined. */
  readonly options: Readonly<Record<string, OptionValue>>;
  readonly member: Asker;
  /** The club asked in, by the store's id. */
  readonly club: string;
  /** The clock. */
  readonly at: Date;
};
