/** The calendar file against RFC 5545, read back by ical.js. */
import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import { type CalendarEntry, calendarFile } from "../../commands/calendar-file.ts";
import { CAUTION_TEXTS } from "../../config/caution-texts.ts";

const STAMP = new Date("2026-11-25T12:00:00Z");
const ENTRY: CalendarEntry = {
  key: "solar-eclipse-2027-08-02",
  start: new Date("2027-08-02T08:08:12Z"),
  end: new Date("2027-08-02T09:54:00Z"),
  title: "Partial eclipse of the Sun",
  cautions: [CAUTION_TEXTS.sun],
  lines: ["Greatest at 10:00; 32 % covered, by the club's site.", "Bring chairs\\rugs."],
  place: "Fell End, the field",
};

const textOf = (entries: readonly CalendarEntry[]) =>
  new TextDecoder().decode(calendarFile("events", entries, STAMP).bytes);
const read = (text: string) => {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return { calendar, events: calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each)) };
};

describe("calendarFile", () => {
  it("reads back through ical.js as it was written: instants in UTC, title, place, description whole", () => {
    const { calendar, events } = read(textOf([ENTRY]));
    expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
    expect(calendar.getFirstPropertyValue("prodid")).toContain("Duskbell");
    const [event] = events;
    expect(event?.uid).toBe("solar-eclipse-2027-08-02@duskbell");
    expect(event?.startDate.toJSDate()).toEqual(ENTRY.start);
    expect(event?.endDate.toJSDate()).toEqual(ENTRY.end);
    expect(event?.startDate.zone.tzid).toBe("UTC");
    expect(event?.summary).toBe(ENTRY.title);
    expect(event?.location).toBe(ENTRY.place);
    expect(event?.description).toBe([CAUTION_TEXTS.sun, ...ENTRY.lines].join("\n\n"));
    expect(event?.component.getFirstPropertyValue("dtstamp")?.toString()).toBe("2026-11-25T12:00:00Z");
  });

  it("puts the caution first in the description, whole", () => {
    const [event] = read(textOf([ENTRY])).events;
    expect(event?.description.startsWith(CAUTION_TEXTS.sun)).toBe(true);
  });

  it("ends every line with CR LF and keeps each to 75 octets (RFC 5545, 3.1)", () => {
    const text = textOf([{ ...ENTRY, title: "Ångström — ½ Moon, “crêpe” 🌒 ".repeat(8) }]);
    expect(text.endsWith("\r\n")).toBe(true);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    for (const line of text.split("\r\n")) {
      expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    }
  });

  it("survives whatever a title, a line or a place may hold", () => {
    const words = fc.string({ unit: "grapheme", maxLength: 200 });
    fc.assert(
      fc.property(words, words, words, (title, line, place) => {
        const [event] = read(textOf([{ ...ENTRY, title, lines: [line], place }])).events;
        const tidy = (text: string) => text.replace(/\r\n?/g, "\n").replace(/[^\P{Cc}\n]/gu, "");
        expect(event?.summary).toBe(tidy(title));
        expect(event?.location).toBe(tidy(place));
        expect(event?.description).toBe(tidy([CAUTION_TEXTS.sun, line].join("\n\n")));
      }),
    );
  });

  it("lets nothing in that begins a property or an event of its own", () => {
    const text = textOf([{ ...ENTRY, title: "x\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nATTACH:file" }]);
    expect(read(text).events).toHaveLength(1);
    expect(text).not.toMatch(/^ATTACH/m);
  });

  it("holds several entries, none cancelled unless it is, each with its revision", () => {
    const later = { ...ENTRY, key: "b", revision: 3, cancelled: true };
    const [first, second] = read(textOf([ENTRY, later])).events;
    expect(first?.component.getFirstPropertyValue("status")).toBe("CONFIRMED");
    expect(second?.component.getFirstPropertyValue("status")).toBe("CANCELLED");
    expect(second?.sequence).toBe(3);
  });

  it("gives an event without length a second, as an end must come after its start", () => {
    const [event] = read(textOf([{ ...ENTRY, end: ENTRY.start }])).events;
    expect(event?.endDate.toJSDate()).toEqual(new Date(ENTRY.start.getTime() + 1000));
  });

  it("is an empty calendar without entries", () => {
    expect(read(textOf([])).events).toEqual([]);
  });
});
