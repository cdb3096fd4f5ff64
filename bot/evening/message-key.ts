/**
 * The key of one of the evening's messages: its nonce, and the mark its buttons carry.
 *
 * @packageDocumentation
 */
import { createHash } from "node:crypto";
import type { ClaimKey } from "../store/evening-claims.ts";

/** Discord takes at most 25 characters as a nonce. */
const KEY_LENGTH = 24;

/** 24 hex digits of SHA-256 over club, night and kind: the same from every process. */
export function messageKey({ club, night, kind }: ClaimKey): string {
  return createHash("sha256").update(`${club}|${night}|${kind}`).digest("hex").slice(0, KEY_LENGTH);
}
