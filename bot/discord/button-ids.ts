/**
 * What a button's id says: which row it stands for, or which night it is about.
 *
 * @packageDocumentation
 */

export type ButtonMeaning =
  /** A kept row; the command is named so that an expired button can still say what to ask. */
  | { readonly kind: "row"; readonly id: string; readonly command: string }
  | { readonly kind: "going-out"; readonly night: string; readonly key: string };

/** For a button that asks a kept question. */
export function rowButtonId(id: string, command: string): string {
  return `row:${id}:${command}`;
}

/** For "I'm going out"; the key marks the message as ours and says which it is. */
export function goingOutId(night: string, key: string): string {
  return `out:${night}:${key}`;
}

/** @returns `null` for a button that no version of this bot made */
export function buttonMeaning(customId: string): ButtonMeaning | null {
  const row = /^row:([0-9a-f]{32}):([\w-]{1,32})$/.exec(customId);
  if (row?.[1] !== undefined && row[2] !== undefined) return { kind: "row", id: row[1], command: row[2] };
  const out = /^out:(\d{4}-\d{2}-\d{2}):([0-9a-f]{24})$/.exec(customId);
  if (out?.[1] !== undefined && out[2] !== undefined) {
    return { kind: "going-out", night: out[1], key: out[2] };
  }
  return null;
}
