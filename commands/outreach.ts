/**
 * `outreach`: which evening suits the public, in what order to show what, and telling them.
 *
 * @packageDocumentation
 */
import type { Command } from "./command.ts";
import { announceSession, cancelSession, changeSession, sessionCompletions } from "./outreach-announce.ts";
import { rankEvenings } from "./outreach-dates.ts";
import { planEvening } from "./outreach-plan.ts";
import { outreachSettings, SETTINGS_OPTIONS } from "./outreach-settings.ts";
import { rankSunSessions } from "./outreach-sun-dates.ts";
import { planSunSession } from "./outreach-sun-plan.ts";
import { defineCompleted, defineSubcommand, defineText, NIGHT, NIGHTS, SITE, SKY } from "./read/options.ts";
import { AUDIENCE, GUESTS, HOURS, isSunSession, SESSION, WEEKDAYS } from "./read/session.ts";

const INSTRUMENTS = defineText(
  "instruments",
  "At hand, such as eyes, 2x binoculars 10x50, 1x 80mm, 1x 250mm",
);
const SHOW = defineText("show", "What must be shown, with commas, such as Saturn, M13");

const PLAN = [NIGHT, SITE, HOURS, AUDIENCE, INSTRUMENTS, GUESTS, SESSION, SHOW, SKY];

const NAME = defineText("name", "What the session is called; default: by its site", { maxLength: 40 });
const PLACE = defineText("place", "Where people come to, in words; default: the site's name", {
  maxLength: 40,
});
const EVENT = defineCompleted("event", "The announced session; default: the only one");

export const outreach: Command = {
  definition: {
    name: "outreach",
    description: "Public evenings: which date, which order, and the announcement",
    options: [
      defineSubcommand("dates", "The evenings of a span that suit the public, and their rain dates", [
        NIGHT,
        NIGHTS,
        SITE,
        HOURS,
        WEEKDAYS,
        AUDIENCE,
        SESSION,
      ]),
      defineSubcommand("plan", "The running order of one session, with a sheet to print", [...PLAN]),
      defineSubcommand("announce", "Invite the public: message, event and calendar file; organisers only", [
        NAME,
        PLACE,
        ...PLAN,
      ]),
      defineSubcommand("change", "Change an announced session; organisers only", [
        EVENT,
        NAME,
        PLACE,
        ...PLAN,
      ]),
      defineSubcommand("cancel", "Call an announced session off; organisers only", [EVENT]),
      defineSubcommand(
        "settings",
        "Where sessions are announced, and who hears go or no-go; organisers only",
        SETTINGS_OPTIONS,
      ),
    ],
    defaultSubcommand: "dates",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "plan":
        return isSunSession(request) ? planSunSession(request, context) : planEvening(request, context);
      case "announce":
        return announceSession(request, context);
      case "change":
        return changeSession(request, context);
      case "cancel":
        return cancelSession(request, context);
      case "settings":
        return outreachSettings(request, context);
      default:
        return isSunSession(request) ? rankSunSessions(request, context) : rankEvenings(request, context);
    }
  },

  async complete(option, typed, request, context) {
    return option === "event" ? sessionCompletions(typed, request, context) : null;
  },
};
