import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { renderAnswer } from "../../../bot/discord/render-answer.ts";
import { tableLines } from "../../../bot/discord/table-lines.ts";
import { withoutCoordinates } from "../../../bot/discord/without-coordinates.ts";
import type { Answer } from "../../../commands/answer.ts";
import { CAUTION_TEXTS } from "../../../config/caution-texts.ts";
import { TABLE_COLUMNS } from "../../../config/discord-limits.ts";
import { MENTIONS_A_MESSAGE } from "../../../config/evening.ts";
import type { Caution, CautionId } from "../../../core/cautions.ts";
import { plainAnswer } from "./door-scene.ts";
import { checkMessage } from "./stand-in/message-checks.ts";
import type { MessageBody } from "./stand-in/state.ts";

const CAUTIONS: readonly Caution[] = Object.entries(CAUTION_TEXTS).map(([id, text]) => ({
  id: id as CautionId,
  text,
}));

/** Text as anyone may type it, long and full of signs. */
const text = fc.oneof(
  fc.string({ maxLength: 60 }),
  fc.string({ unit: "grapheme", maxLength: 200 }),
  fc.constantFrom(
    "```",
    "@everyone",
    "<@1234567890123456>",
    "[a](https://evil.example)",
    "||x||",
    "# loud",
    "\\",
  ),
  fc.string({ minLength: 300, maxLength: 3000 }),
);

const answers: fc.Arbitrary<Answer> = fc.record({
  title: text.map((words) => `T${words}`),
  summary: text.map((words) => `S${words}`),
  sections: fc.array(
    fc.record(
      {
        heading: text,
        lines: fc.array(text, { maxLength: 40 }),
        table: fc.record({
          columns: fc.array(text, { minLength: 1, maxLength: 4 }),
          rows: fc.array(fc.array(text, { minLength: 1, maxLength: 4 }), { maxLength: 60 }),
        }),
      },
      { requiredKeys: ["heading", "lines"] },
    ) as fc.Arbitrary<Answer["sections"][number]>,
    { maxLength: 12 },
  ),
  charts: fc.constant([]),
  cautions: fc.subarray([...CAUTIONS]),
  next: fc.constant([]),
  figures: fc.constant({}),
  credits: fc.array(text, { maxLength: 4 }),
});

const besides = fc.record({
  buttons: fc.array(fc.record({ id: fc.uuid(), label: text, primary: fc.boolean() }), { maxLength: 30 }),
  rings: fc.uniqueArray(
    fc.integer({ min: 1, max: 999 }).map((n) => String(1e17 + n)),
    {
      maxLength: MENTIONS_A_MESSAGE,
    },
  ),
  names: fc.option(
    fc.record({ heading: text.map((words) => `N${words}`), names: fc.array(text, { maxLength: 200 }) }),
  ),
  remarks: fc.array(text, { maxLength: 3 }),
});

const unescaped = (shown: string) => shown.replace(/\\([^0-9A-Za-z\s])/g, "$1");

describe("renderAnswer", () => {
  it("keeps every limit of a message, whatever the answer", () => {
    fc.assert(
      fc.property(answers, besides, (answer, beside) => {
        checkMessage(renderAnswer(answer, beside) as unknown as MessageBody, []);
      }),
      { numRuns: 150 },
    );
  });

  it("shows every caution first and whole, whatever else there is to say", () => {
    fc.assert(
      fc.property(answers, besides, (words, beside) => {
        const answer = { ...words, summary: "Worth setting up tonight." };
        const { content, embeds } = renderAnswer(answer, beside);
        const shown = unescaped(`${content}\n${embeds[0]?.description ?? ""}`);
        const places = answer.cautions.map((caution) => shown.indexOf(caution.text));
        expect(places.every((place) => place >= 0)).toBe(true);
        expect([...places].sort((one, other) => one - other)).toEqual(places);
        if (answer.cautions.length > 0) expect(content.startsWith("**Caution.**")).toBe(true);
        expect(shown.indexOf("Worth setting up tonight.")).toBeGreaterThan(Math.max(-1, ...places));
      }),
      { numRuns: 150 },
    );
  });

  it("has room for all cautions together beside as many mentions as one message rings", () => {
    const rings = Array.from({ length: MENTIONS_A_MESSAGE }, (_, index) => String(1e18 + index));
    const { content } = renderAnswer(plainAnswer({ cautions: CAUTIONS }), {
      buttons: [],
      rings,
      names: null,
      remarks: [],
    });
    expect(unescaped(content)).toContain(CAUTION_TEXTS.sun);
    expect(content).toContain(`<@${rings.at(-1)}>`);
  });

  it("lets only those ring who are meant to", () => {
    const answer = plainAnswer({ summary: "<@123456789012345678> @everyone" });
    const { allowed_mentions, content } = renderAnswer(answer, {
      buttons: [],
      rings: ["987654321098765432"],
      names: null,
      remarks: [],
    });
    expect(allowed_mentions).toEqual({ parse: [], users: ["987654321098765432"] });
    expect(content).toBe("Asked to be told: <@987654321098765432>");
  });

  it("leaves nothing that Discord would read as markup", () => {
    const loud = "# head **bold** [link](https://evil.example) `code` ||spoiler|| > quote";
    const { embeds } = renderAnswer(plainAnswer({ summary: loud }));
    expect(embeds[0]?.description).toBe(
      "\\# head \\*\\*bold\\*\\* \\[link\\](https\\://evil.example) \\`code\\` \\|\\|spoiler\\|\\| > quote",
    );
  });

  it("shortens the longest sections first and says how much is missing", () => {
    const lines = Array.from({ length: 200 }, (_, index) => `line ${index} of a section that goes on and on`);
    const answer = plainAnswer({
      sections: [
        { heading: "Short", lines: ["one", "two"] },
        { heading: "Long", lines },
      ],
    });
    const shown = renderAnswer(answer).embeds[0]?.description ?? "";
    expect(shown).toContain("**Short**\none\ntwo");
    expect(shown).toMatch(/… and \d+ more$/);
  });
});

describe("tableLines", () => {
  it("aligns a narrow table in a block no wider than a phone", () => {
    const table = {
      columns: ["night", "window", "hours"],
      rows: [
        ["Sat 3 Oct", "22:40–02:10", "3.5"],
        ["Sun 4 Oct", "–", "0"],
      ],
    };
    expect(tableLines(table)).toEqual({
      fenced: true,
      head: "night      window       hours",
      rows: ["Sat 3 Oct  22:40–02:10    3.5", "Sun 4 Oct  –                0"],
    });
  });

  it("tells a wide table line by line, naming its columns", () => {
    const table = {
      columns: ["night", "verdict", "the worst reason"],
      rows: [["Sat 3 Oct", "marginal", "Cloud covers 60 % from 23:00 on"]],
    };
    expect(tableLines(table)).toEqual({
      fenced: false,
      head: null,
      rows: ["**Sat 3 Oct** · verdict marginal · the worst reason Cloud covers 60 % from 23:00 on"],
    });
  });

  it("is never wider than a phone shows", () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ maxLength: 14 }), { minLength: 3, maxLength: 3 }), { maxLength: 9 }),
        (rows) => {
          const lines = tableLines({ columns: ["a", "b", "c"], rows });
          if (!lines.fenced) return;
          for (const row of [lines.head ?? "", ...lines.rows]) {
            expect([...row].length).toBeLessThanOrEqual(TABLE_COLUMNS);
          }
        },
      ),
    );
  });
});

describe("withoutCoordinates", () => {
  const figures = { site: { name: "garden", latitudeDeg: 54.5, longitudeDeg: -2.61 } };

  it.each([
    "54.5° N, 2.61° W, 310 m",
    "54.50, -2.61",
    "at 54°30′ N 2°37′ W",
    "-2.6 and 54.500000",
    "51.48° N, 0.00° W",
  ])("leaves nothing of “%s”", (line) => {
    const clean = withoutCoordinates(plainAnswer({ figures, sections: [{ heading: "", lines: [line] }] }));
    const left = clean.sections[0]?.lines[0] ?? "";
    expect(left).not.toMatch(/54|2\.6|2°|51\.4|0\.00/);
    expect(left).toContain("(place kept private)");
  });

  it("leaves other numbers alone", () => {
    const line = "Usable 22:40 to 02:10, 154.5 frames, 254.50 s, 12.61 mag";
    const clean = withoutCoordinates(plainAnswer({ figures, sections: [{ heading: "", lines: [line] }] }));
    expect(clean.sections[0]?.lines[0]).toBe(line);
  });
});
