/**
 * Words on their way into Discord's markup: escaped, shortened, never able to ring or link.
 *
 * @packageDocumentation
 */

/** What Discord could read as markup, a mention, a link or a time, wherever it stands. */
const MARKUP = /[\\*_~`|<[\]@]/g;
/** What it reads as a heading, a quotation or a list at the beginning of a line. */
const LINE_MARKUP = /^\s*(?=[#>+-])/;

/** A backslash before a sign hides itself in Discord. Web addresses no longer turn into links. */
export function escaped(text: string): string {
  return oneLine(text).replace(MARKUP, "\\$&").replace(LINE_MARKUP, "\\").replace(/:\/\//g, "\\://");
}

/** Our own lines, such as credits: web addresses stay as they are, to be links. */
export function escapedWithLinks(text: string): string {
  return oneLine(text)
    .split(/(https:\/\/[\w./-]+)/)
    .map((part, index) => (index % 2 === 1 ? part : escaped(part)))
    .join("");
}

/** Inside a code block nothing can be escaped: backticks give way to an apostrophe. */
export function forCodeBlock(text: string): string {
  return oneLine(text).replaceAll("`", "'");
}

function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]+/gu, " ");
}

/**
 * Text of at most so many characters; what was cut ends with `…`.
 *
 * Cuts between words where it can, and never inside a pair of surrogates or after a lone backslash.
 */
export function shortened(text: string, length: number): string {
  if (text.length <= length) return text;
  const space = text.lastIndexOf(" ", length - 1);
  const end = space > length / 2 ? space : length - 1;
  return `${text
    .slice(0, end)
    .replace(/[\ud800-\udbff]$/, "")
    .replace(/\\+$/, "")}…`;
}
