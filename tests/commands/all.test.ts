import { readdirSync } from "node:fs";
import { join } from "node:path";
import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandOption,
  ApplicationCommandOptionType,
} from "discord-api-types/v10";
import { describe, expect, it } from "vitest";
import { isBasic, subcommandsOf } from "../../bot/console/command-line.ts";
import { NO_FLAGS } from "../../bot/console/flags.ts";
import { COMMANDS } from "../../commands/all.ts";
import type { Command } from "../../commands/command.ts";

// Discord's documentation, "Application Commands": name pattern, lengths and counts.
const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;
const DESCRIPTION_LENGTH = 100;
const OPTIONS_AT_MOST = 25;
const CHOICES_AT_MOST = 25;
const CHARACTERS_AT_MOST = 8000;

/** Flags of the console that a command may have an option for as well. */
const SHARED_WITH_FLAGS = new Set(["night", "nights", "at"]);

/** The lists of options that stand beside each other. */
function optionLists(command: Command): readonly (readonly APIApplicationCommandOption[])[] {
  const { definition } = command;
  return [definition.options, ...subcommandsOf(command).map(({ options }) => options ?? [])];
}

function characters(value: unknown): number {
  if (Array.isArray(value)) return value.reduce((sum: number, part) => sum + characters(part), 0);
  if (typeof value !== "object" || value === null) return 0;
  return Object.entries(value).reduce((sum, [key, part]) => {
    const counts = typeof part === "string" && ["name", "description", "value"].includes(key);
    return sum + (counts ? part.length : characters(part));
  }, 0);
}

describe("COMMANDS", () => {
  it("lists every command of the folder once", async () => {
    const folder = join(import.meta.dirname, "../../commands");
    const files = readdirSync(folder).filter((name) => name.endsWith(".ts"));
    const found: Command[] = [];
    for (const file of files) {
      const module: Record<string, unknown> = await import(join(folder, file));
      found.push(...Object.values(module).filter(isCommand));
    }
    expect(names(found)).toEqual(names(COMMANDS));
  });

  it.each(COMMANDS.map((command) => [command.definition.name, command] as const))(
    "/%s keeps within what Discord takes",
    (_, command) => {
      expect(command.definition.name).toMatch(NAME);
      expect(command.definition.name).toBe(command.definition.name.toLowerCase());
      expect(command.definition.description.length).toBeLessThanOrEqual(DESCRIPTION_LENGTH);
      expect(characters(command.definition)).toBeLessThanOrEqual(CHARACTERS_AT_MOST);
      for (const options of optionLists(command)) {
        expect(options.length).toBeLessThanOrEqual(OPTIONS_AT_MOST);
        expect(new Set(options.map(({ name }) => name)).size).toBe(options.length);
        const needed = options.map((option) => ("required" in option ? option.required === true : false));
        expect(needed).toEqual([...needed].sort((one, other) => Number(other) - Number(one)));
        for (const option of options) {
          expect(option.name).toMatch(NAME);
          expect(option.name).toBe(option.name.toLowerCase());
          expect(option.description.length, option.name).toBeGreaterThan(0);
          expect(option.description.length, option.name).toBeLessThanOrEqual(DESCRIPTION_LENGTH);
          if ("choices" in option) expect(option.choices?.length ?? 0).toBeLessThanOrEqual(CHOICES_AT_MOST);
        }
      }
    },
  );

  it.each(COMMANDS.map((command) => [command.definition.name, command] as const))(
    "/%s has either subcommands or options, and a default that exists",
    (_, command) => {
      const subcommands = subcommandsOf(command);
      const groups = command.definition.options.filter(
        ({ type }) => type === ApplicationCommandOptionType.SubcommandGroup,
      );
      expect(groups).toEqual([]);
      if (subcommands.length > 0) expect(command.definition.options).toHaveLength(subcommands.length);
      const { defaultSubcommand } = command.definition;
      if (defaultSubcommand !== undefined) {
        expect(subcommands.map(({ name }) => name)).toContain(defaultSubcommand);
      }
    },
  );

  it("has no option that the console would take for a flag of its own", () => {
    const taken = COMMANDS.flatMap((command) => optionLists(command).flat())
      .filter((option): option is APIApplicationCommandBasicOption => isBasic(option))
      .map(({ name }) => name)
      .filter((name) => name in NO_FLAGS && !SHARED_WITH_FLAGS.has(name));
    expect(taken).toEqual([]);
  });
});

function names(commands: readonly Command[]): string[] {
  return commands.map(({ definition }) => definition.name).sort();
}

function isCommand(value: unknown): value is Command {
  return typeof value === "object" && value !== null && "definition" in value && "answer" in value;
}
