/**
 * One of the evening's messages, from its words and the people it concerns.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import type { Request } from "../../commands/request.ts";
import { clockSpan } from "../../commands/words/clock.ts";
import { inUnits } from "../../commands/words/units.ts";
import { CLUB_RIG } from "../../config/club-defaults.ts";
import type { Site } from "../../core/site.ts";
import type { NightVerdict } from "../../core/weather/verdict.ts";
import { CLUB_ITSELF } from "./club-night.ts";
import type { EveningMessage, Person } from "./evening-channel.ts";
import type { EveningWorld } from "./evening-world.ts";
import { messageKey } from "./message-key.ts";
import { type ClubNight, POST_KIND } from "./plan.ts";
import { yieldToOthers } from "./yield.ts";

/** A site and what the weather says there. */
export type JudgedSite = { readonly site: Site; readonly verdict: NightVerdict };

/** The words of a night's post for one site, the others in a line each. */
export async function composeNight(
  world: EveningWorld,
  { club, context, night }: ClubNight,
  lead: Site,
  others: readonly JudgedSite[],
): Promise<Answer> {
  const request: Request = {
    command: "evening",
    subcommand: null,
    options: { site: lead.name, night: night.times.night.date, rig: club.settings.rig ?? CLUB_RIG },
    member: CLUB_ITSELF,
    club: club.id,
    at: world.clock(),
  };
  await yieldToOthers();
  const composed = await world.compose(request, context);
  await yieldToOthers();
  const answer = inUnits(composed.answer, club.settings.units);
  if (others.length === 0) return answer;
  const section = { heading: "Also", lines: others.map(siteLine) };
  return { ...answer, sections: [...answer.sections, section] };
}

function siteLine({ site, verdict }: JudgedSite): string {
  if (verdict.kind === "unknown") return `${site.name}: no forecast at hand`;
  const span = verdict.window === null ? "" : `, ${clockSpan(verdict.window, site.timeZone)}`;
  return `${site.name}: ${verdict.kind}${span}`;
}

/** An answer as it is kept to edit names into: charts and files stay in the message as they are. */
export function withoutFiles({ attachments: _, ...answer }: Answer): Answer {
  return { ...answer, charts: [] };
}

/** A night's post. */
export function nightMessage(
  club: string,
  night: string,
  answer: Answer,
  rings: readonly Person[],
  goingOut: readonly Person[],
): EveningMessage {
  const key = messageKey({ club, night, kind: POST_KIND });
  return { key, club, night, answer, rings, goingOut, replyTo: null };
}
