/**
 * Foreign JSON, parsed with suspicion.
 *
 * @packageDocumentation
 */
import { UnreadableAnswer } from "./polite-host.ts";

export type JsonRecord = { readonly [name: string]: unknown };

export function isRecord(value: unknown): value is JsonRecord {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/**
 * @throws UnreadableAnswer when the text is no JSON
 */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // The parser's own message quotes the text, which may be anything.
    throw new UnreadableAnswer("it is not JSON, or not all of it");
  }
}

/** A finite number, else `null`. */
export function numberOrNull(value: unknown): number | null {
  return typeof value === "number" && Number.isFinite(value) ? value : null;
}

/** A value under a name, when what holds it is a record. */
export function member(value: unknown, name: string): unknown {
  return isRecord(value) && Object.hasOwn(value, name) ? value[name] : undefined;
}
