/**
 * Who comes to a public session, on which days, from when to when.
 *
 * @packageDocumentation
 */
import {
  AUDIENCES,
  EVENING_HOURS,
  GUESTS_RANGE,
  SESSION_HOURS,
  USUAL_GUESTS,
} from "../../config/outreach-evenings.ts";
import { type Interval, intervalHours } from "../../core/interval.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Audience } from "../../core/outreach/audience.ts";
import { eveningSession, neverSets, type Session, type SessionHours } from "../../core/outreach/session.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { textOption, wholeNumberOption } from "./numbers.ts";
import { defineChoice, defineText, defineWhole } from "./options.ts";
import { said } from "./said.ts";

export const HOURS = defineText("hours", "The clock at the site, such as 19:00-21:30; default: by audience");
export const AUDIENCE = defineChoice("audience", "Who comes; default: mixed", Object.keys(AUDIENCES));
export const SESSION = defineChoice("session", "By night, or the Sun by day; default: night", [
  "night",
  "sun",
]);
export const WEEKDAYS = defineText("weekdays", "Only these, such as fri, sat or mon-thu; default: any");
export const GUESTS = defineWhole(
  "guests",
  `How many people come, ${GUESTS_RANGE.min} to ${GUESTS_RANGE.max}; default: ${USUAL_GUESTS}`,
);

/** Of the request; `mixed` when nobody says. */
export function audienceOf(request: Request): Audience {
  const text = textOption(request, "audience");
  if (text === null) return "mixed";
  const known = Object.keys(AUDIENCES).find((name) => name === text.toLowerCase());
  if (known !== undefined) return known as Audience;
  throw new AskError(
    "unknown-audience",
    "audience",
    `“audience” must be one of ${Object.keys(AUDIENCES).join(", ")}.`,
  );
}

/** Whether the session is one of the Sun, by day. */
export function isSunSession(request: Request): boolean {
  const text = textOption(request, "session");
  if (text === null || text === "night") return false;
  if (text === "sun") return true;
  throw new AskError("unknown-session", "session", "“session” must be night or sun.");
}

export function guestsOf(request: Request): number {
  return wholeNumberOption(request, "guests", { ...GUESTS_RANGE, unit: "guests" }) ?? USUAL_GUESTS;
}

/**
 * Clock times from words: `19:00-21:30`, `19:00 to 21:30`, `19-21`.
 *
 * @returns `null` when the option was not given
 */
export function hoursOf(request: Request): SessionHours | null {
  const text = textOption(request, "hours");
  if (text === null) return null;
  const read = /^(\d{1,2})(?:[:.](\d{2}))?\s*(?:-|–|to|until)\s*(\d{1,2})(?:[:.](\d{2}))?$/i.exec(text);
  const clock = (hour = "", minute = "00") => {
    const fits = Number(hour) <= 23 && Number(minute) <= 59;
    return fits ? `${hour.padStart(2, "0")}:${minute}` : null;
  };
  const from = read === null ? null : clock(read[1], read[2]);
  const to = read === null ? null : clock(read[3], read[4]);
  if (from === null || to === null) {
    throw new AskError(
      "not-hours",
      "hours",
      "“hours” needs two times of day with a hyphen between, such as 19:00-21:30.",
    );
  }
  return { from, to };
}

/**
 * The evening session of a night.
 *
 * @throws AskError when the hours lie by day, are too short or too long, or the Sun does not set
 */
export function sessionOf(request: Request, times: NightTimes, siteName: string): Session {
  const hours = hoursOf(request);
  const session = eveningSession(times, hours, AUDIENCES[audienceOf(request)], EVENING_HOURS);
  if (session === null) {
    if (neverSets(times)) throw noNight(siteName, times.night.date);
    throw hoursBackwards();
  }
  if (neverSets(times)) throw noNight(siteName, times.night.date);
  checkLength(session);
  if (isByDay(times, session)) {
    throw new AskError(
      "by-day",
      "hours",
      `The Sun is up at ${siteName} through all of “hours”: choose later ones, or ask for session sun.`,
    );
  }
  return session;
}

/** Hours that end before they begin, or lie by day. */
export function hoursBackwards(): AskError {
  return new AskError(
    "hours-backwards",
    "hours",
    "“hours” must begin in the afternoon or the night and end after they begin; by day ask for session sun.",
  );
}

/** @throws AskError when a session is too short or too long */
export function checkLength(session: { readonly start: Date; readonly end: Date }): void {
  const hours = intervalHours(session);
  if (hours >= SESSION_HOURS.min - 1e-9 && hours <= SESSION_HOURS.max + 1e-9) return;
  throw new AskError(
    "out-of-range",
    "hours",
    `“hours” must last from ${SESSION_HOURS.min * 60} minutes to ${SESSION_HOURS.max} hours.`,
  );
}

/** Whether a session lies wholly in daylight. */
export function isByDay({ sunset, sunrise }: NightTimes, session: Interval): boolean {
  if (sunset !== null && session.end <= sunset) return true;
  return sunrise !== null && session.start >= sunrise;
}

function noNight(siteName: string, date: string): AskError {
  return new AskError(
    "no-night",
    "night",
    `The Sun does not set at ${siteName} on ${date}: name another night, or ask for session sun.`,
  );
}

const DAY_NAMES = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/**
 * Days of the week from words: `fri, sat`, `mon-thu`, `weekends`.
 *
 * @returns 1 Monday to 7 Sunday; `null` for any day
 */
export function weekdaysOf(request: Request): ReadonlySet<number> | null {
  const text = textOption(request, "weekdays");
  if (text === null) return null;
  const days = text
    .toLowerCase()
    .split(/[,;&\s]+/)
    .filter((part) => part !== "" && part !== "and")
    .flatMap((part) => daysOf(part, text));
  if (days.length === 0) throw unreadableDays(text);
  return new Set(days);
}

function daysOf(part: string, whole: string): number[] {
  if (part === "any") return [1, 2, 3, 4, 5, 6, 7];
  if (/^weekends?$/.test(part)) return [6, 7];
  if (/^weekdays?$/.test(part)) return [1, 2, 3, 4, 5];
  const [from, to, ...more] = part.split(/[-–]/);
  const first = dayOf(from, whole);
  if (more.length > 0) throw unreadableDays(whole);
  if (to === undefined) return [first];
  const last = dayOf(to, whole);
  const count = ((last - first + 7) % 7) + 1;
  return Array.from({ length: count }, (_, step) => ((first - 1 + step) % 7) + 1);
}

function dayOf(text: string | undefined, whole: string): number {
  const index = DAY_NAMES.findIndex(
    (name) => text !== undefined && text.length >= 3 && text.startsWith(name),
  );
  if (index < 0) throw unreadableDays(whole);
  return index + 1;
}

function unreadableDays(text: string): AskError {
  return new AskError(
    "not-weekdays",
    "weekdays",
    `“weekdays”: “${said(text)}” names no days I know; write fri, sat or mon-thu.`,
  );
}
