import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseFlags, parseQuestion, quoted } from "../../../bot/console/command-line.ts";
import { NO_FLAGS } from "../../../bot/console/flags.ts";
import { splitWords } from "../../../bot/console/split-words.ts";
import { AskError } from "../../../commands/ask-error.ts";
import type { Command } from "../../../commands/command.ts";
import {
  defineChoice,
  defineFile,
  defineFlag,
  defineNumber,
  defineSubcommand,
  defineText,
  defineWhole,
} from "../../../commands/read/options.ts";

function command(definition: Command["definition"]): Command {
  return {
    definition,
    audience: "member",
    async answer() {
      throw new Error("not asked here");
    },
  };
}

const LOOK = command({
  name: "look",
  description: "Looks",
  options: [
    defineText("target", "What", { required: true }),
    defineText("site", "Where"),
    defineText("night", "When"),
    defineWhole("count", "How many"),
    defineNumber("angle", "Turned how"),
    defineFlag("wide", "Wider"),
    defineChoice("side", "Which side", ["east", "west"]),
  ],
});

const SHELF = command({
  name: "shelf",
  description: "Keeps",
  options: [
    defineSubcommand("add", "Adds", [
      defineText("name", "Its name", { required: true }),
      defineFile("file", "A file"),
    ]),
    defineSubcommand("list", "Lists"),
  ],
  defaultSubcommand: "list",
});

const CRATE = command({
  name: "crate",
  description: "Holds",
  options: [defineSubcommand("open", "Opens"), defineSubcommand("close", "Closes")],
});

const GRAMMAR = {
  commands: [LOOK, SHELF, CRATE],
  readFile: (_: string, path: string) => ({ name: path, mediaType: null, bytes: new Uint8Array() }),
};

function parse(...words: string[]) {
  const { command: found, subcommand, options, flags } = parseQuestion(words, GRAMMAR);
  return { name: found.definition.name, subcommand, options, flags };
}

function refusal(...words: string[]): AskError {
  try {
    parseQuestion(words, GRAMMAR);
  } catch (fault) {
    if (fault instanceof AskError) return fault;
    throw fault;
  }
  throw new Error(`${words.join(" ")} was not refused`);
}

describe("parseQuestion", () => {
  it("types options as they are defined", () => {
    expect(parse("look", "--target", "M33", "--count", "3", "--angle", "-12.5", "--wide").options).toEqual({
      target: "M33",
      count: 3,
      angle: -12.5,
      wide: true,
    });
  });

  it("takes the word after an option for its value even when it begins with a dash", () => {
    expect(parse("look", "--target", "--site", "--site", "-33.93,18.42").options).toEqual({
      target: "--site",
      site: "-33.93,18.42",
    });
  });

  it("takes --name=value, the empty value refused", () => {
    expect(parse("look", "--target=M 33", "--wide=no").options).toEqual({ target: "M 33", wide: false });
    expect(refusal("look", "--target=")).toMatchObject({ option: "target", code: "empty" });
  });

  it("takes a yes or no after a flag, and leaves any other word alone", () => {
    expect(parse("look", "--wide", "no", "--target", "M33").options).toEqual({ wide: false, target: "M33" });
    expect(parse("look", "--wide", "--target", "M33").options).toEqual({ wide: true, target: "M33" });
    expect(refusal("look", "--wide", "M33").message).toContain("--target M33");
  });

  it("finds general flags before, between and after", () => {
    const at = new Date("2026-10-03T21:40:00Z");
    for (const words of [
      ["--at", "2026-10-03T22:40+01:00", "--json", "look", "--target", "M33"],
      ["look", "--at", "2026-10-03T22:40+01:00", "--target", "M33", "--json"],
    ]) {
      expect(parse(...words)).toMatchObject({ name: "look", flags: { json: true, at } });
    }
  });

  it("collects --forecast files, and refuses none beside them", () => {
    expect(parse("shelf", "--forecast", "a.json", "--forecast", "b.json").flags.forecast).toEqual([
      "a.json",
      "b.json",
    ]);
    expect(refusal("shelf", "--forecast", "none", "--forecast", "b.json").option).toBe("forecast");
  });

  it("gives --night to a command that has it and refuses it beside one that lacks it", () => {
    expect(parse("--night", "2026-10-03", "look", "--target", "M33").options).toEqual({
      target: "M33",
      night: "2026-10-03",
    });
    expect(refusal("shelf", "list", "--night", "2026-10-03")).toMatchObject({
      option: "night",
      code: "unknown-option",
    });
    expect(refusal("look", "--target", "M33", "--nights", "3").option).toBe("nights");
  });

  it("lets a default --night fall where a command lacks it, and yield to the line's own", () => {
    const defaults = { ...NO_FLAGS, night: "2026-10-03" };
    expect(parseQuestion(["shelf", "list"], GRAMMAR, defaults).options).toEqual({});
    const own = ["look", "--target", "M33", "--night", "2026-11-01"];
    expect(parseQuestion(own, GRAMMAR, defaults).options.night).toBe("2026-11-01");
    expect(parseQuestion(["look", "--target", "M33"], GRAMMAR, defaults).options.night).toBe("2026-10-03");
  });

  it("means the default subcommand when none is named, and needs one where there is no default", () => {
    expect(parse("shelf").subcommand).toBe("list");
    expect(parse("shelf", "--json").subcommand).toBe("list");
    expect(parse("shelf", "add", "--name", "x").subcommand).toBe("add");
    expect(refusal("crate").message).toContain("open, close");
  });

  it.each([
    [["lok"], null, /no command “lok”. The nearest are: look/],
    [["shelf", "ad"], null, /no “ad”. The nearest are: add/],
    [["look", "--targt", "M33"], "targt", /“targt” is no option of look. The nearest are: --target/],
    [["look"], "target", /“target” is missing/],
    [["look", "--target"], "target", /needs a value/],
    [["look", "--target", "a", "--target", "b"], "target", /given twice/],
    [["look", "--target", "a", "--count", "2.5"], "count", /whole number/],
    [["look", "--target", "a", "--count", "many"], "count", /“count” needs a whole number, not “many”/],
    [["look", "--target", "a", "--angle", "NaN"], "angle", /needs a number/],
    [["look", "--target", "a", "--side", "up"], "side", /must be one of: east, west/],
    [["look", "--target", "a", "--wide=perhaps"], "wide", /yes or no/],
    [["look", "--target", "x".repeat(201)], "target", /201 characters: it takes at most 200/],
    [["--site", "x", "look"], "site", /name the command first/],
    [["look", "--at", "yesterday", "--target", "a"], "at", /“at” needs a date and time/],
    [["look", "--as", "@everyone", "--target", "a"], "as", /mentions/],
    [["look", "--target", "a", "--lines"], "lines", /without a command/],
    [[], null, /Name a command: look, shelf, crate/],
  ])("refuses %j naming what would be right", (words, option, message) => {
    const refused = refusal(...words);
    expect(refused.option).toBe(option);
    expect(refused.message).toMatch(message);
  });

  it("parses or refuses any words at all", () => {
    const word = fc.oneof(
      fc.string(),
      fc.constantFrom(
        "look",
        "shelf",
        "add",
        "--target",
        "--json",
        "--night",
        "--count",
        "--",
        "-",
        "—site",
        "--__proto__",
      ),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 8 }), (words) => {
        try {
          parseQuestion(words, GRAMMAR);
        } catch (fault) {
          expect(fault).toBeInstanceOf(AskError);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe("parseFlags", () => {
  it("reads flags alone", () => {
    expect(
      parseFlags(["--lines", "--as", "wren", "--forecast", "none", "--night", "2026-10-03"]),
    ).toMatchObject({
      lines: true,
      json: true,
      as: "wren",
      forecast: ["none"],
      night: "2026-10-03",
    });
  });

  it("refuses a command or an option beside --lines", () => {
    expect(() => parseFlags(["--lines", "night"])).toThrow(/cannot stand beside --lines/);
    expect(() => parseFlags(["--lines", "--site", "x"])).toThrow(/cannot stand beside --lines/);
  });
});

describe("splitWords", () => {
  it.each([
    ['target --target "NGC 6888"', ["target", "--target", "NGC 6888"]],
    ["site add --name 'High Moor'", ["site", "add", "--name", "High Moor"]],
    ["site add --name “High Moor”", ["site", "add", "--name", "High Moor"]],
    ["target --target Barnard's", ["target", "--target", "Barnard's"]],
    [String.raw`a\ b "c\"d"`, ["a b", 'c"d']],
    ['open "never closed', ["open", "never closed"]],
    ['""', [""]],
    ["   ", []],
  ])("parts %s", (line, words) => {
    expect(splitWords(line)).toEqual(words);
  });

  it("gives back whatever words were quoted for a shell", () => {
    const word = fc.string({ minLength: 1 }).filter((text) => !/[\r\n]/.test(text));
    fc.assert(
      fc.property(fc.array(word), (words) => {
        expect(splitWords(words.map(quoted).join(" "))).toEqual(words);
      }),
    );
  });
});
