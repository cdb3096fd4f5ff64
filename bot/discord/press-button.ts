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
import { fillReply, outgoing, sayPrivately, showAnswer, showFault } from "./reply.ts";
import { withoutCoordinates } from "./without-coordinates.ts";

/**
 * Whatever a button does, its reply is the presser's alone, save an answer shown to everyone: that
 * one is deferred for all, since filling a deferred reply may be repeated and sending one may not.
 */
export async function pressButton(interaction: ButtonInteraction, world: DoorWorld): Promise<void> {
  const meaning = buttonMeaning(interaction.customId);
  const isPrivate = meaning?.kind !== "share";
  await interaction.deferReply(isPrivate ? { flags: MessageFlags.Ephemeral } : {});
  const club = interaction.guildId;
  try {
    if (meaning === null || club === null) {
      await sayPrivately(interaction, "That button is from an older version of me: ask again.", isPrivate);
    } else if (meaning.kind === "going-out") {
      await pressGoingOut(interaction, meaning, club, world);
    } else if (meaning.kind === "session") {
      await pressSession(interaction, meaning, club, world);
    } else {
      await pressRow(interaction, meaning, club, world);
    }
  } catch (fault) {
    await showFault(interaction, fault, isPrivate, world);
  }
}

async function pressRow(
  interaction: ButtonInteraction,
  { id, kind, command }: Extract<ButtonMeaning, { kind: "next" | "share" }>,
  club: string,
  world: DoorWorld,
): Promise<void> {
  const button = await world.buttons.find(club, id);
  if (button === null || button.kind !== kind) {
    throw new AskError(
      "expired-button",
      null,
      `That button has had its time (30 days): ask again with /${command}.`,
    );
  }
  if (button.ownerId !== null && button.ownerId !== interaction.user.id) {
    throw new AskError(
      "not-yours",
      null,
      `That button belongs to whoever asked: ask for yourself with /${command}.`,
    );
  }
  return kind === "share"
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
  await fillReply(interaction, message);
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

async function pressSession(
  interaction: ButtonInteraction,
  { press }: Extract<ButtonMeaning, { kind: "session" }>,
  club: string,
  world: DoorWorld,
): Promise<void> {
  const { organiserRoleId } = await world.contextFor(club).books.clubs.settings(club);
  const { id, organiser } = askerOf(interaction, organiserRoleId);
  await sayPrivately(interaction, await world.sessions.press(club, { id, organiser }, press), true);
}
