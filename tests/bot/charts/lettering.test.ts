import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drawable, textWidth } from "../../../bot/charts/font.ts";
import { lettering, nameLines, shortened, widthOf, wrapped } from "../../../bot/charts/lettering.ts";
import { element } from "../../../bot/charts/svg.ts";
import { extentOf, textOf } from "./pixels.ts";

const page = (content: ReturnType<typeof lettering>) =>
  element("svg", { xmlns: "http://www.w3.org/2000/svg", width: 2000, height: 100 }, [content]).markup;

describe("textWidth", () => {
  // The renderer lays out with the font's kerning, we add up advances: it may be a little narrower,
  // by its kerning and the bearings of the first and last letter.
  it.each(["Good from 22:40 to 02:10", "NGC 6888 Crescent", "WAVY To fjords, 1.28° × 0.86°", "MMMMMMMM"])(
    "is what the renderer takes for %s",
    (text) => {
      for (const weight of ["regular", "bold"] as const) {
        const drawn = extentOf(page(lettering({ x: 100, y: 50 }, [text], { sizePx: 40, weight }))).width;
        const reckoned = textWidth(text, 40, weight);
        expect(drawn).toBeLessThanOrEqual(reckoned + 0.5);
        expect(drawn).toBeGreaterThan(reckoned * 0.95 - 6);
      }
    },
  );
});

describe("drawable", () => {
  it("writes stand-ins for signs the typeface lacks", () => {
    expect(drawable("38′ 12″ from σ Oct → south")).toBe("38' 12\" from sigma Oct to south");
  });

  it("keeps what the charts themselves write", () => {
    const own = "° − – × · ½ ² ≤ ≥ ≈ … ‘ ’ “ ” µ é ü ø ł ğ";
    expect(drawable(own)).toBe(own);
  });

  it("shows letters of other scripts as question marks and drops what steers the text", () => {
    expect(drawable("Ирина\u202e\u200b 漢")).toBe("????? ?");
  });
});

describe("wrapped", () => {
  it("keeps every line within the room and loses no letter", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", maxLength: 200 }),
        fc.integer({ min: 40, max: 380 }),
        (text, room) => {
          const lines = wrapped(text, room, 14, "bold");
          for (const each of lines) expect(widthOf(each, 14, "bold")).toBeLessThanOrEqual(room + 1e-9);
          expect(lines.join("").replaceAll(" ", "")).toBe(drawable(text).replaceAll(" ", ""));
        },
      ),
    );
  });

  it("breaks one endless word", () => {
    expect(wrapped("M".repeat(100), 100).length).toBeGreaterThan(5);
  });

  it("gives no line of nothing", () => {
    expect(wrapped("  ", 100)).toEqual([]);
  });
});

describe("shortened", () => {
  it("leaves alone what fits and ends the rest with an ellipsis inside the room", () => {
    expect(shortened("M33", 100)).toBe("M33");
    const cut = shortened("A very long name given by a member", 100);
    expect(cut.endsWith("…")).toBe(true);
    expect(widthOf(cut)).toBeLessThanOrEqual(100);
  });
});

describe("nameLines", () => {
  it("takes at most so many lines", () => {
    expect(nameLines("The one long name of many words that a member gave", 80, 3)).toHaveLength(3);
  });
});

describe("lettering", () => {
  it("is never smaller than 13 px", () => {
    expect(lettering({ x: 0, y: 0 }, ["small"], { sizePx: 9 }).markup).toContain('font-size="13"');
  });

  it("reads whole across its lines when the tags are taken out", () => {
    const text = "Never look at the Sun through any telescope.";
    expect(textOf(lettering({ x: 0, y: 0 }, wrapped(text, 90)).markup)).toBe(text);
  });
});
