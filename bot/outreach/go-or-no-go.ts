/**
 * The day before and three hours before a session: go or no-go for its organisers, with words for the public.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { sessionVerdict, sessionWeatherWords } from "../../commands/session-weather.ts";
import { clockSpan, dateWords } from "../../commands/words/clock.ts";
import { inUnits } from "../../commands/words/units.ts";
import { NOTES, type NoteKind } from "../../config/announcements.ts";
import { OBSERVING_LIMITS } from "../../config/observing-limits.ts";
import { nightOn } from "../../core/night/local-night.ts";
import { nightTimes } from "../../core/night/night-times.ts";
import type { NightVerdict } from "../../core/weather/verdict.ts";
import { messageKey } from "../evening/message-key.ts";
import { postOnce } from "../evening/post-once.ts";
import type { NoteRecord, SessionRecord } from "../store/outreach-book.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import type { Guests } from "./session-message.ts";

const RELEASE_LABEL = "Tell the public";

/**
 * Which note is due; the later one replaces the earlier once its time has come.
 *
 * @returns `null` before the first and from the beginning of the session on
 */
export function noteDue(start: Date, at: Date): NoteKind | null {
  const leftMs = start.getTime() - at.getTime();
  return NOTES.find(({ beforeMs, untilMs }) => leftMs <= beforeMs && leftMs > untilMs)?.kind ?? null;
}

/** The id of the button that releases the words for the public. */
export function releaseButtonId(kind: NoteKind, id: string, key: string): string {
  return `word:${kind}:${id}:${key}`;
}

/** The row of a note: of a session moved to another time, another one. */
export function noteRow(kind: NoteKind, { invitation }: SessionRecord): string {
  return `${kind}-${Math.round(invitation.span.start.getTime() / 1000)}`;
}

/** Sends the note that is due, once, to where the organisers are. */
export async function sendNoteDue(world: OutreachWorld, record: SessionRecord): Promise<void> {
  const { club, id, invitation } = record;
  const kind = noteDue(invitation.span.start, world.clock());
  if (kind === null) return;
  const context = world.contextFor(club);
  const settings = await context.books.clubs.settings(club);
  const channelId = settings.outreach?.organisersChannelId ?? null;
  if (channelId === null) return;
  const row = noteRow(kind, record);
  const claim = { club, night: invitation.night, kind: `outreach-note-${row}-${id}` };
  const known = await world.claims.find(claim);
  if (known !== null && known.state !== "claimed") return;
  const note = (await world.book.note(club, id, row)) ?? (await newNote(world, record, row));
  const key = messageKey(claim);
  const message = {
    key,
    club,
    night: invitation.night,
    answer: note.answer,
    rings: [],
    goingOut: null,
    replyTo: null,
    buttons: [{ id: releaseButtonId(kind, id, key), label: RELEASE_LABEL, primary: true }],
  };
  const outcome = await postOnce({ ...claim, channelId, message, sending: "now" }, world);
  if (outcome.kind === "abandoned") world.log(`a note to organisers was given up: ${outcome.reason}`);
}

async function newNote(world: OutreachWorld, record: SessionRecord, row: string): Promise<NoteRecord> {
  const { club, id, invitation } = record;
  const context = world.contextFor(club);
  const { limits: own, units } = await context.books.clubs.settings(club);
  const limits = { ...OBSERVING_LIMITS, ...own };
  const at = world.clock();
  const report = await context.forecasts.at(invitation.site, at);
  const times = nightTimes(invitation.site, nightOn(invitation.night, invitation.site.timeZone));
  const verdict = sessionVerdict(times, invitation.span, report.models, limits, at);
  const weather = sessionWeatherWords(times, invitation.span, verdict, limits);
  const guests = await world.book.guests(club, id);
  const note = noteOf(record, verdict, weather, report.credits, guests);
  return world.book.keepNote(club, id, row, { ...note, answer: inUnits(note.answer, units) }, at);
}

/** What the organisers read, and what they may release. */
export function noteOf(
  record: SessionRecord,
  verdict: NightVerdict,
  weather: string,
  credits: readonly string[],
  guests: Guests,
): NoteRecord {
  const draft = draftOf(record, verdict, credits);
  const cancels = verdict.kind === "no-go";
  return {
    answer: {
      ...bare(record),
      title: `${verdictTitle(verdict)}: ${record.invitation.name}`,
      summary: weather,
      sections: [
        { heading: "Why", lines: [...verdict.reasons, ...verdict.warnings] },
        {
          heading: "So far",
          lines: [`${guests.coming} say they come, ${guests.notComing} that they cannot.`],
        },
        {
          heading: "For the public, when you release it",
          lines: [
            draft.title,
            draft.summary,
            ...(cancels
              ? ["Releasing it also calls the session off: its event and its invitation say so."]
              : []),
          ],
        },
      ].filter(({ lines }) => lines.length > 0),
      credits,
    },
    draft,
    cancels,
    releasedAt: null,
  };
}

function verdictTitle(verdict: NightVerdict): string {
  switch (verdict.kind) {
    case "go":
      return "Go";
    case "marginal":
      return "Marginal";
    case "no-go":
      return "No-go";
    case "unknown":
      return "No verdict";
  }
}

function draftOf(record: SessionRecord, verdict: NightVerdict, credits: readonly string[]): Answer {
  const { name, night, span, place, site } = record.invitation;
  const when = `${dateWords(night)}, ${clockSpan(span, site.timeZone)}`;
  switch (verdict.kind) {
    case "go":
      return {
        ...bare(record),
        title: `It is on: ${name}`,
        summary: `The forecast is good: come to ${place} on ${when}.`,
        credits,
      };
    case "marginal":
      return {
        ...bare(record),
        title: `It may be cloudy: ${name}`,
        summary: `Cloud may come and go on ${when}. We are at ${place} all the same; look here once more before you set out.`,
        credits,
      };
    case "no-go":
      return {
        ...bare(record),
        title: `Called off: ${name}`,
        summary: `The forecast is against us: the session on ${when} does not take place. Watch for the next date.`,
        credits,
      };
    case "unknown":
      return {
        ...bare(record),
        title: `Before you set out: ${name}`,
        summary: `No forecast is at hand for ${when}. Look at the sky, and here, before you set out for ${place}.`,
      };
  }
}

function bare({ invitation }: SessionRecord): Answer {
  return {
    title: "",
    summary: "",
    sections: [],
    charts: [],
    cautions: invitation.cautions,
    next: [],
    figures: {},
    credits: [],
  };
}
