/**
 * What a FITS header says of the one frame behind it.
 *
 * @packageDocumentation
 */
import type { FitsCards } from "./fits-header.ts";
import type { CalibrationKind } from "./frame-set.ts";

/** One frame as its file describes it; what the file does not say is `null`. */
export type FileFrame = {
  readonly sort: "light" | CalibrationKind;
  readonly object: string | null;
  readonly filter: string | null;
  readonly subSeconds: number;
  readonly gain: number | null;
  readonly iso: number | null;
  readonly sensorCelsius: number | null;
  readonly rotationDeg: number | null;
  readonly startedAt: Date;
};

export type FileFrameFault =
  | { readonly kind: "missing"; readonly key: string }
  | { readonly kind: "unreadable"; readonly key: string; readonly text: string };

export type FileFrameReading =
  | { readonly kind: "read"; readonly frame: FileFrame }
  | { readonly kind: "refused"; readonly fault: FileFrameFault };

/** Names and filters in files: words and the marks that designations use, nothing else. */
const PLAIN_WORDS = /^[\p{L}\p{N} +\-–.'()/_:,&[\]#"°*]{1,68}$/u;
/** None of it may carry markup or a mention. */
const MEANT_FOR_A_MACHINE = /[<>@`\\{}$;|]|\/\/|\.\./;

/**
 * The frame of a header.
 *
 * @remarks
 * EXPTIME (or EXPOSURE) and DATE-OBS must be there; DATE-OBS is UTC (FITS Standard
 * 4.0, section 9.1.1). Keywords for filter, gain and temperature are common practice.
 */
export function frameOfFits(cards: FitsCards): FileFrameReading {
  const exposureKey = cards.has("EXPTIME") ? "EXPTIME" : "EXPOSURE";
  const subSeconds = numberIn(cards, [exposureKey]);
  if (subSeconds === null)
    return refuse(missingOrUnreadable(cards, cards.has(exposureKey) ? exposureKey : "EXPTIME"));
  const startedAt = dateOf(cards.get("DATE-OBS"));
  if (startedAt === null) return refuse(missingOrUnreadable(cards, "DATE-OBS"));
  for (const key of ["OBJECT", "FILTER", "IMAGETYP"]) {
    const text = textIn(cards, key);
    if (text !== null && !isPlainWords(text)) return refuse({ kind: "unreadable", key, text });
  }
  return {
    kind: "read",
    frame: {
      sort: sortOf(textIn(cards, "IMAGETYP")),
      object: textIn(cards, "OBJECT"),
      filter: textIn(cards, "FILTER"),
      subSeconds,
      gain: numberIn(cards, ["GAIN"]),
      iso: numberIn(cards, ["ISOSPEED", "ISO"]),
      sensorCelsius: numberIn(cards, ["CCD-TEMP"]),
      rotationDeg: numberIn(cards, ["ROTATANG", "POSANGLE", "OBJCTROT"]),
      startedAt,
    },
  };
}

/** Whether text from a file is words alone, fit to be looked up and shown. */
export function isPlainWords(text: string): boolean {
  return PLAIN_WORDS.test(text) && !MEANT_FOR_A_MACHINE.test(text);
}

function refuse(fault: FileFrameFault): FileFrameReading {
  return { kind: "refused", fault };
}

function missingOrUnreadable(cards: FitsCards, key: string): FileFrameFault {
  const value = cards.get(key);
  return value === undefined || value === null
    ? { kind: "missing", key }
    : { kind: "unreadable", key, text: String(value) };
}

function textIn(cards: FitsCards, key: string): string | null {
  const value = cards.get(key);
  if (value === undefined || value === null || typeof value === "boolean") return null;
  return String(value).trim() || null;
}

/** The first of the keywords that holds a number; some programs write it as a string. */
function numberIn(cards: FitsCards, keys: readonly string[]): number | null {
  for (const key of keys) {
    const value = cards.get(key);
    if (typeof value === "number") return value;
    if (typeof value === "string" && /^\s*[+-]?\d+(\.\d+)?\s*$/.test(value)) return Number(value);
  }
  return null;
}

function sortOf(imageType: string | null): FileFrame["sort"] {
  const words = (imageType ?? "").toLowerCase();
  if (words.includes("dark")) return "dark";
  if (words.includes("flat")) return "flat";
  return words.includes("bias") || words.includes("offset") || words.includes("zero") ? "bias" : "light";
}

/** `2026-10-03T21:40:00.250`, in UTC, with or without fractions and a Z. */
function dateOf(value: unknown): Date | null {
  if (typeof value !== "string") return null;
  const found = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2})(\.\d{1,9})?Z?$/.exec(value.trim());
  if (!found) return null;
  const instant = new Date(`${found[1]}${(found[2] ?? "").slice(0, 4)}Z`);
  const sameDay = instant.getTime() && instant.toISOString().startsWith(found[1]?.slice(0, 10) ?? "");
  return sameDay ? instant : null;
}
