/**
 * A server's scheduled events: one attempt a call, nothing repeated behind our back.
 *
 * The caution stands first in an event's description and is never cut; the mark by which the
 * event is found again stands last.
 *
 * @packageDocumentation
 */
import {
  type APIGuildScheduledEvent,
  type Client,
  DiscordAPIError,
  GuildScheduledEventEntityType,
  GuildScheduledEventPrivacyLevel,
  GuildScheduledEventStatus,
  PermissionFlagsBits,
  RateLimitError,
  type REST,
  RESTJSONErrorCodes,
  Routes,
} from "discord.js";
import type { Invitation } from "../../commands/announcements.ts";
import {
  EVENT_DESCRIPTION_LENGTH,
  EVENT_NAME_LENGTH,
  EVENT_PICTURE_BYTES,
  EVENT_PLACE_LENGTH,
} from "../../config/announcements.ts";
import type { ClubEvent, EventOutcome, EventSearch, ScheduledEvents } from "../outreach/scheduled-events.ts";
import { escaped, shortened } from "./plain-text.ts";

/** Words before our key at the end of a description. */
const MARK = "Duskbell ";
const GAP = "\n\n";

export function scheduledEvents(rest: REST, ownId: () => string | null): ScheduledEvents {
  return {
    async find(club, key, timeoutMs) {
      try {
        const events = await inTime(timeoutMs, (signal) =>
          rest.get(Routes.guildScheduledEvents(club), { signal }),
        );
        return findOwn(events as readonly APIGuildScheduledEvent[], key, ownId());
      } catch (fault) {
        const failed = failure(fault);
        return failed.kind === "unclear" ? failed : { kind: "refused", reason: reasonOf(failed) };
      }
    },
    create: (club, event, timeoutMs) =>
      attempt(timeoutMs, (signal) =>
        rest.post(Routes.guildScheduledEvents(club), { body: eventBody(event), signal }),
      ),
    edit: (club, eventId, event, timeoutMs) =>
      attempt(timeoutMs, (signal) =>
        rest.patch(Routes.guildScheduledEvent(club, eventId), { body: eventBody(event), signal }),
      ),
    async cancel(club, eventId, timeoutMs) {
      const body = { status: GuildScheduledEventStatus.Canceled };
      const outcome = await attempt(timeoutMs, (signal) =>
        rest.patch(Routes.guildScheduledEvent(club, eventId), { body, signal }),
      );
      // One that is over or called off already cannot be called off once more.
      return outcome.kind === "invalid" ? { kind: "gone" } : outcome;
    },
  };
}

function findOwn(events: readonly APIGuildScheduledEvent[], key: string, ownId: string | null): EventSearch {
  const found = events.find(
    ({ creator_id, description, status }) =>
      (ownId === null || creator_id === ownId) &&
      description?.endsWith(`${MARK}${key}`) === true &&
      (status === GuildScheduledEventStatus.Scheduled || status === GuildScheduledEventStatus.Active),
  );
  return found === undefined ? { kind: "absent" } : { kind: "found", eventId: found.id };
}

/** An event at a place outside Discord, as it is sent. */
export function eventBody({ key, invitation, picture }: ClubEvent) {
  const { name, place, span } = invitation;
  const isSmall = picture !== null && picture.base64.length <= EVENT_PICTURE_BYTES;
  return {
    name: shortened(escaped(name), EVENT_NAME_LENGTH),
    description: eventDescription(invitation, key),
    privacy_level: GuildScheduledEventPrivacyLevel.GuildOnly,
    entity_type: GuildScheduledEventEntityType.External,
    channel_id: null,
    entity_metadata: { location: shortened(escaped(place), EVENT_PLACE_LENGTH) },
    scheduled_start_time: span.start.toISOString(),
    scheduled_end_time: span.end.toISOString(),
    ...(isSmall ? { image: `data:image/png;base64,${picture.base64}` } : {}),
  };
}

/**
 * Cautions whole, the first of them in any case, then as much of the rest as there is room for.
 *
 * @throws RangeError when the first caution does not fit: a fault in its text
 */
export function eventDescription({ cautions, summary, lines }: Invitation, key: string): string {
  const mark = `${MARK}${key}`;
  let room = EVENT_DESCRIPTION_LENGTH - mark.length;
  const parts: string[] = [];
  const take = (text: string): boolean => {
    const needed = text.length + GAP.length;
    if (needed > room) return false;
    room -= needed;
    parts.push(text);
    return true;
  };
  const [first, ...others] = cautions.map(({ text }) => `Caution. ${escaped(text)}`);
  if (first !== undefined && !take(first)) throw new RangeError("a caution does not fit an event");
  const told = escaped(summary);
  // The sentence of invitation keeps its place before the lesser cautions.
  const kept = Math.min(told.length + GAP.length, room);
  room -= kept;
  for (const text of others) take(text);
  room += kept;
  take(shortened(told, Math.max(1, room - GAP.length)));
  for (const text of lines) take(escaped(text));
  return [...parts, mark].join(GAP);
}

/** What is missing before events can be made, in a sentence; `null` when nothing is. */
export function eventTrouble(client: Client, guildId: string): string | null {
  const guild = client.guilds.cache.get(guildId);
  const me = guild?.members.me ?? null;
  if (guild === undefined || me === null) return null;
  if (me.permissions.has(PermissionFlagsBits.CreateEvents)) return null;
  return "I may not create events here: give me “Create Events” in the server's settings, or switch events off with “outreach settings”.";
}

async function attempt(
  timeoutMs: number,
  call: (signal: AbortSignal) => Promise<unknown>,
): Promise<EventOutcome> {
  try {
    const { id } = (await inTime(timeoutMs, call)) as { readonly id: string };
    return { kind: "done", eventId: id };
  } catch (fault) {
    return failure(fault);
  }
}

type Failure = Exclude<EventOutcome, { kind: "done" }>;

function failure(fault: unknown): Failure {
  if (fault instanceof RateLimitError) return { kind: "unclear", retryAfterMs: fault.retryAfter };
  if (!(fault instanceof DiscordAPIError)) return { kind: "unclear", retryAfterMs: null };
  const code = Number(fault.code);
  if (code === RESTJSONErrorCodes.UnknownGuildScheduledEvent) return { kind: "gone" };
  if (code === RESTJSONErrorCodes.MissingPermissions || code === RESTJSONErrorCodes.MissingAccess) {
    return { kind: "refused", reason: "I lack the permission to create events" };
  }
  if (code === RESTJSONErrorCodes.MaximumNumberOfUncompletedGuildScheduledEventsReached) {
    return { kind: "refused", reason: "the server has 100 events to come already, as many as Discord takes" };
  }
  // A refused token says nothing of the server: the host has to mend it.
  if (fault.status === 401) return { kind: "unclear", retryAfterMs: null };
  if (fault.status === 403 || fault.status === 404) return { kind: "refused", reason: fault.message };
  return { kind: "invalid", reason: fault.message };
}

function reasonOf(failed: Exclude<Failure, { kind: "unclear" }>): string {
  return failed.kind === "gone" ? "the server is gone" : failed.reason;
}

async function inTime<Result>(
  timeoutMs: number,
  call: (signal: AbortSignal) => Promise<Result>,
): Promise<Result> {
  const signal = AbortSignal.timeout(timeoutMs);
  const late = new Promise<never>((_, reject) => {
    signal.addEventListener("abort", () => reject(new Error("no reply in time")), { once: true });
  });
  const result = call(signal);
  result.catch(() => undefined);
  return Promise.race([result, late]);
}
