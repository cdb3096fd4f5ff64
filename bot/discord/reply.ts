/**
 * Replying to an interaction that was deferred: an answer, a refusal, a failure.
 *
 * A refusal is always the asker's alone, also where the answer would be for all.
 *
 * @packageDocumentation
 */
import { randomBytes } from "node:crypto";
import {
  type APIEmbed,
  AttachmentBuilder,
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  DiscordAPIError,
  MessageFlags,
} from "discord.js";
import type { Answer } from "../../commands/answer.ts";
import { AskError, WorldError } from "../../commands/ask-error.ts";
import type { Request } from "../../commands/request.ts";
import { CONTENT_LENGTH } from "../../config/discord-limits.ts";
import { SHAREABLE_COMMANDS } from "../../config/shared-answers.ts";
import { rowButtonId } from "./button-ids.ts";
import type { DoorWorld } from "./door-world.ts";
import { askedQuestion, followUpQuestion } from "./kept-questions.ts";
import { messageFiles } from "./message-files.ts";
import { escaped, shortened } from "./plain-text.ts";
import {
  type Beside,
  type MessageWords,
  NOTHING_BESIDE,
  renderAnswer,
  type ShownButton,
} from "./render-answer.ts";

export type Deferred = ChatInputCommandInteraction | ButtonInteraction;

/** Buttons for follow-ups; with the share button they fill four rows of five. */
const FOLLOW_UPS_AT_MOST = 19;
const SHARE_LABEL = "Show it to everyone here";

/** A message's words and files as discord.js takes them. */
export type OutgoingMessage = {
  readonly content: string;
  readonly embeds: APIEmbed[];
  readonly components: MessageWords["components"][number][];
  readonly allowedMentions: { readonly parse: []; readonly users: string[] };
  readonly files: AttachmentBuilder[];
};

/** An answer made ready to send, charts drawn. */
export async function outgoing(answer: Answer, beside: Beside, world: DoorWorld): Promise<OutgoingMessage> {
  const { files, remarks } = await messageFiles(answer, world.draw);
  const words = renderAnswer(answer, { ...beside, remarks: [...beside.remarks, ...remarks] });
  return {
    content: words.content,
    embeds: [...words.embeds],
    components: [...words.components],
    allowedMentions: { parse: [], users: [...words.allowed_mentions.users] },
    files: files.map(
      ({ name, bytes, description }) =>
        new AttachmentBuilder(Buffer.from(bytes), description === null ? { name } : { name, description }),
    ),
  };
}

/** Attempts at filling a deferred reply: it may be repeated, since it fills the same one. */
const FILL_ATTEMPTS = 3;

/** Fills the deferred reply, again when a connection broke before anything was heard. */
export async function fillReply(
  interaction: Deferred,
  message: OutgoingMessage | PlainMessage,
): Promise<void> {
  for (let attempt = 1; ; attempt++) {
    try {
      await interaction.editReply(message);
      return;
    } catch (fault) {
      if (fault instanceof DiscordAPIError || attempt === FILL_ATTEMPTS) throw fault;
    }
  }
}

/** A sentence and nothing else. */
type PlainMessage = {
  readonly content: string;
  readonly embeds: [];
  readonly components: [];
  readonly allowedMentions: { readonly parse: [] };
};

/** Shows an answer in place of the deferred reply, with its follow-ups and, where it may be, the share button. */
export async function showAnswer(
  interaction: Deferred,
  answer: Answer,
  request: Request,
  isPrivate: boolean,
  world: DoorWorld,
): Promise<void> {
  const buttons = await keepButtons(answer, request, isPrivate, world);
  await fillReply(interaction, await outgoing(answer, { ...NOTHING_BESIDE, buttons }, world));
}

async function keepButtons(
  answer: Answer,
  request: Request,
  isPrivate: boolean,
  world: DoorWorld,
): Promise<readonly ShownButton[]> {
  const ownerId = request.member.id;
  const next = answer.next
    .filter(({ command }) => world.commands.has(command))
    .slice(0, FOLLOW_UPS_AT_MOST)
    .map((one) => ({ label: one.label, kind: "next" as const, question: followUpQuestion(one, null) }));
  const mayBeShared =
    isPrivate && SHAREABLE_COMMANDS.has(request.command) && (answer.attachments ?? []).length === 0;
  const share = mayBeShared
    ? [{ label: SHARE_LABEL, kind: "share" as const, question: askedQuestion(request) }]
    : [];
  const wanted = [...next, ...share];
  const rows = wanted.map(({ kind, question }) => ({ ownerId, kind, question }));
  const ids = await world.buttons.keep(request.club, rows, world.clock());
  return wanted.map(({ label, kind, question }, index) => ({
    id: rowButtonId(kind, ids[index] ?? "", question.command),
    label,
    primary: false,
  }));
}

/** One sentence to the asker alone, in place of a reply that was deferred privately or for all. */
export async function sayPrivately(
  interaction: Deferred,
  sentence: string,
  isPrivate: boolean,
): Promise<void> {
  const content = shortened(escaped(sentence), CONTENT_LENGTH);
  const words: PlainMessage = { content, embeds: [], components: [], allowedMentions: { parse: [] } };
  if (isPrivate) return fillReply(interaction, words);
  // What was deferred for all can only be filled for all: it is taken away, and said anew in private.
  await interaction.deleteReply();
  await interaction.followUp({ ...words, flags: MessageFlags.Ephemeral });
}

/** Tells the asker what went wrong; what is our fault is logged whole under a number. */
export async function showFault(
  interaction: Deferred,
  fault: unknown,
  isPrivate: boolean,
  world: DoorWorld,
): Promise<void> {
  await sayPrivately(interaction, faultSentence(fault, world), isPrivate);
}

/** What the asker is told; anything but a mistake or a failing world goes to the log under a number. */
export function faultSentence(fault: unknown, world: Pick<DoorWorld, "log">): string {
  if (fault instanceof AskError || fault instanceof WorldError) return fault.message;
  const incident = randomBytes(3).toString("hex");
  world.log(
    `incident ${incident}: ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}`,
  );
  return `Something went wrong here. Those who run this bot find it in the log as incident ${incident}.`;
}
