/**
 * Interactions: three seconds to acknowledge, fifteen minutes to follow up.
 *
 * @packageDocumentation
 */
import {
  alreadyAcknowledged,
  invalidForm,
  unknownInteraction,
  unknownMessage,
  unknownWebhook,
} from "./api-error.ts";
import { checkMessage } from "./message-checks.ts";
import { editMessage, storeMessage } from "./messages.ts";
import type { Channel, Interaction, MessageBody, SentPart, State, StoredMessage } from "./state.ts";

const ACKNOWLEDGE_MS = 3000;
const TOKEN_LIFE_MS = 15 * 60_000;
const EPHEMERAL = 64;

type CallbackBody = { type: number; data?: MessageBody & { choices?: unknown } };

export class Interactions {
  private readonly state: State;

  constructor(state: State) {
    this.state = state;
  }

  /** `POST /interactions/{id}/{token}/callback`. */
  respond(id: string, token: string, body: CallbackBody, files: readonly SentPart[]): void {
    const interaction = this.state.interactions.get(token);
    const now = this.state.clock.now();
    if (interaction === undefined || interaction.id !== id) throw unknownInteraction();
    if (now - interaction.createdMs > ACKNOWLEDGE_MS) throw unknownInteraction();
    if (interaction.callback !== null) throw alreadyAcknowledged();
    const allowed = interaction.type === 4 ? [8] : interaction.type === 3 ? [4, 5, 6, 7] : [4, 5];
    if (!allowed.includes(body.type)) throw invalidForm([`type: ${body.type} is not for this interaction`]);
    if (body.type === 8) interaction.choices = checkedChoices(body.data?.choices);
    const flags = body.data?.flags ?? 0;
    if (body.type === 4) {
      checkMessage(body.data ?? {}, files);
      interaction.ephemeral = (flags & EPHEMERAL) !== 0;
      interaction.originalId = this.store(interaction, body.data ?? {}, files, interaction.ephemeral).id;
    }
    if (body.type === 5) {
      interaction.ephemeral = (flags & EPHEMERAL) !== 0;
      interaction.thinking = true;
    }
    if (body.type === 7) editMessage(this.state, this.component(interaction), body.data ?? {}, files);
    interaction.callback = body.type;
    interaction.acknowledgedMs = now;
  }

  /** `POST /webhooks/{app}/{token}`: the first one after a defer fills the deferred reply. */
  followUp(token: string, body: MessageBody, files: readonly SentPart[]): StoredMessage {
    const interaction = this.live(token);
    checkMessage(body, files);
    if (interaction.thinking) return this.fill(interaction, body, files);
    const ephemeral = ((body.flags ?? 0) & EPHEMERAL) !== 0;
    const message = this.store(interaction, body, files, ephemeral);
    interaction.followUps.push(message.id);
    return message;
  }

  /** `PATCH /webhooks/{app}/{token}/messages/{id}`. */
  edit(token: string, messageId: string, body: MessageBody, files: readonly SentPart[]): StoredMessage {
    const interaction = this.live(token);
    if (messageId === "@original" && interaction.thinking) {
      checkMessage(body, files);
      return this.fill(interaction, body, files);
    }
    return editMessage(this.state, this.find(interaction, messageId), body, files);
  }

  get(token: string, messageId: string): StoredMessage {
    const interaction = this.live(token);
    return this.find(interaction, messageId);
  }

  remove(token: string, messageId: string): void {
    const interaction = this.live(token);
    if (messageId === "@original" && interaction.thinking) {
      interaction.thinking = false;
      interaction.deleted = true;
      return;
    }
    const message = this.find(interaction, messageId);
    const channel = this.channel(interaction);
    channel.messages.splice(channel.messages.indexOf(message), 1);
    if (interaction.originalId === message.id) interaction.deleted = true;
  }

  private live(token: string): Interaction {
    const interaction = this.state.interactions.get(token);
    if (interaction === undefined || interaction.callback === null) throw unknownWebhook();
    if (this.state.clock.now() - interaction.createdMs > TOKEN_LIFE_MS) throw unknownWebhook();
    return interaction;
  }

  private fill(interaction: Interaction, body: MessageBody, files: readonly SentPart[]): StoredMessage {
    const message = this.store(interaction, body, files, interaction.ephemeral);
    interaction.thinking = false;
    interaction.originalId = message.id;
    return message;
  }

  private find(interaction: Interaction, messageId: string): StoredMessage {
    if (messageId === "@original" && interaction.callback === 6) return this.component(interaction);
    if (messageId === "@original" && interaction.callback === 7) return this.component(interaction);
    const id = messageId === "@original" ? interaction.originalId : messageId;
    const message = id === null ? null : this.state.message(id);
    if (message === null) throw unknownMessage();
    return message;
  }

  private component(interaction: Interaction): StoredMessage {
    const id = interaction.componentMessageId;
    const message = id === null ? null : this.state.message(id);
    if (message === null) throw unknownMessage();
    return message;
  }

  private channel(interaction: Interaction): Channel {
    const channel = this.state.channel(interaction.channelId);
    if (channel === null) throw unknownMessage();
    return channel;
  }

  private store(
    interaction: Interaction,
    body: MessageBody,
    files: readonly SentPart[],
    ephemeral: boolean,
  ): StoredMessage {
    const ephemeralFor = ephemeral ? interaction.user.id : null;
    return storeMessage(this.state, this.channel(interaction), { body, files, ephemeralFor });
  }
}

function checkedChoices(value: unknown): { name: string; value: string | number }[] {
  const choices = (Array.isArray(value) ? value : []) as { name: string; value: string | number }[];
  const found: string[] = [];
  if (choices.length > 25) found.push("choices: at most 25");
  for (const choice of choices) {
    if (choice.name.length < 1 || choice.name.length > 100) found.push("choices.name: 1–100");
    if (typeof choice.value === "string" && (choice.value.length < 1 || choice.value.length > 100)) {
      found.push("choices.value: 1–100");
    }
  }
  if (found.length > 0) throw invalidForm(found);
  return choices;
}
