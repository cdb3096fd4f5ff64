/**
 * Reads the header of a FITS file: 80-character cards in 2,880-byte blocks up to END.
 *
 * Only the primary header is read, at most 36 blocks of it; the data never.
 *
 * Source: FITS Standard, version 4.0 (IAU FITS Working Group 2018), sections 3 and 4.
 *
 * @packageDocumentation
 */

export type FitsValue = string | number | boolean | null;

/** Keywords in capitals; a keyword given twice keeps its first value. */
export type FitsCards = ReadonlyMap<string, FitsValue>;

export type FitsFault =
  | "no-fits"
  /** The file ends inside a block, or before END. */
  | "truncated"
  /** No END within the blocks allowed. */
  | "too-long"
  /** A byte that is no printable ASCII. */
  | "bad-characters"
  | "bad-value";

export type FitsReading =
  | { readonly kind: "read"; readonly cards: FitsCards }
  | { readonly kind: "refused"; readonly fault: FitsFault; readonly card: string | null };

export const FITS_BLOCK_BYTES = 2880;
const FITS_BLOCKS_AT_MOST = 36;

const CARD_BYTES = 80;
const SIMPLE = "SIMPLE  = ";

/** Whether a file begins as every FITS file does. */
export function looksLikeFits(bytes: Uint8Array): boolean {
  return asciiOf(bytes.subarray(0, SIMPLE.length)) === SIMPLE;
}

/**
 * Reads the cards.
 *
 * @param bytes - the file, or its first 36 blocks
 */
export function readFitsHeader(bytes: Uint8Array): FitsReading {
  if (!looksLikeFits(bytes)) return refused("no-fits", null);
  const cards = new Map<string, FitsValue>();
  const most = FITS_BLOCKS_AT_MOST * FITS_BLOCK_BYTES;
  for (let offset = 0; offset < most; offset += CARD_BYTES) {
    if (offset + CARD_BYTES > bytes.length) return refused("truncated", null);
    const card = asciiOf(bytes.subarray(offset, offset + CARD_BYTES));
    if (card === null) return refused("bad-characters", null);
    const keyword = card.slice(0, 8).trimEnd();
    if (keyword === "END") {
      const blocks = Math.ceil((offset + CARD_BYTES) / FITS_BLOCK_BYTES);
      return blocks * FITS_BLOCK_BYTES > bytes.length ? refused("truncated", null) : { kind: "read", cards };
    }
    // Without the value indicator it is a comment, history or a continued string.
    if (card.slice(8, 10) !== "= " || cards.has(keyword)) continue;
    const value = cardValue(card.slice(10));
    if (value === undefined) return refused("bad-value", keyword);
    cards.set(keyword, value);
  }
  return refused("too-long", null);
}

function refused(fault: FitsFault, card: string | null): FitsReading {
  return { kind: "refused", fault, card };
}

/** `null` when a byte lies outside the printable ASCII that headers are made of. */
function asciiOf(bytes: Uint8Array): string | null {
  let text = "";
  for (const byte of bytes) {
    if (byte < 0x20 || byte > 0x7e) return null;
    text += String.fromCharCode(byte);
  }
  return text;
}

/** Of the field after the value indicator; `undefined` when it follows no rule. */
function cardValue(field: string): FitsValue | undefined {
  const text = field.trimStart();
  if (text.startsWith("'")) {
    const quoted = /^'((?:[^']|'')*)'/.exec(text)?.[1];
    // Trailing blanks mean nothing, leading ones do (section 4.2.1).
    return quoted?.replaceAll("''", "'").trimEnd();
  }
  const plain = (text.split("/")[0] ?? "").trim();
  if (plain === "") return null;
  if (plain === "T" || plain === "F") return plain === "T";
  if (/^[+-]?(\d+\.?\d*|\.\d+)([ED][+-]?\d+)?$/.test(plain)) return Number(plain.replace("D", "E"));
  // A complex number is well formed, and nothing that the log asks for.
  return /^\(.*\)$/.test(plain) ? null : undefined;
}
