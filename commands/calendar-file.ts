/**
 * Dates as an iCalendar file, for the calendars people keep.
 *
 * Instants in UTC, text escaped, lines folded. A member's coordinates never go in.
 *
 * @packageDocumentation
 */
import type { Attachment } from "./answer.ts";

export type CalendarEntry = {
  /** The same for the same event ever after, so that a calendar can update it; before the `@`. */
  readonly key: string;
  readonly start: Date;
  readonly end: Date;
  readonly title: string;
  /** Caution texts, whole; they stand first in the description. */
  readonly cautions: readonly string[];
  readonly lines: readonly string[];
  /** A place in words, or `null`. */
  readonly place: string | null;
  /** Counts up with every change; 0 when new. */
  readonly revision?: number;
  readonly cancelled?: boolean;
};

export const CALENDAR_MEDIA_TYPE = "text/calendar; charset=utf-8";

/** Octets of a line, its break apart (RFC 5545, 3.1). */
const LINE_OCTETS = 75;

/**
 * An `.ics` file of some entries.
 *
 * @param name - of the file, without ending
 * @param stamp - when it was made
 *
 * @remarks Source: RFC 5545 (sections 3.1 folding, 3.3.11 escaping, 3.6.1 events).
 */
export function calendarFile(name: string, entries: readonly CalendarEntry[], stamp: Date): Attachment {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Duskbell//Astronomy club calendar//EN",
    "CALSCALE:GREGORIAN",
    ...entries.flatMap((entry) => eventLines(entry, stamp)),
    "END:VCALENDAR",
  ];
  const text = lines.map((line) => `${folded(line)}\r\n`).join("");
  return { name: `${name}.ics`, mediaType: CALENDAR_MEDIA_TYPE, bytes: new TextEncoder().encode(text) };
}

function eventLines(entry: CalendarEntry, stamp: Date): string[] {
  // An event lasts a second at least: an end that is not after its start is not allowed.
  const description = [...entry.cautions, ...entry.lines].join("\n\n");
  const end = new Date(Math.max(entry.end.getTime(), entry.start.getTime() + 1000));
  return [
    "BEGIN:VEVENT",
    `UID:${escaped(entry.key)}@duskbell`,
    `DTSTAMP:${utc(stamp)}`,
    `DTSTART:${utc(entry.start)}`,
    `DTEND:${utc(end)}`,
    `SUMMARY:${escaped(entry.title)}`,
    ...(description === "" ? [] : [`DESCRIPTION:${escaped(description)}`]),
    ...(entry.place === null ? [] : [`LOCATION:${escaped(entry.place)}`]),
    `SEQUENCE:${entry.revision ?? 0}`,
    `STATUS:${entry.cancelled ? "CANCELLED" : "CONFIRMED"}`,
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

/** `20261203T183000Z`. */
function utc(at: Date): string {
  return `${at.toISOString().slice(0, 19).replace(/[-:]/g, "")}Z`;
}

/** A text value: backslash, semicolon, comma and line break escaped, other control characters gone. */
function escaped(text: string): string {
  return text
    .replace(/\r\n?/g, "\n")
    .replace(/[\p{Cc}]/gu, (character) => (character === "\n" ? "\n" : ""))
    .replace(/[\\;,]/g, (character) => `\\${character}`)
    .replace(/\n/g, "\\n");
}

/** A line cut into parts of at most 75 octets, never inside a character; those after the first begin with a space. */
function folded(line: string): string {
  const parts: string[] = [];
  let part = "";
  let octets = 0;
  for (const character of line) {
    const size = new TextEncoder().encode(character).length;
    if (octets + size > LINE_OCTETS) {
      parts.push(part);
      [part, octets] = [" ", 1];
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join("\r\n");
}
