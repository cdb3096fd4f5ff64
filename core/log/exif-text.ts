/**
 * Reads pasted EXIF text: `tag : value` lines, one picture after another.
 *
 * A picture ends where a tag comes a second time, at an empty line or at a line of
 * dashes or equals signs. Tags are those of the EXIF standard (CIPA DC-008, 2.32),
 * in the spellings that listings give them.
 *
 * @packageDocumentation
 */
import { DateTime } from "luxon";
import type { FileFrame } from "./fits-frame.ts";

export type ExifFault =
  | { readonly kind: "no-pictures" }
  /** Pictures are counted from 1. */
  | { readonly kind: "missing"; readonly picture: number; readonly key: string }
  | { readonly kind: "unreadable"; readonly picture: number; readonly key: string; readonly text: string };

export type ExifReading =
  | { readonly kind: "read"; readonly frames: readonly FileFrame[] }
  | { readonly kind: "refused"; readonly fault: ExifFault };

type Tags = ReadonlyMap<string, string>;

/** Spellings without case, spaces and punctuation, the best first. */
const SPELLINGS = {
  exposure: ["exposuretime", "exposure", "shutterspeed", "shutterspeedvalue", "bulbduration"],
  iso: ["iso", "isospeed", "isospeedratings", "photographicsensitivity", "recommendedexposureindex"],
  date: [
    "datetimeoriginal",
    "dateandtimeoriginal",
    "datetimedigitized",
    "createdate",
    "dateandtime",
    "datetime",
  ],
  offset: ["offsettimeoriginal", "offsettime", "timezone", "timezoneoffset"],
  temperature: ["cameratemperature", "sensortemperature", "ambienttemperature"],
} as const;

/**
 * Reads the pictures of a listing.
 *
 * @param text - as pasted, or a text file's whole contents
 * @param timeZone - IANA name of the zone the camera's clock keeps where the text does not say
 */
export function readExifText(text: string, timeZone: string): ExifReading {
  const pictures = picturesOf(inLines(text)).filter((tags) => tagOf(tags, SPELLINGS.exposure) !== null);
  if (pictures.length === 0) return { kind: "refused", fault: { kind: "no-pictures" } };
  const frames: FileFrame[] = [];
  for (const [index, tags] of pictures.entries()) {
    const frame = frameOf(tags, timeZone);
    if ("key" in frame) return { kind: "refused", fault: { ...frame, picture: index + 1 } };
    frames.push(frame);
  }
  return { kind: "read", frames };
}

/** The tags read here, as listings name them. */
const OWN_TAG =
  /(?:^|\s+)(file name|exposure ?time|shutter ?speed(?: ?value)?|iso(?: ?speed)?(?: ?ratings)?|date\/?(?: and )?time ?\(?original\)?|create ?date|offset ?time(?: ?original)?|camera ?temperature|ambient ?temperature)\s*[:=]\s*/gi;

/** Where another tag follows a value on the same line. */
const NEXT_TAG = /\s+(?:[-=]{4,}|[a-z][a-z0-9/() -]{0,40}\s[:=]\s).*$/i;

/** Nobody pastes more; a longer text without line ends is none of ours. */
const PASTE_LENGTH = 20_000;

/** A longer line is no tag and value. */
const LINE_LENGTH = 500;

/** Pasted into a chat's field, lines run together: the tags read here get their own again. */
function inLines(text: string): string {
  if (text.length > PASTE_LENGTH || /[\r\n]/.test(text)) return text;
  const lines = text.replace(OWN_TAG, (_, tag: string) => `\n${tag.replace(/\s/g, "")}: `).split("\n");
  return lines.map((line) => line.replace(NEXT_TAG, "")).join("\n");
}

function picturesOf(text: string): readonly Tags[] {
  const pictures: Map<string, string>[] = [new Map()];
  for (const line of text.split(/\r\n|\n|\r/)) {
    if (line.length > LINE_LENGTH) continue;
    const found = /^\s*([\p{L}][\p{L}\p{N} /_().-]{1,40}?)\s*[:=\t]\s*(\S.*)$/u.exec(line);
    const current = pictures.at(-1);
    if (!found || /^[-=]{4,}/.test(line)) {
      if (current && current.size > 0 && (line.trim() === "" || /^[-=]{4,}/.test(line)))
        pictures.push(new Map());
      continue;
    }
    const key = (found[1] ?? "").toLowerCase().replace(/[^a-z]/g, "");
    const value = (found[2] ?? "").trim();
    if (current && !current.has(key)) current.set(key, value);
    else if (isTelling(key)) pictures.push(new Map([[key, value]]));
  }
  return pictures;
}

/** Tags that stand once in a picture; others may be listed by several groups. */
function isTelling(key: string): boolean {
  return key === "filename" || key === "exposuretime" || key === "datetimeoriginal";
}

type Fault = { readonly kind: "missing" | "unreadable"; readonly key: string; readonly text: string };

function frameOf(tags: Tags, timeZone: string): FileFrame | Fault {
  const exposure = tagOf(tags, SPELLINGS.exposure) ?? "";
  const subSeconds = secondsOf(exposure);
  if (subSeconds === null) return { kind: "unreadable", key: "exposure time", text: exposure };
  const date = tagOf(tags, SPELLINGS.date);
  if (date === null) return { kind: "missing", key: "date and time", text: "" };
  const startedAt = instantOf(date, tagOf(tags, SPELLINGS.offset), timeZone);
  if (startedAt === null) return { kind: "unreadable", key: "date and time", text: date };
  return {
    sort: "light",
    object: null,
    filter: null,
    subSeconds,
    gain: null,
    iso: numberIn(tagOf(tags, SPELLINGS.iso)),
    sensorCelsius: celsiusOf(tagOf(tags, SPELLINGS.temperature)),
    rotationDeg: null,
    startedAt,
  };
}

function tagOf(tags: Tags, spellings: readonly string[]): string | null {
  for (const spelling of spellings) {
    const value = tags.get(spelling);
    if (value !== undefined) return value;
  }
  return null;
}

/** `180`, `180 s`, `1/60`, `2.5 sec.`, `30"`. */
function secondsOf(text: string): number | null {
  const found = /^(\d+(?:[.,]\d+)?)(?:\s*\/\s*(\d+))?\s*(?:s|secs?\.?|seconds?|"|″)?$/i.exec(text.trim());
  if (!found) return null;
  const value = Number(found[1]?.replace(",", "."));
  const seconds = found[2] === undefined ? value : value / Number(found[2]);
  return Number.isFinite(seconds) && seconds > 0 ? seconds : null;
}

function numberIn(text: string | null): number | null {
  const found = /\d+(\.\d+)?/.exec(text ?? "");
  return found ? Number(found[0]) : null;
}

function celsiusOf(text: string | null): number | null {
  const found = /^([+-−]?\d+(?:\.\d+)?)\s*(?:°?\s*C(?:elsius)?)?$/i.exec((text ?? "").trim());
  return found?.[1] === undefined ? null : Number(found[1].replace("−", "-"));
}

/** EXIF writes `2026:10:03 22:14:05`, without a zone unless a tag of its own says so. */
function instantOf(text: string, offset: string | null, timeZone: string): Date | null {
  const found =
    /^(\d{4})[:\-/](\d{2})[:\-/](\d{2})[ T](\d{2}:\d{2}:\d{2})(\.\d+)?\s*(Z|[+-]\d{2}:?\d{2})?$/.exec(
      text.trim(),
    );
  if (!found) return null;
  const [, year, month, day, clock, fraction = "", own] = found;
  const said = own ?? (offset !== null && /^(Z|[+-]\d{2}:?\d{2})$/.test(offset.trim()) ? offset.trim() : "");
  const local = DateTime.fromISO(`${year}-${month}-${day}T${clock}${fraction.slice(0, 4)}${said}`, {
    zone: timeZone,
  });
  return local.isValid ? local.toJSDate() : null;
}
