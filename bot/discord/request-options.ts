/**
 * What Discord delivers as options, checked against the command's definition once more.
 *
 * Discord checks too, but an old registration, another client or an unfinished
 * completion may send anything.
 *
 * @packageDocumentation
 */

import type { CommandInteractionOption } from "discord.js";
import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandOption,
  ApplicationCommandOptionType,
} from "discord-api-types/v10";
import { AskError } from "../../commands/ask-error.ts";
import type { CommandDefinition } from "../../commands/command.ts";
import type { OptionValue, SentFile } from "../../commands/request.ts";
import type { FileNotice } from "./sent-files.ts";

/** The most characters Discord lets a text option have. */
const TEXT_LENGTH = 6000;

export type GivenOptions = {
  readonly subcommand: string | null;
  readonly given: readonly CommandInteractionOption[];
};

/** The subcommand and its options, out of Discord's nesting. */
export function givenOptions(data: readonly CommandInteractionOption[]): GivenOptions {
  const first = data[0];
  if (first?.type === ApplicationCommandOptionType.Subcommand) {
    return { subcommand: first.name, given: first.options ?? [] };
  }
  return { subcommand: null, given: data };
}

/** The options that a command, or one of its subcommands, defines. */
export function definedOptions(
  definition: CommandDefinition,
  subcommand: string | null,
): readonly APIApplicationCommandBasicOption[] {
  const within = subcommand === null ? definition.options : subcommandOptions(definition, subcommand);
  return within.flatMap((option) =>
    option.type === ApplicationCommandOptionType.Subcommand ||
    option.type === ApplicationCommandOptionType.SubcommandGroup
      ? []
      : [option],
  );
}

function subcommandOptions(
  definition: CommandDefinition,
  name: string,
): readonly APIApplicationCommandOption[] {
  const found = definition.options.find((option) => option.name === name);
  if (found?.type !== ApplicationCommandOptionType.Subcommand) throw outOfDate(name);
  return found.options ?? [];
}

export type FetchFile = (option: string, file: FileNotice) => Promise<SentFile>;

/**
 * Every option with its value.
 *
 * @throws AskError naming the option and what would be right
 */
export async function optionValues(
  definition: CommandDefinition,
  { subcommand, given }: GivenOptions,
  fetchFile: FetchFile,
): Promise<Readonly<Record<string, OptionValue>>> {
  const defined = definedOptions(definition, subcommand);
  const values: Record<string, OptionValue> = {};
  for (const option of given) {
    const known = defined.find(({ name }) => name === option.name);
    if (known === undefined || known.type !== option.type) throw outOfDate(option.name);
    values[option.name] = await readValue(known, option, fetchFile);
  }
  return values;
}

async function readValue(
  defined: APIApplicationCommandBasicOption,
  option: CommandInteractionOption,
  fetchFile: FetchFile,
): Promise<OptionValue> {
  const { name } = defined;
  if (defined.type === ApplicationCommandOptionType.Attachment) {
    if (option.attachment === undefined) throw outOfDate(name);
    const { name: fileName, size, url, contentType } = option.attachment;
    return fetchFile(name, { name: fileName, size, url, contentType });
  }
  const { value } = option;
  if (value === undefined) throw outOfDate(name);
  if (typeof value === "string") checkText(defined, value);
  if (typeof value === "number") checkNumber(defined, value);
  const choices = "choices" in defined ? (defined.choices ?? []) : [];
  if (choices.length > 0 && !choices.some((choice) => choice.value === value)) {
    const names = choices.map((choice) => choice.name).join(", ");
    throw new AskError("not-a-choice", name, `“${name}” must be one of: ${names}.`);
  }
  return value;
}

function checkText(defined: APIApplicationCommandBasicOption, text: string): void {
  const { name } = defined;
  if (text.trim() === "") throw new AskError("empty", name, `“${name}” is empty: it needs a value.`);
  const most = ("max_length" in defined ? defined.max_length : undefined) ?? TEXT_LENGTH;
  const least = ("min_length" in defined ? defined.min_length : undefined) ?? 0;
  if (text.length < least || text.length > most) {
    throw new AskError(
      "bad-length",
      name,
      `“${name}” has ${text.length} characters: it may have ${least} to ${most}.`,
    );
  }
}

function checkNumber(defined: APIApplicationCommandBasicOption, number: number): void {
  const { name } = defined;
  const whole = defined.type === ApplicationCommandOptionType.Integer;
  if (!Number.isFinite(number) || (whole && !Number.isSafeInteger(number))) {
    throw new AskError("not-a-number", name, `“${name}” needs a ${whole ? "whole " : ""}number.`);
  }
  const least = ("min_value" in defined ? defined.min_value : undefined) ?? Number.NEGATIVE_INFINITY;
  const most = ("max_value" in defined ? defined.max_value : undefined) ?? Number.POSITIVE_INFINITY;
  if (number < least || number > most) {
    throw new AskError("out-of-range", name, `“${name}” must be from ${least} to ${most}.`);
  }
}

function outOfDate(name: string): AskError {
  return new AskError(
    "out-of-date",
    name,
    `I do not know “${name}” here: Discord shows you an older version of this command. Type it anew in a minute.`,
  );
}
