/**
 * The console's general flags: what stands beside a command whichever it is.
 *
 * @packageDocumentation
 */
import { AskError } from "../../commands/ask-error.ts";
import { cleanName } from "../../commands/read/names.ts";
import { parseInstant } from "../../commands/read/numbers.ts";

export type Flags = {
  /** One JSON object on standard output and nothing else. */
  readonly json: boolean;
  /** One question a line on standard input; implies `json`. */
  readonly lines: boolean;
  /** The clock; `null` for now. */
  readonly at: Date | null;
  /** Who asks; `null` for `me`. */
  readonly as: string | null;
  /** The club asked in; `null` for the demo club. */
  readonly club: string | null;
  /** Saved responses instead of the network, or `none`; empty for the network. */
  readonly forecast: readonly string[];
  /** Where charts are saved; `null` when not said. */
  readonly charts: string | null;
  /** Options of the commands about a night, which may stand beside `--lines` as defaults. */
  readonly night: string | null;
  readonly nights: string | null;
};

export const NO_FLAGS: Flags = {
  json: false,
  lines: false,
  at: null,
  as: null,
  club: null,
  forecast: [],
  charts: null,
  night: null,
  nights: null,
};

export type FlagName = keyof Flags;

/** Flags that stand alone; every other takes the word after it. */
const ALONE: ReadonlySet<FlagName> = new Set(["json", "lines"]);

/** Whether a word after dashes is a general flag. */
export function isFlag(name: string): name is FlagName {
  return Object.hasOwn(NO_FLAGS, name);
}

export function takesWord(name: FlagName): boolean {
  return !ALONE.has(name);
}

/**
 * The flags with one more of them.
 *
 * @param flags - those read so far
 * @param given - names given on this very line, so that a default may be overridden and nothing given twice
 * @param word - its value; the empty text for a flag that stands alone
 * @throws AskError naming the flag when its value does not fit or it was given before
 */
export function withFlag(flags: Flags, given: Set<string>, name: FlagName, word: string): Flags {
  if (given.has(name) && name !== "forecast" && takesWord(name)) {
    throw new AskError("given-twice", name, `“${name}” is given twice: once is enough.`);
  }
  const first = !given.has(name);
  given.add(name);
  if (takesWord(name) && word.trim() === "") {
    throw new AskError("empty", name, `“${name}” is empty: it needs a value.`);
  }
  switch (name) {
    case "json":
      return { ...flags, json: true };
    case "lines":
      return { ...flags, lines: true, json: true };
    case "at":
      return { ...flags, at: parseInstant("at", word) };
    case "as":
      return { ...flags, as: cleanName("as", word) };
    case "club":
      return { ...flags, club: cleanName("club", word) };
    case "forecast":
      return { ...flags, forecast: withForecast(first ? [] : flags.forecast, word) };
    case "charts":
      return { ...flags, charts: word };
    case "night":
      return { ...flags, night: word };
    case "nights":
      return { ...flags, nights: word };
  }
}

function withForecast(files: readonly string[], word: string): readonly string[] {
  const all = [...files, word];
  if (all.length > 1 && all.includes("none")) {
    throw new AskError("none-and-more", "forecast", "“forecast” is either none or files, not both.");
  }
  return all;
}
