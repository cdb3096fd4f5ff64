/**
 * The instant of a night that a question is about.
 *
 * @packageDocumentation
 */
import { instantInNight } from "../../core/log/night-of.ts";
import type { NightTimes } from "../../core/night/night.ts";
import { AskError } from "../ask-error.ts";
import type { Request } from "../request.ts";
import { textOption } from "./numbers.ts";
import { defineText } from "./options.ts";

export const TIME = defineText(
  "time",
  "The clock at the site, HH:MM; default: now, or dusk of a named night",
  {
    maxLength: 5,
  },
);

/**
 * The named time of the night; else now, or the beginning of the darkness when a night is named.
 *
 * @throws AskError when the time cannot be read
 */
export function momentOf(request: Request, times: NightTimes): Date {
  const text = textOption(request, "time");
  const { night } = times;
  if (text === null) {
    if (textOption(request, "night") === null) return request.at;
    return times.workingWindows[0]?.start ?? times.sunset ?? request.at;
  }
  return clockInNight("time", text, night.date, night.timeZone);
}

/**
 * A wall clock in a night as an instant.
 *
 * @param option - the option it came from, for the message
 */
export function clockInNight(option: string, text: string, night: string, timeZone: string): Date {
  const instant = /^\d{1,2}:\d{2}$/.test(text) ? instantInNight(night, text, timeZone) : null;
  if (instant !== null) return instant;
  throw new AskError("not-a-time", option, `“${option}” needs a time of day, HH:MM, such as 22:40.`);
}
