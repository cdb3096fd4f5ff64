/**
 * `outreach`: which evening suits the public, in what order to show what, and telling them.
 *
 * @packageDocumentation
 */
import type { Command } from "./command.ts";
import { rankEvenings } from "./outreach-dates.ts";
import { planEvening } from "./outreach-plan.ts";
import { rankSunSessions } from "./outreach-sun-dates.ts";
import { planSunSession } from "./outreach-sun-plan.ts";
import { defineSubcommand, defineText, NIGHT, NIGHTS, SITE, SKY } from "./read/options.ts";
import { AUDIENCE, GUESTS, HOURS, isSunSession, SESSION, WEEKDAYS } from "./read/session.ts";

const INSTRUMENTS = defineText(
  "instruments",
  "At hand, such as eyes, 2x binoculars 10x50, 1x 80mm, 1x 250mm",
);
const SHOW = defineText("show", "What must be shown, with commas, such as Saturn, M13");

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
      defineSubcommand("plan", "The running order of one session, with a sheet to print", [
        NIGHT,
        SITE,
        HOURS,
        AUDIENCE,
        INSTRUMENTS,
        GUESTS,
        SESSION,
        SHOW,
        SKY,
      ]),
    ],
    defaultSubcommand: "dates",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "plan":
        return isSunSession(request) ? planSunSession(request, context) : planEvening(request, context);
      default:
        return isSunSession(request) ? rankSunSessions(request, context) : rankEvenings(request, context);
    }
  },
};
