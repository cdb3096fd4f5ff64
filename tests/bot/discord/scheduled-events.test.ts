/** What an event says: within Discord's limits (Guild Scheduled Event), the caution first and whole. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eventBody, eventDescription } from "../../../bot/discord/scheduled-events.ts";
import { CAUTION_TEXTS } from "../../../config/caution-texts.ts";
import type { CautionId } from "../../../core/cautions.ts";
import { invitation } from "../outreach/session-scene.ts";

const KEY = "0123456789abcdef01234567";
const IDS = Object.keys(CAUTION_TEXTS) as CautionId[];
const words = fc.string({ unit: "grapheme", maxLength: 400 });

const anyInvitation = fc
  .record({
    cautions: fc.subarray(IDS),
    name: fc.string({ unit: "grapheme", minLength: 1, maxLength: 60 }),
    place: fc.string({ unit: "grapheme", minLength: 1, maxLength: 60 }),
    summary: words,
    lines: fc.array(words, { maxLength: 6 }),
  })
  .map(({ cautions, ...parts }) =>
    invitation({ ...parts, cautions: cautions.map((id) => ({ id, text: CAUTION_TEXTS[id] })) }),
  );

describe("eventDescription", () => {
  it("keeps the first caution whole and first, ends with the mark, and fits whatever is said", () => {
    fc.assert(
      fc.property(anyInvitation, (given) => {
        const description = eventDescription(given, KEY);
        expect(description.length).toBeLessThanOrEqual(1000);
        expect(description.endsWith(`Duskbell ${KEY}`)).toBe(true);
        const [first] = given.cautions;
        if (first !== undefined) expect(description.startsWith(`Caution. ${first.text}`)).toBe(true);
      }),
    );
  });

  it("never cuts a caution: each is whole or not there", () => {
    fc.assert(
      fc.property(anyInvitation, (given) => {
        const description = eventDescription(given, KEY);
        for (const { text } of given.cautions) {
          if (description.includes(`Caution. ${text.slice(0, 30)}`)) expect(description).toContain(text);
        }
      }),
    );
  });

  it("cannot ring, link or mark up anything that was typed", () => {
    const typed = invitation({ name: "@everyone", place: "<#1>", summary: "[x](https://example.org) **b**" });
    const { name, entity_metadata, description } = eventBody({ key: KEY, invitation: typed, picture: null });
    expect(name).toBe("\\@everyone");
    expect(entity_metadata.location).toBe("\\<#1>");
    expect(description).not.toMatch(/(?<!\\)\[x|https:\/\/|(?<!\\)\*\*b/);
  });
});

describe("eventBody", () => {
  it("stays within the limits of name and place", () => {
    fc.assert(
      fc.property(anyInvitation, (given) => {
        const body = eventBody({ key: KEY, invitation: given, picture: null });
        expect(body.name.length).toBeLessThanOrEqual(100);
        expect(body.entity_metadata.location.length).toBeLessThanOrEqual(100);
      }),
    );
  });

  it("leaves a picture out that is too large", () => {
    const picture = (length: number) => ({ name: "night.png", alt: "", base64: "A".repeat(length) });
    const given = { key: KEY, invitation: invitation() };
    expect(eventBody({ ...given, picture: picture(100) }).image).toMatch(/^data:image\/png;base64,A/);
    expect(eventBody({ ...given, picture: picture(3_000_000) })).not.toHaveProperty("image");
  });
});
