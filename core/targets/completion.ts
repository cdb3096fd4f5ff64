/**
 * What a half-typed name may become.
 *
 * @packageDocumentation
 */

/** A name that may be offered: its key, how it is written, and what to fill in. */
export type Completable = {
  readonly key: string;
  readonly text: string;
  /** What it names; of one owner only the first name that fits is offered. */
  readonly owner: unknown;
  /** What goes into the option: understood by the look-up, and the same for all names of the owner. */
  readonly value: string;
};

export type CompletionChoice = { readonly name: string; readonly value: string };

/**
 * Names that begin with what was typed, then names that contain it.
 *
 * @param typed - the key of what was typed; empty offers the first names as they come
 * @param candidates - the more likely first: each of the two groups keeps their order
 * @param limit - how many choices at most
 */
export function completions(
  typed: string,
  candidates: readonly Completable[],
  limit: number,
): readonly CompletionChoice[] {
  const chosen = new Map<unknown, CompletionChoice>();
  const take = (fits: (key: string) => boolean) => {
    for (const candidate of candidates) {
      if (chosen.size >= limit) return;
      if (!fits(candidate.key) || chosen.has(candidate.owner)) continue;
      const name =
        candidate.text === candidate.value ? candidate.text : `${candidate.value} – ${candidate.text}`;
      chosen.set(candidate.owner, { name, value: candidate.value });
    }
  };
  take((key) => key === typed);
  take((key) => key.startsWith(typed));
  if (typed.length >= 2) take((key) => key.includes(typed));
  return [...chosen.values()];
}
