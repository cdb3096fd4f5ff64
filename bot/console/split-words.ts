/**
 * A typed line in words, as a shell would part it: quotes hold spaces together.
 *
 * @packageDocumentation
 */

/** Opening quotes and what closes them. */
const QUOTES: Readonly<Record<string, string>> = { '"': '"', "'": "'", "“": "”", "„": "“", "«": "»" };

/**
 * The words of a line; a backslash takes the next character as it is.
 *
 * An apostrophe within a word is one, not a quote; a quote left open runs to the end.
 */
export function splitWords(line: string): string[] {
  const words: string[] = [];
  let word: string | null = null;
  let closing: string | null = null;
  const characters = [...line];
  for (let at = 0; at < characters.length; at++) {
    const character = characters[at] ?? "";
    if (character === "\\" && at + 1 < characters.length) {
      word = (word ?? "") + (characters[++at] ?? "");
    } else if (closing !== null) {
      if (character === closing) closing = null;
      else word = (word ?? "") + character;
    } else if (Object.hasOwn(QUOTES, character) && !(character === "'" && word !== null)) {
      closing = QUOTES[character] ?? null;
      word ??= "";
    } else if (/\s/.test(character)) {
      if (word !== null) words.push(word);
      word = null;
    } else {
      word = (word ?? "") + character;
    }
  }
  return word === null ? words : [...words, word];
}
