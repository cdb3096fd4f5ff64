/**
 * A pressed button: a follow-up question, a share, or going out tonight.
 *
 * @packageDocumentation
 */
import { type ButtonInteraction, MessageFlags } from "discord.js";
import { AskError } from "../../commands/ask-error.ts";
import type { AnswerButton } from "../store/answer-buttons.ts";
import { askerOf } from "./asker.ts";
import { type ButtonMeaning, buttonMeaning } from "./button-ids.ts";
import { inClubUnits } from "./club-units.ts";
import type { DoorWorld } from "./door-world.ts";
import { keptRequest } from "./kept-questions.ts";
import { NOTHING_BESIDE } from "./render-answer.ts";
import { outgoing, sayPrivately, showAnswer, showFault } from "./reply.ts";
import { withoutCoordinates } from "./without-coordinates.ts";

/** Whatever a button does, its reply is the presser's alone. */
export async function pressButton(interaction: ButtonInteraction, world: DoorWorld): Promise<void> {
  await interaction.deferReply({ flags: MessageFlags.Ephemeral });
  const meaning = buttonMeaning(interaction.customId);
  const club = interaction.guildId;
  try {
    if (meaning === null || club === null) {
      await sayPrivately(interaction, "That button is from an older version of me: ask again.", true);
    } else if (meaning.kind === "going-out") {
      await pressGoingOut(interaction, meaning, club, world);
    } else {
      await pressRow(interaction, meaning, club, world);
    }
  } catch (fault) {
    await showFault(interaction, fault, true, world);
  }
}

async function pressRow(
  interaction: ButtonInteraction,
  { id, command }: Extract<ButtonMeaning, { kind: "row" }>,
  club: string,
  world: DoorWorld,
): Promise<void> {
  const button = await world.buttons.find(club, id);
  if (button === null) {
    return sayPrivately(
      interaction,
      `That button has had its time (30 days): ask again with /${command}.`,
      true,
    );
  }
  if (button.ownerId !== null && button.ownerId !== interaction.user.id) {
    const sentence = `That button belongs to whoever asked: ask for yourself with /${command}.`;
    return sayPrivately(interaction, sentence, true);
  }
  return button.kind === "share"
    ? shareAnswer(interaction, button, club, world)
    : askKept(interaction, button, club, world);
}

/** The kept question, asked by whoever pressed. */
async function kept(interaction: ButtonInteraction, button: AnswerButton, club: string, world: DoorWorld) {
  const command = world.commands.get(button.question.command);
  if (command === undefined) {
    throw new AskError("out-of-date", null, "I no longer know the command behind that button: ask again.");
  }
  const context = world.contextFor(club);
  const settings = await context.books.clubs.settings(club);
  const asker = askerOf(interaction, settings.organiserRoleId);
  const request = keptRequest(button.question, asker, club, world.clock());
  return { request, answer: inClubUnits(await command.answer(request, context), request, settings) };
}

async function askKept(
  interaction: ButtonInteraction,
  button: AnswerButton,
  club: string,
  world: DoorWorld,
): Promise<void> {
  const { request, answer } = await kept(interaction, button, club, world);
  world.completions.forget(club);
  await showAnswer(interaction, answer, request, true, world);
}

/** Shows everyone what the owner saw, without where the site lies. */
async function shareAnswer(
  interaction: ButtonInteraction,
  button: AnswerButton,
  club: string,
  world: DoorWorld,
): Promise<void> {
  const { request, answer } = await kept(interaction, button, club, world);
  const remarks = [`Shown by ${request.member.name}`];
  const message = await outgoing(withoutCoordinates(answer), { ...NOTHING_BESIDE, remarks }, world);
  // The first follow-up fills the private reply; only the one after it can be for all.
  await sayPrivately(interaction, "Shown below, without where your site lies.", true);
  await interaction.followUp(message);
}

const GOING_OUT_WORDS = {
  going:
    "You are down as going out. Press again if you change your mind; if the forecast turns, I tell you here.",
  "not-going": "Your name is off the list again.",
  over: "That night is over.",
  unknown: "I know nothing of that post any more.",
} as const;

async function pressGoingOut(
  interaction: ButtonInteraction,
  { night }: Extract<ButtonMeaning, { kind: "going-out" }>,
  club: string,
  world: DoorWorld,
): Promise<void> {
  const { id, name } = askerOf(interaction, null);
  const outcome = await world.goingOut.press({ club, night, person: { id, name } });
  await sayPrivately(interaction, GOING_OUT_WORDS[outcome], true);
}
