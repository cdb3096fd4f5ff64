/**
 * Completing an option as it is typed, from memory alone.
 *
 * @packageDocumentation
 */
import type { AutocompleteInteraction } from "discord.js";
import type { Command, Completion } from "../../commands/command.ts";
import { matchKey } from "../../commands/read/names.ts";
import type { OptionValue, Request } from "../../commands/request.ts";
import { CHOICE_LENGTH, CHOICES_AT_MOST } from "../../config/discord-limits.ts";
import { askerOf } from "./asker.ts";
import type { DoorWorld } from "./door-world.ts";
import { givenOptions } from "./request-options.ts";

/** Filters that need no saving. */
const PLAIN_FILTERS: readonly string[] = ["none", "h-alpha", "o-iii", "s-ii", "h-beta"];

/** Answers a completion; one that fails shows no choices. */
export async function completeOption(interaction: AutocompleteInteraction, world: DoorWorld): Promise<void> {
  const command = world.commands.get(interaction.commandName);
  let choices: readonly Completion[] = [];
  try {
    if (command !== undefined && interaction.guildId !== null) {
      choices = await choicesFor(interaction, interaction.guildId, command, world);
    }
  } catch (fault) {
    world.log(`completion failed: ${String(fault)}`);
  }
  await interaction.respond(asDiscordTakes(choices));
}

async function choicesFor(
  interaction: AutocompleteInteraction,
  club: string,
  command: Command,
  world: DoorWorld,
): Promise<readonly Completion[]> {
  const focused = interaction.options.getFocused(true);
  const typed = String(focused.value);
  if (command.complete !== undefined) {
    const request = partialRequest(interaction, club, command, world.clock());
    const own = await command.complete(focused.name, typed, request, world.contextFor(club));
    if (own !== null) return own;
  }
  switch (focused.name) {
    case "target":
      return world.contextFor(club).catalogue.complete(typed, CHOICES_AT_MOST);
    case "site":
    case "other-site":
      return beginningWith(typed, (await world.completions.names(club, interaction.user.id)).sites);
    case "rig":
    case "other-rig":
      return beginningWith(typed, (await world.completions.names(club, interaction.user.id)).rigs);
    case "filter": {
      const { filters } = await world.completions.names(club, interaction.user.id);
      return beginningWith(typed, [...new Set([...filters, ...PLAIN_FILTERS])]);
    }
    default:
      return [];
  }
}

/** The question so far, unchecked: other options arrive half typed. */
function partialRequest(
  interaction: AutocompleteInteraction,
  club: string,
  command: Command,
  at: Date,
): Request {
  const { subcommand, given } = givenOptions(interaction.options.data);
  const options: Record<string, OptionValue> = {};
  for (const { name, value } of given) {
    if (value !== undefined) options[name] = value;
  }
  // Completion changes nothing, so nobody needs to be known as an organiser.
  const member = askerOf(interaction, null);
  return { command: command.definition.name, subcommand, options, member, club, at };
}

/** Names that begin with what was typed, then those that contain it. */
function beginningWith(typed: string, names: readonly string[]): readonly Completion[] {
  const wanted = matchKey(typed);
  const begin = names.filter((name) => matchKey(name).startsWith(wanted));
  const contain = names.filter((name) => !begin.includes(name) && matchKey(name).includes(wanted));
  return [...begin, ...contain].map((name) => ({ name, value: name }));
}

/** As many as Discord takes; a value too long to come back whole is left out. */
export function asDiscordTakes(choices: readonly Completion[]): { name: string; value: string }[] {
  return choices
    .filter(({ name, value }) => name !== "" && value !== "" && value.length <= CHOICE_LENGTH)
    .slice(0, CHOICES_AT_MOST)
    .map(({ name, value }) => ({ name: name.slice(0, CHOICE_LENGTH), value }));
}
