/**
 * A slash command, from its arrival to its answer.
 *
 * @packageDocumentation
 */
import { type ChatInputCommandInteraction, MessageFlags } from "discord.js";
import type { ClubSettings } from "../../commands/books.ts";
import type { Command } from "../../commands/command.ts";
import type { Request } from "../../commands/request.ts";
import { askerOf } from "./asker.ts";
import { inClubUnits } from "./club-units.ts";
import type { DoorWorld } from "./door-world.ts";
import { escaped } from "./plain-text.ts";
import { faultSentence, sayPrivately, showAnswer, showFault } from "./reply.ts";
import { givenOptions, optionValues } from "./request-options.ts";

const ONLY_IN_A_SERVER = "I answer inside a server: ask me in one of your club's channels.";
const UNKNOWN_COMMAND =
  "I no longer know this command: Discord shows you an older list. Type / again in a minute to see the new one.";

/** Defers, answers, and tells an organiser what is wrong with the club's post. */
export async function answerCommand(
  interaction: ChatInputCommandInteraction,
  world: DoorWorld,
): Promise<void> {
  const command = world.commands.get(interaction.commandName);
  const club = interaction.guildId;
  const isPrivate = command?.audience !== "channel" || club === null;
  await interaction.deferReply(isPrivate ? { flags: MessageFlags.Ephemeral } : {});
  if (club === null) return sayPrivately(interaction, ONLY_IN_A_SERVER, isPrivate);
  if (command === undefined) return sayPrivately(interaction, UNKNOWN_COMMAND, isPrivate);
  try {
    const context = world.contextFor(club);
    const settings = await context.books.clubs.settings(club);
    const request = await requestOf(interaction, command, club, settings, world);
    const answer = inClubUnits(await command.answer(request, context), request, settings);
    world.completions.forget(club);
    await showAnswer(interaction, answer, request, isPrivate, world);
    await tellTrouble(interaction, request, settings, world);
  } catch (fault) {
    await showFault(interaction, fault, isPrivate, world);
  }
}

async function requestOf(
  interaction: ChatInputCommandInteraction,
  command: Command,
  club: string,
  settings: ClubSettings,
  world: DoorWorld,
): Promise<Request> {
  const given = givenOptions(interaction.options.data);
  return {
    command: command.definition.name,
    subcommand: given.subcommand,
    options: await optionValues(command.definition, given, world.fetchFile),
    member: askerOf(interaction, settings.organiserRoleId),
    club,
    at: world.clock(),
  };
}

/** Once, at an organiser's next command, in private. */
async function tellTrouble(
  interaction: ChatInputCommandInteraction,
  request: Request,
  settings: ClubSettings,
  world: DoorWorld,
): Promise<void> {
  if (settings.trouble === null || settings.troubleTold || !request.member.organiser) return;
  try {
    const content = escaped(settings.trouble);
    await interaction.followUp({ content, flags: MessageFlags.Ephemeral, allowedMentions: { parse: [] } });
    await world.contextFor(request.club).books.clubs.change(request.club, { troubleTold: true });
  } catch (fault) {
    // The answer itself has arrived; the trouble is told at the next command.
    faultSentence(fault, world);
  }
}
