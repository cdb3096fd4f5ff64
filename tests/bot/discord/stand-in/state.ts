/**
 * What the stand-in server holds: servers, channels, messages, interactions.
 *
 * @packageDocumentation
 */
import type { StandInClock } from "./clock.ts";

export const Permission = {
  viewChannel: 1n << 10n,
  sendMessages: 1n << 11n,
  embedLinks: 1n << 14n,
  attachFiles: 1n << 15n,
  readHistory: 1n << 16n,
  manageGuild: 1n << 5n,
  createEvents: 1n << 44n,
} as const;

/** What `@everyone`, the bot included, may do where nothing is denied. */
export const EVERYONE_BITS =
  Permission.viewChannel |
  Permission.sendMessages |
  Permission.embedLinks |
  Permission.attachFiles |
  Permission.readHistory |
  Permission.createEvents;

/** A message as sent; the parts this project uses. */
export type MessageBody = {
  content?: string | null;
  embeds?: unknown[];
  components?: unknown[];
  attachments?: unknown[];
  allowed_mentions?: unknown;
  nonce?: string | number | null;
  enforce_nonce?: boolean;
  flags?: number;
  message_reference?: { message_id?: string; fail_if_not_exists?: boolean };
};

export type SentPart = { readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array };

export type StoredAttachment = {
  readonly id: string;
  readonly filename: string;
  readonly description: string | null;
  readonly size: number;
  readonly content_type: string;
  readonly url: string;
  readonly proxy_url: string;
};

export type StoredMessage = {
  readonly id: string;
  readonly channelId: string;
  readonly authorId: string;
  content: string;
  embeds: unknown[];
  components: unknown[];
  attachments: StoredAttachment[];
  readonly nonce: string | number | null;
  readonly createdMs: number;
  editedMs: number | null;
  /** How often it was edited after it was sent. */
  edits: number;
  readonly ephemeralFor: string | null;
  readonly replyTo: string | null;
  /** Users whom its arrival rang. */
  readonly pinged: readonly string[];
};

export type Channel = {
  readonly id: string;
  readonly guildId: string;
  readonly name: string;
  /** Bits denied to the bot here. */
  denied: bigint;
  deleted: boolean;
  readonly messages: StoredMessage[];
};

export type Guild = {
  readonly id: string;
  readonly name: string;
  readonly ownerId: string;
  readonly channels: Channel[];
  readonly roles: { readonly id: string; readonly name: string }[];
  readonly events: Record<string, unknown>[];
};

export type User = { readonly id: string; readonly name: string };

export type Interaction = {
  readonly id: string;
  readonly token: string;
  /** 2 a command, 3 a button, 4 completion. */
  readonly type: 2 | 3 | 4;
  readonly guildId: string;
  readonly channelId: string;
  readonly user: User;
  readonly createdMs: number;
  readonly componentMessageId: string | null;
  acknowledgedMs: number | null;
  /** Callback type as received, `null` before. */
  callback: number | null;
  ephemeral: boolean;
  /** The reply, once it is there. */
  originalId: string | null;
  /** Deferred, and neither edited nor followed yet. */
  thinking: boolean;
  deleted: boolean;
  readonly followUps: string[];
  choices: readonly { readonly name: string; readonly value: string | number }[] | null;
};

export class State {
  readonly token: string;
  readonly clock: StandInClock;
  readonly applicationId: string;
  readonly botUser: User;
  readonly guilds = new Map<string, Guild>();
  readonly interactions = new Map<string, Interaction>();
  /** By scope: `global`, or a guild's id. */
  readonly commands = new Map<string, Record<string, unknown>[]>();

  constructor(token: string, clock: StandInClock) {
    this.token = token;
    this.clock = clock;
    this.applicationId = clock.snowflake();
    this.botUser = { id: this.applicationId, name: "Duskbell" };
  }

  channel(id: string): Channel | null {
    for (const guild of this.guilds.values()) {
      const found = guild.channels.find((channel) => channel.id === id && !channel.deleted);
      if (found !== undefined) return found;
    }
    return null;
  }

  message(id: string): StoredMessage | null {
    for (const guild of this.guilds.values()) {
      for (const channel of guild.channels) {
        const found = channel.messages.find((message) => message.id === id);
        if (found !== undefined) return found;
      }
    }
    return null;
  }
}
