/**
 * From the words of a command line to a question: which command, with which options.
 *
 * The word after an option that takes a value is its value, even when it begins
 * with a dash; `--name=value` does as well.
 *
 * @packageDocumentation
 */
import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandOption,
  type APIApplicationCommandSubcommandOption,
  ApplicationCommandOptionType,
} from "discord-api-types/v10";
import { AskError } from "../../commands/ask-error.ts";
import type { Command } from "../../commands/command.ts";
import { nearestNames } from "../../commands/read/names.ts";
import { said } from "../../commands/read/said.ts";
import type { OptionValue } from "../../commands/request.ts";
import { type Flags, isFlag, NO_FLAGS, takesWord, withFlag } from "./flags.ts";
import { type FileReader, typedValue } from "./option-value.ts";

export type Question = {
  readonly command: Command;
  readonly subcommand: string | null;
  readonly options: Readonly<Record<string, OptionValue>>;
  readonly flags: Flags;
};

/** What the words are read against. */
export type Grammar = {
  readonly commands: readonly Command[];
  readonly readFile: FileReader;
};

/**
 * A question from its words.
 *
 * @param words - as a shell parts them
 * @param defaults - flags that hold where the words do not say otherwise
 * @throws AskError naming the word at fault and the nearest that would be right
 */
export function parseQuestion(words: readonly string[], grammar: Grammar, defaults = NO_FLAGS): Question {
  const reader = new LineReader(words, grammar, defaults);
  return reader.question();
}

/**
 * Flags alone, without a command: what may stand beside `--lines`.
 *
 * @throws AskError for any other word
 */
export function parseFlags(words: readonly string[]): Flags {
  let flags = NO_FLAGS;
  const given = new Set<string>();
  for (let at = 0; at < words.length; at++) {
    const { name, inline } = optionWord(words[at] ?? "") ?? {};
    if (name === undefined || !isFlag(name)) {
      throw new AskError(
        "beside-lines",
        name ?? null,
        `“${said(words[at] ?? "")}” cannot stand beside --lines: only general flags can; questions come one a line.`,
      );
    }
    const value = takesWord(name) ? (inline ?? words[++at]) : "";
    if (value === undefined) throw missingValue(name);
    flags = withFlag(flags, given, name, value);
  }
  return flags;
}

class LineReader {
  readonly #words: readonly string[];
  readonly #grammar: Grammar;
  readonly #given = new Set<string>();
  #at = 0;
  #flags: Flags;
  #command: Command | null = null;
  #subcommand: APIApplicationCommandSubcommandOption | null = null;
  readonly #options: Record<string, OptionValue> = {};

  constructor(words: readonly string[], grammar: Grammar, defaults: Flags) {
    this.#words = words;
    this.#grammar = grammar;
    this.#flags = defaults;
  }

  question(): Question {
    for (; this.#at < this.#words.length; this.#at++) {
      const word = this.#words[this.#at] ?? "";
      const option = optionWord(word);
      if (option === null) this.#bareWord(word);
      else if (isFlag(option.name)) this.#flag(option.name, option.inline);
      else this.#option(option.name, option.inline);
    }
    const command = this.#command;
    if (command === null) throw this.#noCommand();
    const options = this.#optionsNow();
    this.#takeNightFlags(command, options);
    this.#refuseMissing(command, options);
    return {
      command,
      subcommand: this.#subcommand?.name ?? null,
      options: this.#options,
      flags: this.#flags,
    };
  }

  #bareWord(word: string): void {
    if (this.#command === null) {
      this.#command = commandNamed(word, this.#grammar.commands);
      return;
    }
    const subcommands = subcommandsOf(this.#command);
    if (subcommands.length > 0 && this.#subcommand === null) {
      const name = this.#command.definition.name;
      const found = subcommands.find((subcommand) => subcommand.name === word.toLowerCase());
      if (!found) throw unknownSubcommand(name, word, subcommands);
      this.#subcommand = found;
      return;
    }
    const needed = this.#optionsNow().find((option) => option.required && !(option.name in this.#options));
    const hint = needed ? ` Did you mean --${needed.name} ${quoted(word)}?` : "";
    throw new AskError(
      "stray-word",
      null,
      `“${said(word)}” stands alone: options are written --name value.${hint}`,
    );
  }

  #flag(name: keyof Flags, inline: string | undefined): void {
    if (name === "lines") {
      throw new AskError(
        "lines-within",
        "lines",
        "“lines” reads questions from standard input: it stands without a command.",
      );
    }
    const value = takesWord(name) ? (inline ?? this.#words[++this.#at]) : "";
    if (value === undefined) throw missingValue(name);
    this.#flags = withFlag(this.#flags, this.#given, name, value);
  }

  #option(name: string, inline: string | undefined): void {
    if (this.#command === null) {
      throw new AskError(
        "option-first",
        name,
        `“${said(name)}” stands before a command: name the command first.`,
      );
    }
    const options = this.#optionsNow();
    const definition = options.find((option) => option.name === name);
    if (!definition) throw unknownOption(this.#asked(this.#command), name, options);
    if (name in this.#options)
      throw new AskError("given-twice", name, `“${name}” is given twice: once is enough.`);
    this.#options[name] = this.#valueFor(definition, inline);
  }

  #valueFor(definition: APIApplicationCommandBasicOption, inline: string | undefined): OptionValue {
    if (definition.type === ApplicationCommandOptionType.Boolean && inline === undefined) {
      const next = this.#words[this.#at + 1]?.toLowerCase();
      if (next === "true" || next === "false" || next === "yes" || next === "no") {
        this.#at++;
        return next === "true" || next === "yes";
      }
      return true;
    }
    const word = inline ?? this.#words[++this.#at];
    if (word === undefined) throw missingValue(definition.name);
    return typedValue(definition, word, this.#grammar.readFile);
  }

  /** `--night` and `--nights` are the command's own: beside one that lacks them they are refused. */
  #takeNightFlags(command: Command, options: readonly APIApplicationCommandBasicOption[]): void {
    for (const name of ["night", "nights"] as const) {
      const word = this.#flags[name];
      if (word === null) continue;
      const definition = options.find((option) => option.name === name);
      if (definition) this.#options[name] = typedValue(definition, word, this.#grammar.readFile);
      else if (this.#given.has(name)) throw unknownOption(this.#asked(command), name, options);
    }
  }

  #refuseMissing(command: Command, options: readonly APIApplicationCommandBasicOption[]): void {
    const missing = options.find((option) => option.required && !(option.name in this.#options));
    if (!missing) return;
    throw new AskError(
      "missing-option",
      missing.name,
      `“${missing.name}” is missing: ${command.definition.name} needs --${missing.name} (${missing.description}).`,
    );
  }

  /** The options that may be given now; settles on the default subcommand when none was named. */
  #optionsNow(): readonly APIApplicationCommandBasicOption[] {
    const command = this.#command;
    if (command === null) return [];
    const subcommands = subcommandsOf(command);
    if (subcommands.length === 0) return command.definition.options.filter(isBasic);
    this.#subcommand ??=
      subcommands.find(({ name }) => name === command.definition.defaultSubcommand) ?? null;
    if (this.#subcommand === null) {
      const names = subcommands.map(({ name }) => name);
      throw new AskError(
        "no-subcommand",
        null,
        `“${command.definition.name}” needs one of: ${names.join(", ")}.`,
      );
    }
    return this.#subcommand.options ?? [];
  }

  /** `site list`: the command as it was asked. */
  #asked({ definition }: Command): string {
    return this.#subcommand === null ? definition.name : `${definition.name} ${this.#subcommand.name}`;
  }

  #noCommand(): AskError {
    const names = this.#grammar.commands.map(({ definition }) => definition.name);
    return new AskError("no-command", null, `Name a command: ${names.join(", ")}.`);
  }
}

/**
 * The command called so, whatever its case.
 *
 * @throws AskError naming the nearest
 */
export function commandNamed(word: string, commands: readonly Command[]): Command {
  const found = commands.find(({ definition }) => definition.name === word.toLowerCase());
  if (found) return found;
  const nearest = nearestNames(
    word,
    commands.map(({ definition }) => definition.name),
  ).join(", ");
  throw new AskError(
    "unknown-command",
    null,
    `There is no command “${said(word)}”. The nearest are: ${nearest}; “help” lists them all.`,
  );
}

/** The subcommands of a command; empty for one without. */
export function subcommandsOf(command: Command): readonly APIApplicationCommandSubcommandOption[] {
  return command.definition.options.filter(
    (option): option is APIApplicationCommandSubcommandOption =>
      option.type === ApplicationCommandOptionType.Subcommand,
  );
}

/** Whether an option takes a value rather than being a subcommand. */
export function isBasic(option: APIApplicationCommandOption): option is APIApplicationCommandBasicOption {
  return (
    option.type !== ApplicationCommandOptionType.Subcommand &&
    option.type !== ApplicationCommandOptionType.SubcommandGroup
  );
}

/** A word for a shell: quoted when it holds a space or anything a shell would read. */
export function quoted(word: string): string {
  return /^[\w.,:/+@%=-]+$/.test(word) ? word : `"${word.replace(/["\\$`]/g, "\\$&")}"`;
}

/** `--name` or `--name=value`; telephones turn two dashes into a long one. */
function optionWord(word: string): { readonly name: string; readonly inline?: string } | null {
  const parts = /^(?:--|—)([^\s=]+)(?:=(.*))?$/su.exec(word);
  if (!parts) return null;
  const name = (parts[1] ?? "").toLowerCase();
  return parts[2] === undefined ? { name } : { name, inline: parts[2] };
}

function missingValue(name: string): AskError {
  return new AskError("no-value", name, `“${name}” needs a value after it.`);
}

function unknownOption(
  asked: string,
  name: string,
  options: readonly APIApplicationCommandBasicOption[],
): AskError {
  const names = options.map((option) => option.name);
  const hint =
    names.length === 0
      ? "It takes no options."
      : `The nearest are: ${nearestNames(name, names)
          .map((near) => `--${near}`)
          .join(", ")}.`;
  return new AskError("unknown-option", name, `“${said(name)}” is no option of ${asked}. ${hint}`);
}

function unknownSubcommand(
  command: string,
  word: string,
  subcommands: readonly APIApplicationCommandSubcommandOption[],
): AskError {
  const names = subcommands.map(({ name }) => name);
  const nearest = nearestNames(word, names).join(", ");
  return new AskError(
    "unknown-subcommand",
    null,
    `${command} has no “${said(word)}”. The nearest are: ${nearest}.`,
  );
}
