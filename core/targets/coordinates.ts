/**
 * J2000 coordinates as people type them.
 *
 * @packageDocumentation
 */

export type TypedCoordinates =
  | { readonly kind: "place"; readonly raDeg: number; readonly decDeg: number }
  /** Written like coordinates, but no place on the sky; `problem` is a sentence. */
  | { readonly kind: "impossible"; readonly problem: string }
  | { readonly kind: "not-coordinates" };

const RANGE_PROBLEM =
  "J2000 coordinates need a right ascension from 0h to 24h (or 0 to 360 degrees) and a declination from −90 to +90 degrees, with minutes and seconds below 60.";

const NUMBER = String.raw`\d+(?:\.\d+)?`;
const HOURS_WITH_UNITS = new RegExp(
  String.raw`^(${NUMBER})\s*h(?:\s*(${NUMBER})\s*m?)?(?:\s*(${NUMBER})\s*s?)?$`,
);
const DEGREES_WITH_UNITS = new RegExp(
  String.raw`^(${NUMBER})\s*[d°](?:\s*(${NUMBER})\s*['m]?)?(?:\s*(${NUMBER})\s*["s]?)?$`,
);
const SEXAGESIMAL = new RegExp(String.raw`^(\d+)[\s:]+(${NUMBER})(?:[\s:]+(${NUMBER}))?$`);
const PLAIN = new RegExp(`^(${NUMBER})$`);

/** Whole, minutes and seconds as one number; `null` when minutes or seconds reach 60. */
function fromSexagesimal(
  whole: string,
  minutes: string | undefined,
  seconds: string | undefined,
): number | null {
  const m = Number(minutes ?? 0);
  const s = Number(seconds ?? 0);
  return m < 60 && s < 60 ? Number(whole) + m / 60 + s / 3600 : null;
}

/** One half, with what its numbers count. */
type Half = { readonly value: number | null; readonly unit: "hours" | "degrees" };

function readHalf(text: string, sexagesimalUnit: "hours" | "degrees"): Half | null {
  const hours = HOURS_WITH_UNITS.exec(text);
  if (hours) return { value: fromSexagesimal(hours[1] ?? "", hours[2], hours[3]), unit: "hours" };
  const degrees = DEGREES_WITH_UNITS.exec(text);
  if (degrees) return { value: fromSexagesimal(degrees[1] ?? "", degrees[2], degrees[3]), unit: "degrees" };
  const plainSexagesimal = SEXAGESIMAL.exec(text);
  if (plainSexagesimal) {
    const [, whole, minutes, seconds] = plainSexagesimal;
    return { value: fromSexagesimal(whole ?? "", minutes, seconds), unit: sexagesimalUnit };
  }
  const plain = PLAIN.exec(text);
  return plain ? { value: Number(plain[1]), unit: "degrees" } : null;
}

/** Right ascension, sign and declination of `text`; an unsigned declination is positive. */
function splitHalves(text: string): { ra: string; sign: number; dec: string } | null {
  const signed = /^([^+-]+?)[\s,;]*([+-])\s*([^+-]+)$/.exec(text);
  if (signed)
    return { ra: (signed[1] ?? "").trim(), sign: signed[2] === "-" ? -1 : 1, dec: (signed[3] ?? "").trim() };
  const comma = /^([^,;]+)[,;]([^,;]+)$/.exec(text);
  if (comma) return { ra: (comma[1] ?? "").trim(), sign: 1, dec: (comma[2] ?? "").trim() };
  const marked = /^(.*?\d\s*[hms])\s+(\d.*)$/.exec(text);
  if (marked && /h/.test(marked[1] ?? "") && !/h/.test(marked[2] ?? "") && /[d°]/.test(marked[2] ?? "")) {
    const split = /^(.*[hms])\s+(\d+(?:\.\d+)?\s*[d°].*)$/.exec(text);
    if (split) return { ra: (split[1] ?? "").trim(), sign: 1, dec: (split[2] ?? "").trim() };
  }
  const words = text.split(/\s+/);
  if (words.length % 2 !== 0 || words.length > 6) return null;
  const half = words.length / 2;
  return { ra: words.slice(0, half).join(" "), sign: 1, dec: words.slice(half).join(" ") };
}

/**
 * Reads a J2000 right ascension and declination.
 *
 * Two plain numbers are degrees; groups of two or three are hours, minutes (and
 * seconds), then degrees, minutes (and seconds). `01h34m +30d40m`,
 * `1 34 00 +30 39 37`, `01:34:00 +30:39:37` and `23.46 30.66` are one place.
 *
 * @param text - as typed; any kind of minus sign and of prime will do
 */
export function readCoordinates(text: string): TypedCoordinates {
  const plain = text
    .toLowerCase()
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/[\u2032\u2019\u02b9]/g, "'")
    .replace(/[\u2033\u201d\u02ba]|''/g, '"')
    .replace(/º/g, "°")
    .replace(/\bdeg(?:rees?)?\b/g, "d")
    .trim();
  if (!/^[+]?\d/.test(plain) && !/^-\s*\d/.test(plain)) return { kind: "not-coordinates" };
  if (!/^[\d\s.,;:+\-hdms'"°]*$/.test(plain)) return { kind: "not-coordinates" };
  if (plain.startsWith("-")) return impossibleIfPair(plain);
  const halves = splitHalves(plain.replace(/^\+/, ""));
  if (halves === null) return { kind: "not-coordinates" };
  const ra = readHalf(halves.ra, "hours");
  const dec = readHalf(halves.dec, "degrees");
  if (ra === null || dec === null || dec.unit === "hours") return { kind: "not-coordinates" };
  if (ra.value === null || dec.value === null) return { kind: "impossible", problem: RANGE_PROBLEM };
  const raDeg = ra.unit === "hours" ? ra.value * 15 : ra.value;
  const decDeg = halves.sign * dec.value;
  if (raDeg > 360 || Math.abs(decDeg) > 90) return { kind: "impossible", problem: RANGE_PROBLEM };
  return { kind: "place", raDeg: raDeg % 360, decDeg: decDeg + 0 };
}

/** A negative right ascension: coordinates, but of no place. */
function impossibleIfPair(plain: string): TypedCoordinates {
  return /^-\s*[\d.:]+\s*[\s,;]\s*[+-]?\s*[\d.:]+$/.test(plain)
    ? { kind: "impossible", problem: RANGE_PROBLEM }
    : { kind: "not-coordinates" };
}
