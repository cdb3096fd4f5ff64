/**
 * The shipped typeface: where its files lie, how wide a line of it runs, and what
 * it can draw. Widths come from the font's own tables, without kerning, so a line
 * is drawn at most a hair narrower than reckoned.
 *
 * @packageDocumentation
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { GLYPH_STAND_INS } from "../../config/glyph-stand-ins.ts";

export const FONT_FAMILY = "Atkinson Hyperlegible";

export type Weight = "regular" | "bold";

const PACKAGE = "@expo-google-fonts/atkinson-hyperlegible";

const resolvePath = createRequire(import.meta.url).resolve;

/** The font's files as the renderer wants them. */
export const FONT_FILES: Readonly<Record<Weight, string>> = {
  regular: resolvePath(`${PACKAGE}/400Regular/AtkinsonHyperlegible_400Regular.ttf`),
  bold: resolvePath(`${PACKAGE}/700Bold/AtkinsonHyperlegible_700Bold.ttf`),
};

/** Advance of each code point, in thousandths of the font's size. */
type Advances = ReadonlyMap<number, number>;

const loaded = new Map<Weight, Advances>();

function advancesOf(weight: Weight): Advances {
  const known = loaded.get(weight);
  if (known !== undefined) return known;
  const read = readAdvances(readFileSync(FONT_FILES[weight]));
  loaded.set(weight, read);
  return read;
}

/**
 * Advance widths by code point, from a TrueType file's `cmap` (format 4) and `hmtx`.
 *
 * @throws Error when the file has no Unicode table of that format
 *
 * @remarks Source: ISO/IEC 14496-22, Open Font Format, clauses on `cmap`, `hhea`, `hmtx`.
 */
function readAdvances(file: Buffer): Advances {
  const tables = new Map<string, number>();
  for (let i = 0; i < file.readUInt16BE(4); i++) {
    const record = 12 + 16 * i;
    tables.set(file.toString("latin1", record, record + 4), file.readUInt32BE(record + 8));
  }
  const offsetOf = (name: string): number => {
    const offset = tables.get(name);
    if (offset === undefined) throw new Error(`font without a ${name} table`);
    return offset;
  };
  const perThousand = 1000 / file.readUInt16BE(offsetOf("head") + 18);
  const metrics = file.readUInt16BE(offsetOf("hhea") + 34);
  const hmtx = offsetOf("hmtx");
  const advanceOf = (glyph: number) =>
    file.readUInt16BE(hmtx + 4 * Math.min(glyph, metrics - 1)) * perThousand;

  const cmap = offsetOf("cmap");
  const advances = new Map<number, number>();
  for (let i = 0; i < file.readUInt16BE(cmap + 2); i++) {
    const subtable = cmap + file.readUInt32BE(cmap + 8 + 8 * i);
    if (file.readUInt16BE(subtable) !== 4) continue;
    const twice = file.readUInt16BE(subtable + 6);
    for (let segment = 0; segment < twice; segment += 2) {
      const last = file.readUInt16BE(subtable + 14 + segment);
      const first = file.readUInt16BE(subtable + 16 + twice + segment);
      const delta = file.readUInt16BE(subtable + 16 + 2 * twice + segment);
      const rangeAt = subtable + 16 + 3 * twice + segment;
      const range = file.readUInt16BE(rangeAt);
      for (let code = first; code <= last && code < 0xffff; code++) {
        const listed = range === 0 ? code : file.readUInt16BE(rangeAt + range + 2 * (code - first));
        const glyph = range !== 0 && listed === 0 ? 0 : (listed + delta) & 0xffff;
        if (glyph !== 0) advances.set(code, advanceOf(glyph));
      }
    }
  }
  if (advances.size === 0) throw new Error("font without a Unicode table of format 4");
  return advances;
}

/**
 * The same text in letters the font has: stand-ins for the signs it lacks, and a
 * question mark for what has none. Control and direction characters vanish.
 */
export function drawable(text: string): string {
  const advances = advancesOf("regular");
  let out = "";
  for (const character of text.normalize("NFC").replace(/\s/gu, " ")) {
    const code = character.codePointAt(0) ?? 0;
    if (advances.has(code)) out += character;
    else if (GLYPH_STAND_INS[character] !== undefined) out += GLYPH_STAND_INS[character];
    else if (!/\p{C}|\p{M}/u.test(character)) out += "?";
  }
  return out;
}

/** Width in pixels of text as {@link drawable} gives it. */
export function textWidth(text: string, sizePx: number, weight: Weight = "regular"): number {
  const advances = advancesOf(weight);
  let thousandths = 0;
  for (const character of text) thousandths += advances.get(character.codePointAt(0) ?? 0) ?? 600;
  return (thousandths * sizePx) / 1000;
}
