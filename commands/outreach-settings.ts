/**
 * `outreach settings`: where sessions are announced, who hears go or no-go, whether events are made.
 *
 * @packageDocumentation
 */
import {
  type APIApplicationCommandChannelOption,
  ApplicationCommandOptionType,
  ChannelType,
} from "discord-api-types/v10";
import type { OutreachSettings } from "./announcements.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { flagOption, textOption } from "./read/numbers.ts";
import { defineFlag } from "./read/options.ts";
import type { Request } from "./request.ts";

const BEGIN_WITH: OutreachSettings = { channelId: null, organisersChannelId: null, scheduledEvents: false };

function channel(name: string, description: string): APIApplicationCommandChannelOption {
  return {
    type: ApplicationCommandOptionType.Channel,
    name,
    description,
    channel_types: [ChannelType.GuildText, ChannelType.GuildAnnouncement],
  };
}

export const SETTINGS_OPTIONS = [
  channel("channel", "Where sessions are announced"),
  channel("organisers-channel", "Where the organisers hear go or no-go"),
  defineFlag("events", "Make Discord's own events as well; needs the permission Create Events"),
];

/** Shows the settings, or changes those that are given. */
export async function outreachSettings(request: Request, context: Context): Promise<Answer> {
  if (!request.member.organiser) {
    throw new AskError(
      "not-an-organiser",
      null,
      "Only those who may manage the server, or hold the club's organiser role, may set this.",
    );
  }
  const before = (await context.books.clubs.settings(request.club)).outreach ?? BEGIN_WITH;
  const settings: OutreachSettings = {
    channelId: channelOf(request, context, "channel") ?? before.channelId,
    organisersChannelId: channelOf(request, context, "organisers-channel") ?? before.organisersChannelId,
    scheduledEvents:
      request.options.events === undefined ? before.scheduledEvents : flagOption(request, "events"),
  };
  if (Object.keys(request.options).length > 0) {
    await context.books.clubs.change(request.club, { outreach: settings });
  }
  const trouble = settings.scheduledEvents ? context.announcements?.eventTrouble(request.club) : null;
  return {
    title: "How sessions are announced",
    summary:
      settings.channelId === null
        ? "No session can be announced yet: set a channel."
        : "Sessions can be announced.",
    sections: [
      {
        heading: "",
        lines: [
          settings.organisersChannelId === null
            ? "Nobody hears go or no-go before a session: set the organisers' channel."
            : "The organisers hear go or no-go the day before and three hours before.",
          settings.scheduledEvents
            ? "Discord's own events are made as well."
            : "Discord's own events are not made: switch them on with events.",
          ...(trouble ? [trouble] : []),
        ],
      },
    ],
    charts: [],
    cautions: [],
    next: [],
    figures: { ...settings },
    credits: [],
  };
}

function channelOf(request: Request, context: Context, option: string): string | null {
  const channelId = textOption(request, option);
  if (channelId === null) return null;
  const trouble = context.channelTrouble?.(request.club, channelId) ?? null;
  if (trouble !== null) {
    throw new AskError("closed-channel", option, trouble.replace("“channel”", `“${option}”`));
  }
  return channelId;
}
