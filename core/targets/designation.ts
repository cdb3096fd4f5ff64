/**
 * Names and designations brought to one form, so that they can be compared.
 *
 * `m31`, `M 31` and `Messier 031` give one key; so do `Sh2-240`, `sh 2 240` and
 * `Sharpless 240`. Names lose case, accents, spaces, hyphens, apostrophes and a
 * leading "the". A key of a designation holds a `/`, a key of a name never does.
 *
 * @packageDocumentation
 */

/** Long and other forms of catalogue names, and the short form of the key. */
const CATALOGUE_FORMS: ReadonlyMap<string, string> = new Map([
  ["messier", "m"],
  ["caldwell", "c"],
  ["barnard", "b"],
  ["collinder", "cr"],
  ["col", "cr"],
  ["melotte", "mel"],
  ["cederblad", "ced"],
  ["lynds", "ldn"],
  ["trumpler", "tr"],
  ["stock", "st"],
  ["palomar", "pal"],
  ["hickson", "hcg"],
  ["vandenbergh", "vdb"],
  ["berkeley", "be"],
]);

const GREEK_NAMES =
  "alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho sigma sigma tau upsilon phi chi psi omega".split(
    " ",
  );
const FIRST_GREEK_LETTER = "α".charCodeAt(0);

/** Lower case, without accents; typographic signs become plain ones, Greek letters their names. */
function plainText(text: string): string {
  const lower = text.toLowerCase();
  // Nearly all names are plain already, and normalising is the slow part.
  if (/^[\x20-\x7e]*$/.test(lower)) return lower.trim();
  return lower
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/ß/g, "ss")
    .replace(/ø/g, "o")
    .replace(/[α-ω]/g, (letter) => GREEK_NAMES[letter.charCodeAt(0) - FIRST_GREEK_LETTER] ?? letter)
    .trim();
}

/** Galactic coordinates inside a designation, without leading zeros: `120.0+9.8`. */
function galacticPart(longitude: string, sign: string, latitude: string): string {
  const trimmed = (digits: string) => digits.replace(/^0+(?=\d)/, "");
  return `${trimmed(longitude)}${sign}${trimmed(latitude)}`;
}

/** The Sharpless catalogue writes its edition into the name: `Sh2-240`, `Sh 2-240`. */
function sharplessKey(plain: string): string | null {
  const match =
    /^(?:sh|sharpless)[\s-]*2[\s-]+0*(\d{1,3})$/.exec(plain) ??
    /^sh20*(\d{1,3})$/.exec(plain) ??
    /^(?:sh|sharpless)[\s-]*0*(\d{1,3})$/.exec(plain);
  return match === null ? null : `sh2/${match[1]}`;
}

function galacticKey(plain: string): string | null {
  const planetary = /^pk\s*(\d{1,3})\s*([+-])\s*(\d{1,2}\.\d)$/.exec(plain);
  if (planetary) return `pk/${galacticPart(planetary[1] ?? "", planetary[2] ?? "", planetary[3] ?? "")}`;
  const other = /^(pn|snr)?\s*g\s*(\d{1,3}\.\d)\s*([+-])\s*(\d{1,2}\.\d)$/.exec(plain);
  if (!other) return null;
  const catalogue = other[1] === "pn" ? "png" : "snr";
  return `${catalogue}/${galacticPart(other[2] ?? "", other[3] ?? "", other[4] ?? "")}`;
}

/**
 * The key of a catalogue designation.
 *
 * @returns a key such as `ngc/7000`, or `null` when `text` is not of the form of a designation
 */
export function designationKey(text: string): string | null {
  const plain = plainText(text);
  const common = /^([a-z]+)[\s.-]*0*(\d+)([a-z]?)$/.exec(plain);
  const letters = common?.[1] ?? "";
  if (letters !== "" && letters !== "sh" && letters !== "sharpless") {
    return `${CATALOGUE_FORMS.get(letters) ?? letters}/${common?.[2]}${common?.[3]}`;
  }
  if (plain.startsWith("sh")) return sharplessKey(plain);
  const field = /^eso\s*0*(\d+)\s*-\s*(?:[a-z]*\s*)0*(\d+)([a-z]?)$/.exec(plain);
  if (field) return `eso/${field[1]}-${field[2]}${field[3]}`;
  const twoWords = /^van den bergh[\s-]*0*(\d+)$/.exec(plain);
  if (twoWords) return `vdb/${twoWords[1]}`;
  return galacticKey(plain);
}

/** The key of a name: letters and digits alone, without a leading "the". */
export function nameKey(text: string): string {
  return plainText(text)
    .replace(/^the\s+/, "")
    .replace(/&/g, "and")
    .replace(/[^a-z0-9]/g, "");
}

/** The key that `text` is filed and looked up under; empty when nothing is left of it. */
export function lookupKey(text: string): string {
  return designationKey(text) ?? nameKey(text);
}
