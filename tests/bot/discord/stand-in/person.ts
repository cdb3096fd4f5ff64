/**
 * Someone in a server: asks commands, types for completion, presses buttons.
 *
 * @packageDocumentation
 */
import { randomUUID } from "node:crypto";
import { memberJson, messageJson, userJson } from "./payloads.ts";
import type { StandIn } from "./stand-in.ts";
import { type Channel, EVERYONE_BITS, type Interaction, type StoredMessage, type User } from "./state.ts";

/** An option as asked: a file is an attachment by its address. */
export type AskedOption =
  | {
      readonly name: string;
      readonly type: number;
      readonly value: string | number | boolean;
      readonly focused?: boolean;
    }
  | { readonly name: string; readonly type: 1; readonly options: readonly AskedOption[] };

export type AskedFile = {
  readonly id: string;
  readonly filename: string;
  readonly size: number;
  readonly url: string;
  readonly content_type: string;
};

export type Heard = {
  readonly interaction: Interaction;
  /** The answer to the question itself; `null` while thinking, or taken away. */
  reply(): StoredMessage | null;
  followUps(): readonly StoredMessage[];
};

export class Person {
  readonly user: User;
  private readonly standIn: StandIn;
  /** Permission bits in the server, as Discord settles them for each interaction. */
  permissions = EVERYONE_BITS;
  roles: readonly string[] = [];

  constructor(standIn: StandIn, name: string) {
    this.standIn = standIn;
    this.user = { id: standIn.clock.snowflake(), name };
  }

  command(
    channel: Channel,
    name: string,
    options: readonly AskedOption[] = [],
    files: readonly AskedFile[] = [],
  ): Heard {
    const resolved = { attachments: Object.fromEntries(files.map((file) => [file.id, file])) };
    const data = { id: this.standIn.clock.snowflake(), name, type: 1, options, resolved };
    return this.dispatch(channel, 2, data, null);
  }

  type(channel: Channel, name: string, options: readonly AskedOption[]): Heard {
    const data = { id: this.standIn.clock.snowflake(), name, type: 1, options };
    return this.dispatch(channel, 4, data, null);
  }

  press(channel: Channel, message: StoredMessage, customId: string): Heard {
    return this.dispatch(channel, 3, { custom_id: customId, component_type: 2 }, message);
  }

  /** Presses the button with that label. */
  pressLabel(channel: Channel, message: StoredMessage, label: string): Heard {
    const button = buttonsOf(message).find((one) => one.label === label);
    if (button === undefined) throw new Error(`no button “${label}” on the message`);
    return this.press(channel, message, button.custom_id);
  }

  private dispatch(channel: Channel, type: 2 | 3 | 4, data: object, message: StoredMessage | null): Heard {
    const { state, clock, gateway } = this.standIn;
    const interaction: Interaction = {
      id: clock.snowflake(),
      token: randomUUID(),
      type,
      guildId: channel.guildId,
      channelId: channel.id,
      user: this.user,
      createdMs: clock.now(),
      componentMessageId: message?.id ?? null,
      acknowledgedMs: null,
      callback: null,
      ephemeral: false,
      originalId: null,
      thinking: false,
      deleted: false,
      followUps: [],
      choices: null,
    };
    state.interactions.set(interaction.token, interaction);
    gateway.dispatch("INTERACTION_CREATE", {
      id: interaction.id,
      application_id: state.applicationId,
      type,
      token: interaction.token,
      version: 1,
      guild_id: channel.guildId,
      channel_id: channel.id,
      channel: { id: channel.id, type: 0, guild_id: channel.guildId, name: channel.name },
      member: { ...memberJson(this.user, this.roles), permissions: this.permissions.toString() },
      app_permissions: (EVERYONE_BITS & ~channel.denied).toString(),
      locale: "en-GB",
      guild_locale: "en-GB",
      entitlements: [],
      authorizing_integration_owners: { "0": channel.guildId },
      context: 0,
      attachment_size_limit: 10 * 1024 * 1024,
      data: type === 3 ? data : { guild_id: channel.guildId, ...data },
      ...(message === null ? {} : { message: messageJson(message, state, false) }),
      user: undefined,
    });
    return {
      interaction,
      reply: () => (interaction.originalId === null ? null : state.message(interaction.originalId)),
      followUps: () => interaction.followUps.flatMap((id) => state.message(id) ?? []),
    };
  }

  /** As Discord describes this person elsewhere. */
  json(): object {
    return userJson(this.user);
  }
}

export type ShownButton = { readonly label: string; readonly custom_id: string; readonly style: number };

/** The buttons of a message, row by row. */
export function buttonsOf(message: StoredMessage): ShownButton[] {
  return (message.components as { components: ShownButton[] }[]).flatMap((row) => row.components);
}
