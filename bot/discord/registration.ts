/**
 * Telling Discord our commands: only when what it has differs from what we have.
 *
 * @packageDocumentation
 */
import { isDeepStrictEqual } from "node:util";
import { type REST, Routes } from "discord.js";
import type { Command } from "../../commands/command.ts";

type Json = Readonly<Record<string, unknown>>;

/** Only inside a server, and only installed to one. */
const IN_A_SERVER = { contexts: [0], integration_types: [0] } as const;

/** The commands as Discord takes them. */
export function registrationOf(commands: readonly Command[]): readonly Json[] {
  return commands.map(({ definition: { name, description, options } }) => ({
    type: 1,
    name,
    description,
    options,
    ...IN_A_SERVER,
  }));
}

/** What makes a difference; ids, versions and the rest that Discord adds do not. */
const COMMAND_KEYS = ["name", "description", "options", "contexts", "integration_types"] as const;
const OPTION_KEYS = [
  "type",
  "name",
  "description",
  "required",
  "choices",
  "options",
  "autocomplete",
  "min_value",
  "max_value",
  "min_length",
  "max_length",
  "channel_types",
] as const;

/** The commands in one form, whoever wrote them: defaults dropped, keys and commands in order. */
export function normalised(commands: readonly Json[]): readonly Json[] {
  return commands
    .map((command) => pick(command, COMMAND_KEYS))
    .sort((one, other) => (String(one.name) < String(other.name) ? -1 : 1));
}

function pick(item: Json, keys: readonly string[]): Json {
  const kept: Record<string, unknown> = {};
  for (const key of keys) {
    const value = item[key];
    if (value === undefined || value === null || value === false) continue;
    if (Array.isArray(value) && value.length === 0) continue;
    if (key === "options") kept[key] = (value as Json[]).map((option) => pick(option, OPTION_KEYS));
    else if (key === "choices")
      kept[key] = (value as Json[]).map(({ name, value: is }) => ({ name, value: is }));
    else if (Array.isArray(value)) kept[key] = [...value].sort();
    else kept[key] = value;
  }
  return kept;
}

/**
 * Registers the commands where Discord's list differs.
 *
 * @param guild - one server's id; `null` for all servers
 * @returns whether anything had to be written: one PUT with all of them
 */
export async function registerCommands(
  rest: REST,
  applicationId: string,
  guild: string | null,
  commands: readonly Command[],
): Promise<boolean> {
  const route =
    guild === null
      ? Routes.applicationCommands(applicationId)
      : Routes.applicationGuildCommands(applicationId, guild);
  const wanted = registrationOf(commands);
  const there = (await rest.get(route)) as Json[];
  if (isDeepStrictEqual(normalised(there), normalised(wanted))) return false;
  await rest.put(route, { body: wanted });
  return true;
}
