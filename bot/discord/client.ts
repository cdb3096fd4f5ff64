/**
 * The connection to Discord: one intent, and hardly anything remembered.
 *
 * @packageDocumentation
 */
import { Client, GatewayIntentBits, Options, PermissionFlagsBits } from "discord.js";

/** Nothing here reads messages, members, presences or the like: none are kept, but our own member. */
export function makeClient(apiBase: string | null): Client {
  const client: Client = new Client({
    intents: [GatewayIntentBits.Guilds],
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      ApplicationCommandManager: 0,
      ApplicationEmojiManager: 0,
      AutoModerationRuleManager: 0,
      BaseGuildEmojiManager: 0,
      DMMessageManager: 0,
      EntitlementManager: 0,
      GuildBanManager: 0,
      GuildEmojiManager: 0,
      GuildForumThreadManager: 0,
      GuildInviteManager: 0,
      GuildMessageManager: 0,
      GuildScheduledEventManager: 0,
      GuildStickerManager: 0,
      GuildTextThreadManager: 0,
      MessageManager: 0,
      PresenceManager: 0,
      ReactionManager: 0,
      ReactionUserManager: 0,
      StageInstanceManager: 0,
      ThreadManager: 0,
      ThreadMemberManager: 0,
      VoiceStateManager: 0,
      GuildMemberManager: { maxSize: 0, keepOverLimit: (member) => member.id === client.user?.id },
      UserManager: { maxSize: 0, keepOverLimit: (user) => user.id === client.user?.id },
    }),
    allowedMentions: { parse: [], repliedUser: false },
    ...(apiBase === null ? {} : { rest: { api: apiBase } }),
  });
  return client;
}

/** Everything the evening post needs of a channel, in Discord's own words. */
const NEEDED: readonly (readonly [bigint, string])[] = [
  [PermissionFlagsBits.ViewChannel, "View Channel"],
  [PermissionFlagsBits.SendMessages, "Send Messages"],
  [PermissionFlagsBits.EmbedLinks, "Embed Links"],
  [PermissionFlagsBits.AttachFiles, "Attach Files"],
  [PermissionFlagsBits.ReadMessageHistory, "Read Message History"],
];

/** Why the evening post could not go into a channel of that server; `null` when it could. */
export function channelTrouble(client: Client, guildId: string, channelId: string): string | null {
  const channel = client.channels.cache.get(channelId);
  if (client.user === null || channel === undefined || channel.isDMBased() || channel.guildId !== guildId) {
    return "“channel”: I cannot see that channel: give me View Channel there, or choose another.";
  }
  if (!channel.isSendable()) return "“channel” must be one that takes messages.";
  const permissions = channel.permissionsFor(client.user);
  const missing = NEEDED.filter(([bit]) => permissions?.has(bit) !== true).map(([, name]) => name);
  if (missing.length === 0) return null;
  return `“channel”: I need more there before the evening post can go out: ${missing.join(", ")}.`;
}

/** Whether a channel's history may be read; `null` while the channel or our member is not known. */
export function mayReadHistory(client: Client, channelId: string): boolean | null {
  const channel = client.channels.cache.get(channelId);
  const me = client.user;
  if (channel === undefined || me === null || channel.isDMBased()) return null;
  const permissions = channel.permissionsFor(me);
  if (permissions === null) return null;
  return permissions.has(PermissionFlagsBits.ViewChannel | PermissionFlagsBits.ReadMessageHistory);
}
