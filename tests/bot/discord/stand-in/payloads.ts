/**
 * Servers, channels, users and messages in the JSON that Discord sends.
 *
 * @packageDocumentation
 */
import type { Channel, Guild, State, StoredMessage, User } from "./state.ts";
import { EVERYONE_BITS } from "./state.ts";

export function userJson(user: User, bot = false): object {
  return {
    id: user.id,
    username: user.name,
    global_name: user.name,
    discriminator: "0",
    avatar: null,
    bot,
  };
}

export function memberJson(user: User, roles: readonly string[], bot = false): object {
  return {
    user: userJson(user, bot),
    nick: null,
    avatar: null,
    roles,
    joined_at: "2024-01-01T00:00:00.000000+00:00",
    premium_since: null,
    deaf: false,
    mute: false,
    pending: false,
    flags: 0,
    communication_disabled_until: null,
  };
}

export function channelJson(channel: Channel): object {
  return {
    id: channel.id,
    type: 0,
    guild_id: channel.guildId,
    name: channel.name,
    position: 0,
    permission_overwrites: [{ id: channel.guildId, type: 0, allow: "0", deny: channel.denied.toString() }],
    nsfw: false,
    parent_id: null,
    topic: null,
    rate_limit_per_user: 0,
    last_message_id: channel.messages.at(-1)?.id ?? null,
  };
}

/** A role that grants nothing by itself. */
export function roleJson(role: { readonly id: string; readonly name: string }, permissions: string): object {
  return {
    ...role,
    permissions,
    color: 0,
    colors: { primary_color: 0, secondary_color: null, tertiary_color: null },
    hoist: false,
    position: 0,
    managed: false,
    mentionable: false,
    flags: 0,
  };
}

export function guildJson(guild: Guild, state: State): object {
  const everyone = roleJson({ id: guild.id, name: "@everyone" }, EVERYONE_BITS.toString());
  const roles = [everyone, ...guild.roles.map((role) => roleJson(role, "0"))];
  return {
    id: guild.id,
    name: guild.name,
    icon: null,
    owner_id: guild.ownerId,
    afk_timeout: 300,
    afk_channel_id: null,
    verification_level: 0,
    default_message_notifications: 0,
    explicit_content_filter: 0,
    roles,
    emojis: [],
    stickers: [],
    features: [],
    mfa_level: 0,
    system_channel_id: null,
    system_channel_flags: 0,
    rules_channel_id: null,
    premium_tier: 0,
    preferred_locale: "en-US",
    public_updates_channel_id: null,
    nsfw_level: 0,
    premium_progress_bar_enabled: false,
    joined_at: "2024-01-01T00:00:00.000000+00:00",
    large: false,
    unavailable: false,
    member_count: 12,
    voice_states: [],
    members: [memberJson(state.botUser, [], true)],
    channels: guild.channels.filter((channel) => !channel.deleted).map(channelJson),
    threads: [],
    presences: [],
    stage_instances: [],
    guild_scheduled_events: guild.events,
    soundboard_sounds: [],
  };
}

/** With its nonce only where Discord gives it: in the reply to its creation. */
export function messageJson(message: StoredMessage, state: State, withNonce: boolean): object {
  return {
    id: message.id,
    type: message.replyTo === null ? 0 : 19,
    channel_id: message.channelId,
    author: userJson(state.botUser, true),
    content: message.content,
    embeds: message.embeds.map((embed) => ({ type: "rich", ...(embed as object) })),
    components: message.components,
    attachments: message.attachments,
    mentions: [],
    mention_roles: [],
    mention_everyone: false,
    pinned: false,
    tts: false,
    timestamp: new Date(message.createdMs).toISOString(),
    edited_timestamp: message.editedMs === null ? null : new Date(message.editedMs).toISOString(),
    flags: message.ephemeralFor === null ? 0 : 64,
    ...(message.replyTo === null
      ? {}
      : { message_reference: { message_id: message.replyTo, channel_id: message.channelId } }),
    ...(withNonce && message.nonce !== null ? { nonce: message.nonce } : {}),
  };
}
