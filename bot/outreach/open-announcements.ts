/**
 * Announcing, as commands ask for it.
 *
 * @packageDocumentation
 */
import type { Announced, Announcements, AnnounceOutcome, Invitation } from "../../commands/announcements.ts";
import type { Chart } from "../../commands/chart.ts";
import { matchKey } from "../../commands/read/names.ts";
import type { DrawChart } from "../discord/message-files.ts";
import type { KeptPicture, SessionRecord } from "../store/outreach-book.ts";
import { type CarriedOut, carryOut } from "./carry-out.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import { callOff } from "./public-word.ts";
import { isCalledOff, sessionId } from "./session-message.ts";

export type AnnouncingParts = {
  readonly world: OutreachWorld;
  readonly draw: DrawChart;
  eventTrouble(club: string): string | null;
};

const STILL_UNDER_WAY = "Discord has not taken all of it yet: try again in a few minutes.";

export function openAnnouncements({ world, draw, eventTrouble }: AnnouncingParts): Announcements {
  const { book, clock } = world;
  return {
    async announce(club, invitation, chart) {
      const settings = (await world.contextFor(club).books.clubs.settings(club)).outreach;
      const channelId = settings?.channelId ?? null;
      if (channelId === null) return { kind: "refused", reason: "No channel is set: “outreach settings”." };
      const turn = await book.count(club, invitation.name, invitation.night);
      const record: SessionRecord = {
        club,
        id: sessionId(club, matchKey(invitation.name), invitation.night, turn),
        state: "announcing",
        revision: 0,
        channelId,
        messageId: null,
        eventWanted: settings?.scheduledEvents ?? false,
        eventId: null,
        invitation,
        picture: await pictureOf(chart, draw),
      };
      const isNew = await book.add(record, clock());
      const begun = isNew ? record : ((await book.find(club, record.id)) ?? record);
      return outcomeOf(world, await carryOut(world, begun));
    },

    async change(club, id, invitation, chart) {
      const record = await book.find(club, id);
      if (record === null) return { kind: "refused", reason: "That session is not announced." };
      if (isCalledOff(record.state)) return { kind: "refused", reason: "That session is called off." };
      if (record.state !== "announced") return { kind: "refused", reason: STILL_UNDER_WAY };
      const picture = await pictureOf(chart, draw);
      const changed = await book.change(record, {
        state: "changing",
        revision: record.revision + 1,
        invitation,
        picture,
      });
      if (changed === null)
        return { kind: "refused", reason: "Somebody else changed it just now: look again." };
      return outcomeOf(world, await carryOut(world, changed));
    },

    async cancel(club, id) {
      const record = await book.find(club, id);
      if (record === null) return { kind: "refused", reason: "That session is not announced." };
      if (isCalledOff(record.state))
        return { kind: "refused", reason: "That session is called off already." };
      if (record.state !== "announced") return { kind: "refused", reason: STILL_UNDER_WAY };
      return outcomeOf(world, await callOff(world, record));
    },

    async list(club) {
      const records = await book.upcoming(club, clock());
      return Promise.all(records.map((record) => announcedOf(world, record)));
    },

    eventTrouble,
  };
}

async function outcomeOf(world: OutreachWorld, carried: CarriedOut): Promise<AnnounceOutcome> {
  if (carried.kind === "failed") return { kind: "refused", reason: carried.reason };
  return { kind: carried.kind, announced: await announcedOf(world, carried.record) };
}

async function announcedOf(world: OutreachWorld, record: SessionRecord): Promise<Announced> {
  const guests = await world.book.guests(record.club, record.id);
  const state = isCalledOff(record.state)
    ? "cancelled"
    : record.state === "announced"
      ? "announced"
      : "under-way";
  const { id, revision, invitation } = record;
  return { id, revision, invitation: revived(invitation), state, ...guests };
}

function revived(invitation: Invitation): Invitation {
  const { start, end } = invitation.span;
  return { ...invitation, span: { start: new Date(start), end: new Date(end) } };
}

async function pictureOf(chart: Chart | null, draw: DrawChart): Promise<KeptPicture | null> {
  if (chart === null) return null;
  const bytes = await draw(chart);
  return { name: `${chart.name}.png`, alt: chart.alt, base64: Buffer.from(bytes).toString("base64") };
}
