import type { Announced, Announcements, AnnounceOutcome, Invitation } from "./announcements.ts";
import type { Answer, Figure } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import { calendarFile } from "./calendar-file.ts";
import type { Completion } from "./command.ts";
import type { Context } from "./context.ts";
import { siteFigures } from "./object-figures.ts";
import { type Drafted, draftInvitation, type Naming, PLAN_OPTIONS } from "./outreach-invitation.ts";
import {
  needsChat,
  refuseBegun,
  refuseCoordinates,
  refuseOthers,
  refuseTwice,
  refuseWithoutEvents,
} from "./outreach-refusals.ts";
import { cleanName, matchKey, nearestNames } from "./read/names.ts";
import { textOption } from "./read/numbers.ts";
import { said } from "./read/said.ts";
import type { Request } from "./request.ts";
import { clockSpan, dateWords } from "./words/clock.ts";
import { listWords } from "./words/sky.ts";

/** Answers `outreach announce`. */
export async function announceSession(request: Request, context: Context): Promise<Answer> {
  refuseOthers(request);
  refuseCoordinates(request);
  const drafted = await draftInvitation(request, context, namingOf(request));
  refuseBegun(drafted.invitation, request.at);
  const { announcements } = context;
  if (announcements === undefined) return describeDraft(request, drafted);
  const settings = (await context.books.clubs.settings(request.club)).outreach;
  if ((settings?.channelId ?? null) === null) {
    throw new AskError(
      "no-channel",
      null,
      "No channel is set for announcements: set one with “outreach settings”, then announce again.",
    );
  }
  refuseWithoutEvents(request, announcements, settings?.scheduledEvents ?? false);
  await refuseTwice(request, announcements, drafted.invitation);
  const outcome = await announcements.announce(request.club, drafted.invitation, drafted.chart);
  return describeOutcome(drafted, outcome, "Announced");
}

/** Answers `outreach change`. */
export async function changeSession(request: Request, context: Context): Promise<Answer> {
  refuseOthers(request);
  refuseCoordinates(request);
  const announcements = needsChat(context);
  const announced = await announcedOf(request, announcements);
  if (announced.state === "cancelled") {
    throw new AskError(
      "called-off",
      "event",
      `“event”: ${said(announced.invitation.name)} is called off and cannot be changed; announce it anew.`,
    );
  }
  const { event: _, name: __, place: ___, ...given } = request.options;
  if (
    Object.keys(given).length === 0 &&
    namingOf(request).name === null &&
    namingOf(request).place === null
  ) {
    throw new AskError("nothing-to-change", null, "Say what to change, such as a place, a night or hours.");
  }
  const { invitation } = announced;
  const kept = Object.fromEntries(
    Object.entries({ ...invitation.asked, night: invitation.night }).filter(([option]) => !(option in given)),
  );
  const { name, place } = namingOf(request);
  const naming = { name: name ?? invitation.name, place: place ?? invitation.place };
  const drafted = await draftInvitation({ ...request, options: { ...kept, ...given } }, context, naming);
  refuseBegun(drafted.invitation, request.at);
  const settings = (await context.books.clubs.settings(request.club)).outreach;
  refuseWithoutEvents(request, announcements, settings?.scheduledEvents ?? false);
  const outcome = await announcements.change(request.club, announced.id, drafted.invitation, drafted.chart);
  return describeOutcome(drafted, outcome, "Changed");
}

/** Answers `outreach cancel`. */
export async function cancelSession(request: Request, context: Context): Promise<Answer> {
  refuseOthers(request);
  const announcements = needsChat(context);
  const announced = await announcedOf(request, announcements);
  const { invitation } = announced;
  if (announced.state === "cancelled") {
    throw new AskError("called-off", "event", `“event”: ${said(invitation.name)} is called off already.`);
  }
  const outcome = await announcements.cancel(request.club, announced.id);
  if (outcome.kind === "refused") throw new AskError("not-cancelled", "event", outcome.reason);
  return {
    title: `Called off: ${invitation.name}`,
    summary:
      outcome.kind === "done"
        ? "Its invitation says so, and its event is cancelled."
        : "Discord has not taken all of it yet: I go on trying.",
    sections: [],
    charts: [],
    cautions: [],
    next: [],
    figures: announcedFigures(outcome.announced),
    credits: [],
  };
}

/** Names of announced sessions, as one types them. */
export async function sessionCompletions(
  typed: string,
  request: Request,
  context: Context,
): Promise<readonly Completion[]> {
  const list = (await context.announcements?.list(request.club)) ?? [];
  return list
    .filter(
      ({ state, invitation }) => state !== "cancelled" && matchKey(invitation.name).includes(matchKey(typed)),
    )
    .slice(0, 25)
    .map(({ invitation }) => ({
      name: `${invitation.name}, ${invitation.night}`.slice(0, 100),
      value: invitation.name,
    }));
}

async function announcedOf(request: Request, announcements: Announcements): Promise<Announced> {
  const list = await announcements.list(request.club);
  const text = textOption(request, "event");
  const alive = list.filter(({ state }) => state !== "cancelled");
  if (text === null) {
    const [only, ...others] = alive;
    if (only !== undefined && others.length === 0) return only;
  }
  const named =
    text === null ? undefined : list.filter(({ invitation }) => matchKey(invitation.name) === matchKey(text));
  const found = named?.find(({ state }) => state !== "cancelled") ?? named?.[0];
  if (found !== undefined) return found;
  const names = nearestNames(
    text ?? "",
    alive.map(({ invitation }) => invitation.name),
  );
  throw new AskError(
    "unknown-event",
    "event",
    names.length === 0
      ? "“event”: no session is announced."
      : `“event” must name one of those announced: ${listWords(names)}.`,
  );
}

/** @throws AskError for a mention, control characters or too many characters */
function namingOf(request: Request): Naming {
  const [name, place] = [textOption(request, "name"), textOption(request, "place")];
  return {
    name: name === null ? null : cleanName("name", name),
    place: place === null ? null : cleanName("place", place),
  };
}

function describeDraft(request: Request, { invitation, crewCautions }: Drafted): Answer {
  const file = calendarFile(
    `outreach-${invitation.night}`,
    [
      {
        key: `outreach-${invitation.night}-${matchKey(invitation.name)}`,
        start: invitation.span.start,
        end: invitation.span.end,
        title: invitation.name,
        cautions: invitation.cautions.map(({ text }) => text),
        lines: [invitation.summary, ...invitation.lines],
        place: invitation.place,
      },
    ],
    request.at,
  );
  return {
    title: `Draft: ${invitation.name}`,
    summary: "A draft and a calendar file; publishing it as an event needs Discord.",
    sections: invitationSections(invitation),
    charts: [],
    cautions: crewCautions,
    next: [],
    figures: { ...invitationFigures(invitation), published: false },
    credits: [],
    attachments: [file],
  };
}

function invitationSections(invitation: Invitation): Answer["sections"] {
  const { night, span, site, place, summary, lines } = invitation;
  return [
    {
      heading: invitation.name,
      lines: [
        summary,
        `When: ${dateWords(night)}, ${clockSpan(span, site.timeZone)} on the clock of ${site.name}`,
        `Where: ${place}`,
        ...lines,
      ],
    },
  ];
}

function describeOutcome(
  { invitation, crewCautions }: Drafted,
  outcome: AnnounceOutcome,
  done: string,
): Answer {
  if (outcome.kind === "refused") throw new AskError("not-announced", null, outcome.reason);
  return {
    title: `${done}: ${invitation.name}`,
    summary:
      outcome.kind === "done"
        ? "The invitation stands in the club's channel; before it begins the organisers hear go or no-go."
        : "Discord has not taken all of it yet: I go on trying.",
    sections: invitationSections(invitation),
    charts: [],
    cautions: crewCautions,
    next: [
      {
        label: "The running order",
        command: "outreach",
        options: { subcommand: "plan", ...planOptions(invitation) },
      },
    ],
    figures: { ...announcedFigures(outcome.announced), published: outcome.kind === "done" },
    credits: [],
  };
}

function planOptions(invitation: Invitation): Record<string, string | number | boolean> {
  const asked = Object.entries(invitation.asked).filter(([option]) =>
    PLAN_OPTIONS.some((name) => name === option),
  );
  return { ...Object.fromEntries(asked), night: invitation.night };
}

function invitationFigures(invitation: Invitation): { readonly [name: string]: Figure } {
  const { name, night, session, span, place, site, cautions } = invitation;
  return {
    name,
    night,
    session,
    start: span.start.toISOString(),
    end: span.end.toISOString(),
    place,
    site: siteFigures(site),
    cautions: cautions.map(({ id }) => id),
  };
}

function announcedFigures({ invitation, ...rest }: Announced): { readonly [name: string]: Figure } {
  return { ...invitationFigures(invitation), ...rest };
}
