/**
 * A file on this machine, sent with a question as one sends it in a chat.
 *
 * @packageDocumentation
 */
import { closeSync, fstatSync, openSync, readSync, statSync } from "node:fs";
import { basename } from "node:path";
import { AskError } from "../../commands/ask-error.ts";
import type { SentFile } from "../../commands/request.ts";
import { FILE_BYTES_AT_MOST, FITS_BYTES_AT_MOST, FITS_HEAD_BYTES } from "../../config/file-limits.ts";

/** What every FITS file begins with (FITS Standard 4.0, section 4.4.1). */
const FITS_MARK = "SIMPLE  =";

/**
 * The file's bytes; of a FITS file its head.
 *
 * @param option - the option it came from, for the message
 * @throws AskError when there is no such file, it is no plain file, or it is too large
 */
export function readSentFile(option: string, path: string): SentFile {
  const handle = openPlainFile(option, path);
  try {
    const status = fstatSync(handle);
    const mark = readHead(handle, Math.min(FITS_MARK.length, status.size)).toString("latin1");
    const isFits = mark === FITS_MARK;
    const most = isFits ? FITS_BYTES_AT_MOST : FILE_BYTES_AT_MOST;
    if (status.size > most) {
      throw new AskError(
        "file-too-large",
        option,
        `“${option}” is too large: ${megabytes(status.size)} MB, at most ${megabytes(most)} MB.`,
      );
    }
    const bytes = readHead(handle, isFits ? Math.min(status.size, FITS_HEAD_BYTES) : status.size);
    return { name: basename(path), mediaType: null, bytes: new Uint8Array(bytes) };
  } finally {
    closeSync(handle);
  }
}

function openPlainFile(option: string, path: string): number {
  try {
    // Before it is opened: opening a pipe would wait for somebody to write into it.
    if (statSync(path).isFile()) return openSync(path, "r");
  } catch {}
  throw unreadable(option);
}

function readHead(handle: number, length: number): Buffer {
  const bytes = Buffer.alloc(length);
  let filled = 0;
  while (filled < length) {
    const more = readSync(handle, bytes, filled, length - filled, filled);
    if (more === 0) break;
    filled += more;
  }
  return bytes.subarray(0, filled);
}

function unreadable(option: string): AskError {
  return new AskError("unreadable-file", option, `“${option}” needs the path of a file that can be read.`);
}

function megabytes(bytes: number): string {
  return (bytes / 1_048_576).toFixed(1);
}
