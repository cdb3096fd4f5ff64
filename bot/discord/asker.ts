/**
 * Who asks, and whether they run the club: settled here, never by Discord's menus alone.
 *
 * @packageDocumentation
 */
import {
  type APIInteractionGuildMember,
  type GuildMember,
  type Interaction,
  PermissionFlagsBits,
} from "discord.js";
import type { Asker } from "../../commands/request.ts";

/** What the rule needs to know of a member. */
export type Standing = {
  readonly permissions: bigint;
  readonly roleIds: readonly string[];
};

/** Who may manage the server or holds the club's organiser role; a role that is gone is held by nobody. */
export function runsTheClub(standing: Standing, organiserRoleId: string | null): boolean {
  const manages = PermissionFlagsBits.ManageGuild | PermissionFlagsBits.Administrator;
  if ((standing.permissions & manages) !== 0n) return true;
  return organiserRoleId !== null && standing.roleIds.includes(organiserRoleId);
}

/** Longest name shown; Discord's own limit. */
const NAME_LENGTH = 32;

export function askerOf(interaction: Interaction, organiserRoleId: string | null): Asker {
  const { member, user } = interaction;
  const standing: Standing = {
    permissions: interaction.memberPermissions?.bitfield ?? 0n,
    roleIds: member === null ? [] : roleIds(member),
  };
  return {
    id: user.id,
    name: displayName(member, user.displayName).slice(0, NAME_LENGTH),
    organiser: runsTheClub(standing, organiserRoleId),
  };
}

function roleIds(member: GuildMember | APIInteractionGuildMember): readonly string[] {
  return Array.isArray(member.roles) ? member.roles : [...member.roles.cache.keys()];
}

function displayName(member: GuildMember | APIInteractionGuildMember | null, userName: string): string {
  if (member === null) return userName;
  return "displayName" in member ? member.displayName : (member.nick ?? userName);
}
