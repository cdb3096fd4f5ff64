/**
 * A capital at the head of a sentence.
 *
 * @packageDocumentation
 */

/** The words with their first letter large. */
export function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
