import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answerText, followUpWords } from "../../../bot/console/answer-text.ts";
import { displayWidth, tableLines, wrap } from "../../../bot/console/wrap.ts";
import type { Answer } from "../../../commands/answer.ts";

describe("wrap", () => {
  it("keeps every line within the width and every word in order", () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200 }),
        fc.integer({ min: 10, max: 100 }),
        fc.integer({ min: 0, max: 4 }),
        (text, width, hang) => {
          const lines = wrap(text, width, hang);
          for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width);
          expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
        },
      ),
    );
  });

  it("indents every line but the first", () => {
    expect(wrap("one two three four", 10, 2)).toEqual(["one two", "  three", "  four"]);
  });
});

describe("displayWidth", () => {
  it("counts a letter with its accents as one and East Asian letters as two", () => {
    expect(displayWidth("é")).toBe(1);
    expect(displayWidth("e\u0301")).toBe(1);
    expect(displayWidth("天文")).toBe(4);
  });
});

describe("tableLines", () => {
  const table = {
    columns: ["night", "verdict", "hours"],
    rows: [
      ["Fri 3 Oct", "go", "7.5"],
      ["Sat 4 Oct", "no-go", "10.2"],
    ],
  };

  it("aligns words to the left and figures to the right", () => {
    expect(tableLines(table, 60)).toEqual([
      "night      verdict  hours",
      "Fri 3 Oct  go         7.5",
      "Sat 4 Oct  no-go     10.2",
    ]);
  });

  it("folds the widest column until the table fits", () => {
    const wide = {
      columns: ["a", "why"],
      rows: [["x", "cloud averages far more than the limit all night long"]],
    };
    const lines = tableLines(wide, 30);
    for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(30);
    expect(lines.join(" ").replace(/\s+/g, " ")).toContain("cloud averages far more");
  });
});

const ANSWER: Answer = {
  title: "The title",
  summary: "The summary.",
  sections: [{ heading: "Section", lines: ["a line"] }],
  charts: [],
  cautions: [{ id: "sun", text: "Never look at the Sun." }],
  next: [
    { label: "More", command: "site", options: { subcommand: "add", name: "High Moor", default: true } },
  ],
  figures: {},
  credits: ["Weather by somebody."],
};

describe("answerText", () => {
  it("puts cautions first and credits last", () => {
    const text = answerText(ANSWER, [{ name: "night", path: "/x/night.png", alt: "What it shows" }], {
      columns: 80,
      before: "",
    });
    const order = [
      "! Never look",
      "The title",
      "The summary.",
      "Section",
      "Saved /x/night.png",
      "Ask next",
      "Weather by",
    ];
    const places = order.map((part) => text.indexOf(part));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((one, other) => one - other));
  });

  it("shows a caution whole, however long and narrow", () => {
    const text = "Never look at the Sun through any optical aid. ".repeat(20).trim();
    const shown = answerText({ ...ANSWER, cautions: [{ id: "sun", text }] }, [], { columns: 40, before: "" });
    expect(shown.replace(/\s+/g, " ")).toContain(text);
  });
});

describe("followUpWords", () => {
  it("writes a follow-up as one types it", () => {
    expect(followUpWords(ANSWER.next[0] ?? { label: "", command: "", options: {} })).toBe(
      'site add --name "High Moor" --default',
    );
  });
});
