/**
 * A word of the command line as its option's definition wants it.
 *
 * @packageDocumentation
 */
import { type APIApplicationCommandBasicOption, ApplicationCommandOptionType } from "discord-api-types/v10";
import { AskError } from "../../commands/ask-error.ts";
import { nearestNames } from "../../commands/read/names.ts";
import { plainNumber } from "../../commands/read/numbers.ts";
import { said } from "../../commands/read/said.ts";
import type { OptionValue, SentFile } from "../../commands/request.ts";

/** Reads a file that a member sends with the question. */
export type FileReader = (option: string, path: string) => SentFile;

/**
 * The word as text, number, yes or no, or file.
 *
 * @throws AskError naming the option and what would be right
 */
export function typedValue(
  definition: APIApplicationCommandBasicOption,
  word: string,
  readFile: FileReader,
): OptionValue {
  const { name } = definition;
  if (word.trim() === "") throw new AskError("empty", name, `“${name}” is empty: it needs a value.`);
  switch (definition.type) {
    case ApplicationCommandOptionType.String: {
      const least = "min_length" in definition ? definition.min_length : undefined;
      const most = "max_length" in definition ? definition.max_length : undefined;
      refuseLength(name, word, least ?? 0, most ?? Number.POSITIVE_INFINITY);
      return amongChoices(name, word, definition.choices);
    }
    case ApplicationCommandOptionType.Integer:
    case ApplicationCommandOptionType.Number: {
      const whole = definition.type === ApplicationCommandOptionType.Integer;
      const number = plainNumber(word);
      if (number === null || !Number.isFinite(number) || (whole && !Number.isSafeInteger(number))) {
        throw new AskError(
          "not-a-number",
          name,
          `“${name}” needs a ${whole ? "whole number" : "number"}, not “${said(word)}”.`,
        );
      }
      const least = "min_value" in definition ? definition.min_value : undefined;
      const most = "max_value" in definition ? definition.max_value : undefined;
      if ((least !== undefined && number < least) || (most !== undefined && number > most)) {
        throw new AskError(
          "out-of-range",
          name,
          `${number} is out of range: “${name}” must be ${boundsWords(least, most)}.`,
        );
      }
      return amongChoices(name, number, definition.choices);
    }
    case ApplicationCommandOptionType.Boolean: {
      const said = word.trim().toLowerCase();
      if (said === "true" || said === "yes") return true;
      if (said === "false" || said === "no") return false;
      throw new AskError("not-yes-or-no", name, `“${name}” needs yes or no (or stands alone for yes).`);
    }
    case ApplicationCommandOptionType.Attachment:
      return readFile(name, word);
    case ApplicationCommandOptionType.User:
    case ApplicationCommandOptionType.Channel:
    case ApplicationCommandOptionType.Role:
    case ApplicationCommandOptionType.Mentionable: {
      // In Discord these are picked from a list and arrive as ids.
      const id = word.trim().replace(/^<(?:#|@&?!?)(\d+)>$/, "$1");
      if (/^\d{15,21}$/.test(id)) return id;
      throw new AskError("not-an-id", name, `“${name}” needs a Discord id, digits alone.`);
    }
  }
}

type Choice = { readonly name: string; readonly value: string | number };

function amongChoices<Value extends string | number>(
  name: string,
  value: Value,
  choices: readonly Choice[] | undefined,
): Value | string | number {
  if (choices === undefined || choices.length === 0) return value;
  const said = String(value).trim().toLowerCase();
  const found = choices.find(
    (choice) => String(choice.value).toLowerCase() === said || choice.name.toLowerCase() === said,
  );
  if (found) return found.value;
  const names = choices.map((choice) => String(choice.value));
  const offered = names.length <= 8 ? names : nearestNames(said, names);
  throw new AskError("not-a-choice", name, `“${name}” must be one of: ${offered.join(", ")}.`);
}

function refuseLength(name: string, word: string, least: number, most: number): void {
  const length = [...word].length;
  if (length >= least && length <= most) return;
  const range = least > 0 ? `${least} to ${most}` : `at most ${most}`;
  throw new AskError("wrong-length", name, `“${name}” has ${length} characters: it takes ${range}.`);
}

function boundsWords(least: number | undefined, most: number | undefined): string {
  if (least !== undefined && most !== undefined) return `from ${least} to ${most}`;
  return least !== undefined ? `at least ${least}` : `at most ${most}`;
}
