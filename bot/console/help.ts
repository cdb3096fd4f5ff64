/**
 * What can be asked: all commands, or one with its options.
 *
 * @packageDocumentation
 */
import type { APIApplicationCommandBasicOption } from "discord-api-types/v10";
import type { Command } from "../../commands/command.ts";
import { commandNamed, isBasic, subcommandsOf } from "./command-line.ts";
import { tableLines, wrap } from "./wrap.ts";

const HELP_FLAGS: readonly string[] = ["--help", "-h"];

/**
 * The help that a question asks for: `help`, `help COMMAND`, `--help`, `COMMAND --help`.
 *
 * @returns `null` for any other question
 * @throws AskError when there is no such command
 */
export function helpAsked(
  words: readonly string[],
  commands: readonly Command[],
  width: number,
): string | null {
  const [first, second, ...more] = words;
  if (first === undefined || more.length > 0) return null;
  const asksFirst = first === "help" || HELP_FLAGS.includes(first);
  if (asksFirst && second === undefined) return helpText(commands, width);
  if (asksFirst && second !== undefined) return commandHelpText(commandNamed(second, commands), width);
  const asksLast = second !== undefined && HELP_FLAGS.includes(second);
  return asksLast ? commandHelpText(commandNamed(first, commands), width) : null;
}

/** Every command with a line of its own. */
function helpText(commands: readonly Command[], width: number): string {
  const rows = commands.map(({ definition }) => [definition.name, definition.description]);
  return [
    ...tableLines({ columns: ["ask", "for"], rows }, width),
    "",
    ...wrap("help COMMAND lists its options; quit ends. Options are written --name value.", width),
    "",
  ].join("\n");
}

/** One command with its options. */
function commandHelpText(command: Command, width: number): string {
  const { definition } = command;
  const subcommands = subcommandsOf(command);
  const blocks =
    subcommands.length === 0
      ? [optionLines(definition.options.filter(isBasic), width)]
      : subcommands.map(({ name, description, options }) => [
          ...wrap(`${definition.name} ${name}: ${description}`, width),
          ...optionLines(options ?? [], width),
        ]);
  return `${[[definition.description], ...blocks].map((block) => block.join("\n")).join("\n\n")}\n`;
}

function optionLines(options: readonly APIApplicationCommandBasicOption[], width: number): string[] {
  if (options.length === 0) return ["  (no options)"];
  const rows = options.map(({ name, description, required }) => [
    `  --${name}`,
    required ? `${description} (needed)` : description,
  ]);
  return tableLines({ columns: [], rows }, width);
}
