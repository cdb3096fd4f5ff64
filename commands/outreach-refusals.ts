/**
 * What an announcement is refused for, each in one sentence.
 *
 * @packageDocumentation
 */
import { SESSIONS_AT_MOST } from "../config/announcements.ts";
import type { Announced, Announcements, Invitation } from "./announcements.ts";
import { AskError } from "./ask-error.ts";
import type { Context } from "./context.ts";
import { isNumbersAlone } from "./read/coordinates.ts";
import { matchKey } from "./read/names.ts";
import { textOption } from "./read/numbers.ts";
import { said } from "./read/said.ts";
import type { Request } from "./request.ts";
import { dateWords } from "./words/clock.ts";

/** Who may announce is settled by the bot. */
export function refuseOthers(request: Request): void {
  if (request.member.organiser) return;
  throw new AskError(
    "not-an-organiser",
    null,
    "Only those who may manage the server, or hold the club's organiser role, may announce sessions.",
  );
}

/** Coordinates would be kept finer than anything else of a member's is. */
export function refuseCoordinates(request: Request): void {
  const site = textOption(request, "site");
  if (site === null || !isNumbersAlone(site)) return;
  throw new AskError(
    "site-without-name",
    "site",
    "“site” must be a saved site or a place by name here: people are told where to come, never coordinates.",
  );
}

/** A session that has begun is not announced. */
export function refuseBegun(invitation: Invitation, at: Date): void {
  if (invitation.span.start > at) return;
  throw new AskError("begun", "hours", "“hours”: that session has begun already; announce a later one.");
}

/** Where events are wanted and may not be made, nothing is begun. */
export function refuseWithoutEvents(request: Request, announcements: Announcements, wanted: boolean): void {
  const trouble = wanted ? announcements.eventTrouble(request.club) : null;
  if (trouble !== null) throw new AskError("may-not-create-events", null, trouble);
}

/** One session of a name and night at a time, and not too many of them. */
export async function refuseTwice(
  request: Request,
  announcements: Announcements,
  invitation: Invitation,
): Promise<void> {
  const standing = (await announcements.list(request.club)).filter(({ state }) => state !== "cancelled");
  const isSame = ({ invitation: other }: Announced) =>
    other.night === invitation.night && matchKey(other.name) === matchKey(invitation.name);
  if (standing.some(isSame)) {
    throw new AskError(
      "announced-already",
      "name",
      `“name”: ${said(invitation.name)} is announced for ${dateWords(invitation.night)} already; change or cancel that one.`,
    );
  }
  if (standing.length >= SESSIONS_AT_MOST) {
    throw new AskError(
      "too-many",
      null,
      `${SESSIONS_AT_MOST} sessions stand announced, as many as I look after: cancel one first.`,
    );
  }
}

/** What changes and cancels; there is none at the console. */
export function needsChat(context: Context): Announcements {
  if (context.announcements !== undefined) return context.announcements;
  throw new AskError(
    "no-chat",
    null,
    "Announced sessions are changed and cancelled in Discord: here there is none to publish in.",
  );
}
