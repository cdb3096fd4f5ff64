/**
 * What a button's id says: which row it stands for, or which night it is about.
 *
 * @packageDocumentation
 */
import type { OutreachPress } from "../outreach/outreach-door.ts";

export type ButtonMeaning =
  /** A kept question, or an answer to show to everyone; the command is named so that an expired button can still say what to ask. */
  | { readonly kind: "next" | "share"; readonly id: string; readonly command: string }
  | { readonly kind: "going-out"; readonly night: string; readonly key: string }
  /** Of a public session: who comes, or words to be released. */
  | { readonly kind: "session"; readonly press: OutreachPress };

/** For a button that asks a kept question, or shows its answer to everyone. */
export function rowButtonId(kind: "next" | "share", id: string, command: string): string {
  return `${kind}:${id}:${command}`;
}

/** For "I'm going out"; the key marks the message as ours and says which it is. */
export function goingOutId(night: string, key: string): string {
  return `out:${night}:${key}`;
}

/** @returns `null` for a button that no version of this bot made */
export function buttonMeaning(customId: string): ButtonMeaning | null {
  const row = /^(next|share):([0-9a-f]{32}):([\w-]{1,32})$/.exec(customId);
  if (row?.[2] !== undefined && row[3] !== undefined) {
    return { kind: row[1] === "share" ? "share" : "next", id: row[2], command: row[3] };
  }
  const out = /^out:(\d{4}-\d{2}-\d{2}):([0-9a-f]{24})$/.exec(customId);
  if (out?.[1] !== undefined && out[2] !== undefined) {
    return { kind: "going-out", night: out[1], key: out[2] };
  }
  const come = /^come:(yes|no):([0-9a-f]{24}):[0-9a-f]{24}$/.exec(customId);
  if (come?.[2] !== undefined) {
    return { kind: "session", press: { kind: "come", id: come[2], isComing: come[1] === "yes" } };
  }
  const word = /^word:([a-z-]{1,20}):([0-9a-f]{24}):[0-9a-f]{24}$/.exec(customId);
  if (word?.[1] !== undefined && word[2] !== undefined) {
    return { kind: "session", press: { kind: "word", id: word[2], note: word[1] } };
  }
  return null;
}
