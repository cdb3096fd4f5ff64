/**
 * Files that members send with a question: fetched from Discord's own hosts, and no further
 * than their limit.
 *
 * @packageDocumentation
 */
import { AskError } from "../../commands/ask-error.ts";
import type { SentFile } from "../../commands/request.ts";
import { FILE_HOSTS } from "../../config/discord-limits.ts";
import { FILE_BYTES_AT_MOST, FITS_BYTES_AT_MOST, FITS_HEAD_BYTES } from "../../config/file-limits.ts";

/** A file as Discord describes it. */
export type FileNotice = {
  readonly name: string;
  readonly size: number;
  readonly url: string;
  readonly contentType: string | null;
};

/** What every FITS file begins with (FITS Standard 4.0, section 4.4.1). */
const FITS_MARK = "SIMPLE  =";
const FETCH_MS = 15_000;

/**
 * The file's bytes; of a FITS file its head.
 *
 * @param option - the option it came with, for the message
 * @param hosts - origins that may be asked; Discord's own
 * @throws AskError when it is too large or lies elsewhere; any other error when fetching fails
 */
export async function fetchSentFile(
  option: string,
  file: FileNotice,
  hosts: readonly string[] = FILE_HOSTS,
): Promise<SentFile> {
  if (file.size > FITS_BYTES_AT_MOST) throw tooLarge(option, FILE_BYTES_AT_MOST);
  if (!URL.canParse(file.url) || !hosts.includes(new URL(file.url).origin)) {
    throw new AskError("foreign-file", option, `“${option}” must be sent as a file, not by an address.`);
  }
  const response = await fetch(file.url, { redirect: "error", signal: AbortSignal.timeout(FETCH_MS) });
  if (!response.ok || response.body === null) {
    throw new AskError("lost-file", option, `“${option}” could not be fetched from Discord: send it again.`);
  }
  const bytes = await readUpTo(response.body, option);
  return { name: file.name, mediaType: file.contentType, bytes };
}

/** Reads no more than a file may have, whatever size was announced. */
async function readUpTo(body: ReadableStream<Uint8Array>, option: string): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  const reader = body.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    chunks.push(value);
    length += value.length;
    if (length >= FITS_HEAD_BYTES && isFits(chunks)) {
      await reader.cancel();
      return Buffer.concat(chunks).subarray(0, FITS_HEAD_BYTES);
    }
    if (length > FILE_BYTES_AT_MOST) {
      await reader.cancel();
      throw tooLarge(option, FILE_BYTES_AT_MOST);
    }
  }
  return new Uint8Array(Buffer.concat(chunks));
}

function isFits(chunks: readonly Uint8Array[]): boolean {
  const first = chunks[0] ?? new Uint8Array();
  return Buffer.from(first.subarray(0, FITS_MARK.length)).toString("latin1") === FITS_MARK;
}

function tooLarge(option: string, most: number): AskError {
  const megabytes = Math.floor(most / 1_048_576);
  return new AskError("file-too-large", option, `“${option}” is too large: at most ${megabytes} MB.`);
}
