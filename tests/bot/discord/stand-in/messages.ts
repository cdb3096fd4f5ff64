/**
 * Creating, editing, reading back and deleting messages, nonces enforced.
 *
 * A nonce is remembered for two minutes of the stand-in's clock, counted from the
 * message it made, and then forgotten.
 *
 * @packageDocumentation
 */
import {
  invalidForm,
  missingAccess,
  missingPermissions,
  unknownChannel,
  unknownMessage,
} from "./api-error.ts";
import { checkMessage } from "./message-checks.ts";
import type { Channel, MessageBody, SentPart, State, StoredAttachment, StoredMessage } from "./state.ts";
import { Permission } from "./state.ts";

const NONCE_LIFE_MS = 120_000;

/** The channel, if the bot may do `needed` there. */
export function openChannel(state: State, channelId: string, needed: bigint): Channel {
  const channel = state.channel(channelId);
  if (channel === null) throw unknownChannel();
  if ((channel.denied & Permission.viewChannel) !== 0n) throw missingAccess();
  if ((channel.denied & needed) !== 0n) throw missingPermissions();
  return channel;
}

function keepFiles(
  state: State,
  body: MessageBody,
  files: readonly SentPart[],
  before: readonly StoredAttachment[],
): StoredAttachment[] {
  const described = (body.attachments ?? []) as {
    id: string | number;
    description?: string;
    filename?: string;
  }[];
  const kept =
    body.attachments === undefined
      ? [...before]
      : before.filter((file) => described.some((one) => String(one.id) === file.id));
  const added = files.map((file, index) => {
    const id = state.clock.snowflake();
    const about = described.find((one) => String(one.id) === String(index));
    return {
      id,
      filename: about?.filename ?? file.name,
      description: about?.description ?? null,
      size: file.bytes.length,
      content_type: file.mediaType,
      url: `https://cdn.discordapp.com/attachments/${id}/${file.name}`,
      proxy_url: `https://media.discordapp.net/attachments/${id}/${file.name}`,
    };
  });
  return [...kept, ...added];
}

/** Whom the text rings: those it mentions and `allowed_mentions` lets through. */
function rung(body: MessageBody): string[] {
  const allowed = body.allowed_mentions as { parse?: string[]; users?: string[] } | undefined;
  const named = [...(body.content ?? "").matchAll(/<@!?(\d+)>/g)].map((match) => match[1] ?? "");
  const everyone = /@(everyone|here)/.test(body.content ?? "");
  if (allowed === undefined || allowed.parse?.includes("users")) {
    return everyone && allowed === undefined ? ["everyone", ...named] : named;
  }
  const rings = named.filter((id) => allowed.users?.includes(id));
  return everyone && allowed.parse?.includes("everyone") ? ["everyone", ...rings] : rings;
}

export type NewMessage = {
  readonly body: MessageBody;
  readonly files: readonly SentPart[];
  readonly ephemeralFor: string | null;
};

/** Stores a message that has passed the checks. */
export function storeMessage(state: State, channel: Channel, sent: NewMessage): StoredMessage {
  const { body } = sent;
  const message: StoredMessage = {
    id: state.clock.snowflake(),
    channelId: channel.id,
    authorId: state.botUser.id,
    content: body.content ?? "",
    embeds: body.embeds ?? [],
    components: body.components ?? [],
    attachments: keepFiles(state, body, sent.files, []),
    nonce: body.nonce ?? null,
    createdMs: state.clock.now(),
    editedMs: null,
    edits: 0,
    ephemeralFor: sent.ephemeralFor,
    replyTo: body.message_reference?.message_id ?? null,
    pinged: sent.ephemeralFor === null ? rung(body) : [],
  };
  channel.messages.push(message);
  return message;
}

/** `POST /channels/{id}/messages`. */
export class Messages {
  private readonly state: State;
  private readonly nonces = new Map<string, { readonly messageId: string; readonly madeMs: number }>();

  constructor(state: State) {
    this.state = state;
  }

  create(channelId: string, body: MessageBody, files: readonly SentPart[]): StoredMessage {
    const channel = openChannel(this.state, channelId, Permission.sendMessages);
    if (files.length > 0 && (channel.denied & Permission.attachFiles) !== 0n) throw missingPermissions();
    checkMessage(body, files);
    const remembered = body.enforce_nonce === true ? this.nonces.get(`${body.nonce}`) : undefined;
    const age =
      remembered === undefined ? Number.POSITIVE_INFINITY : this.state.clock.now() - remembered.madeMs;
    if (remembered !== undefined && age >= 0 && age < NONCE_LIFE_MS) {
      const existing = channel.messages.find((message) => message.id === remembered.messageId);
      if (existing === undefined) throw unknownMessage();
      return existing;
    }
    const replyTo = body.message_reference?.message_id;
    if (replyTo !== undefined && !channel.messages.some((message) => message.id === replyTo)) {
      if (body.message_reference?.fail_if_not_exists !== false) throw invalidForm(["Unknown message"]);
    }
    const embedsDropped = (channel.denied & Permission.embedLinks) !== 0n;
    const kept = embedsDropped ? { ...body, embeds: [] } : body;
    const message = storeMessage(this.state, channel, { body: kept, files, ephemeralFor: null });
    if (body.nonce !== undefined && body.nonce !== null) {
      this.nonces.set(`${body.nonce}`, { messageId: message.id, madeMs: message.createdMs });
    }
    return message;
  }

  edit(channelId: string, messageId: string, body: MessageBody, files: readonly SentPart[]): StoredMessage {
    const channel = openChannel(this.state, channelId, 0n);
    return editMessage(this.state, visible(channel, messageId), body, files);
  }

  /** Newest first; nothing at all where the history may not be read, as Discord does. */
  list(channelId: string, query: URLSearchParams): StoredMessage[] {
    const channel = openChannel(this.state, channelId, 0n);
    if ((channel.denied & Permission.readHistory) !== 0n) return [];
    const limit = Number(query.get("limit") ?? 50);
    if (!(limit >= 1 && limit <= 100)) throw invalidForm(["limit: 1–100"]);
    const after = query.get("after");
    const before = query.get("before");
    const seen = channel.messages.filter((message) => message.ephemeralFor === null);
    if (after !== null) {
      const later = seen.filter((message) => BigInt(message.id) > BigInt(after));
      return later.slice(0, limit).reverse();
    }
    const earlier = before === null ? seen : seen.filter((message) => BigInt(message.id) < BigInt(before));
    return earlier.slice(-limit).reverse();
  }

  get(channelId: string, messageId: string): StoredMessage {
    return visible(openChannel(this.state, channelId, Permission.readHistory), messageId);
  }

  remove(channelId: string, messageId: string): void {
    const channel = openChannel(this.state, channelId, 0n);
    channel.messages.splice(channel.messages.indexOf(visible(channel, messageId)), 1);
  }
}

function visible(channel: Channel, messageId: string): StoredMessage {
  const found = channel.messages.find((one) => one.id === messageId && one.ephemeralFor === null);
  if (found === undefined) throw unknownMessage();
  return found;
}

/** Changes what the body names and leaves the rest. */
export function editMessage(
  state: State,
  message: StoredMessage,
  body: MessageBody,
  files: readonly SentPart[],
): StoredMessage {
  const kept = {
    content: message.content,
    embeds: message.embeds,
    components: message.components,
    attachments: message.attachments,
  };
  checkMessage(body, files, kept);
  if (body.content !== undefined) message.content = body.content ?? "";
  if (body.embeds !== undefined) message.embeds = body.embeds;
  if (body.components !== undefined) message.components = body.components;
  message.attachments = keepFiles(state, body, files, message.attachments);
  message.editedMs = state.clock.now();
  message.edits += 1;
  return message;
}
