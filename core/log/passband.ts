/**
 * The filter's name as the log files it, however it was typed.
 *
 * @packageDocumentation
 */

/** One pass band: the name the log uses and every other way it is written. */
export type PassbandNames = { readonly name: string; readonly aliases: readonly string[] };

/** Case, spaces, hyphens, brackets and Greek do not matter. */
export function passbandKey(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll("α", "alpha")
    .replaceAll("β", "beta")
    .replace(/[\s\-‐‑–_.[\]()/]/g, "");
}

/**
 * The name a filter is filed under: the common one where there is one, so that members'
 * hours through the same line add up, else the rig's own.
 *
 * @param known - the rig's own filters
 * @param table - the names everybody uses
 * @returns `null` when nothing answers to it
 */
export function passbandOf(
  text: string,
  known: readonly string[],
  table: readonly PassbandNames[],
): string | null {
  const key = passbandKey(text);
  const common = table.find(({ name, aliases }) =>
    [name, ...aliases].some((alias) => passbandKey(alias) === key),
  );
  return common?.name ?? known.find((name) => passbandKey(name) === key) ?? null;
}
