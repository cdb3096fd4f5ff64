/**
 * `notify`: to be mentioned in the evening post, for one's own site and hours, or no longer.
 *
 * @packageDocumentation
 */
import { NOTIFY_LEAST_HOURS, NOTIFY_LEAST_HOURS_RANGE } from "../config/club-defaults.ts";
import type { Answer } from "./answer.ts";
import type { NotifyWish } from "./books.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { matchKey } from "./read/names.ts";
import { numberOption, textOption } from "./read/numbers.ts";
import { defineNumber, defineSubcommand, SITE } from "./read/options.ts";
import { defaultSite, unknownSite } from "./read/site.ts";
import type { Request } from "./request.ts";
import { durationWords } from "./words/clock.ts";

export const notify: Command = {
  definition: {
    name: "notify",
    description: "Be mentioned in the evening post when the night suits you",
    options: [
      defineSubcommand("on", "Mention me", [
        { ...SITE, description: "One of your sites, or a shared one; default: your own" },
        defineNumber("hours", "Only with so many usable hours there"),
      ]),
      defineSubcommand("off", "Do not mention me"),
      defineSubcommand("show", "Whether you are mentioned"),
    ],
    defaultSubcommand: "show",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "on":
        return turnOn(request, context);
      case "off":
        await context.books.notify.remove(request.club, request.member.id);
        return described(null);
      default:
        return described(await context.books.notify.get(request.club, request.member.id));
    }
  },
};

async function turnOn(request: Request, context: Context): Promise<Answer> {
  const leastHours =
    numberOption(request, "hours", { ...NOTIFY_LEAST_HOURS_RANGE, unit: "hours" }) ?? NOTIFY_LEAST_HOURS;
  const wish: NotifyWish = { siteName: await savedSiteName(request, context), leastHours };
  await context.books.notify.set(request.club, request.member.id, wish);
  return described(wish);
}

/** A site that is kept, since it must still be there on the evening; `null` for the default. */
async function savedSiteName(request: Request, context: Context): Promise<string | null> {
  const text = textOption(request, "site");
  if (text === null) {
    await defaultSite(request, context);
    return null;
  }
  const saved = await context.books.sites.list(request.club, request.member.id);
  const known = saved.find(({ site }) => matchKey(site.name) === matchKey(text));
  if (known === undefined) throw unknownSite("site", text, saved);
  return known.site.name;
}

function described(wish: NotifyWish | null): Answer {
  const place = wish?.siteName ?? "your default site";
  return {
    title: wish === null ? "You are not mentioned" : "You are mentioned when the night suits you",
    summary:
      wish === null
        ? "The evening post rings you only if you ask for it with “notify on”."
        : `The evening post rings you when ${place} has at least ${durationWords(wish.leastHours)} usable in the dark.`,
    sections: [],
    charts: [],
    cautions: [],
    next:
      wish === null
        ? [{ label: "Mention me", command: "notify", options: { subcommand: "on" } }]
        : [{ label: "Do not mention me", command: "notify", options: { subcommand: "off" } }],
    figures: { on: wish !== null, site: wish?.siteName ?? null, leastHours: wish?.leastHours ?? null },
    credits: [],
  };
}
