/**
 * What a Discord message may hold, from Discord's developer documentation (Message, Embed
 * Limits, Message Components), and how this project fills it.
 *
 * @packageDocumentation
 */

export const CONTENT_LENGTH = 2000;
export const EMBED_TITLE_LENGTH = 256;
export const EMBED_DESCRIPTION_LENGTH = 4096;
export const EMBED_FIELD_LENGTH = 1024;
export const BUTTON_LABEL_LENGTH = 80;
export const BUTTONS_A_ROW = 5;
export const ROWS_A_MESSAGE = 5;
export const FILES_A_MESSAGE = 10;
export const ALT_TEXT_LENGTH = 1024;
export const CHOICES_AT_MOST = 25;
export const CHOICE_LENGTH = 100;
/** What a server without boosts takes as one file. */
export const FILE_BYTES = 10 * 1024 * 1024;
/** All files of a message together; Discord takes 25 MiB with everything. */
export const FILES_BYTES = 24 * 1024 * 1024;

/** Columns of fixed-width text that a narrow phone shows without folding; measured, not documented. */
export const TABLE_COLUMNS = 38;

/** One colour for everything: copper. Meaning is never in a colour here. */
export const EMBED_COLOUR = 0xb87333;

/** Where members' files lie; a file is fetched from nowhere else. */
export const FILE_HOSTS: readonly string[] = ["https://cdn.discordapp.com", "https://media.discordapp.net"];
