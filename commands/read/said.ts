/**
 * What somebody typed, fit to be said back to them.
 *
 * @packageDocumentation
 */

const SAID_AT_MOST = 40;

/** The text on one line, cut to 40 characters, whatever cannot be printed shown as a dot. */
export function said(text: string): string {
  const characters = [...text.replace(/\s+/g, " ").replace(/\p{C}/gu, "·")];
  return characters.length <= SAID_AT_MOST
    ? characters.join("")
    : `${characters.slice(0, SAID_AT_MOST).join("")}…`;
}
