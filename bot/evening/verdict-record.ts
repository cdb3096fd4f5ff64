/**
 * Verdicts written down as they are given, so that the record can set them against the nights.
 *
 * @packageDocumentation
 */
import { verdictNotes } from "../../commands/forecast-record.ts";
import { nightsFrom } from "../../core/night/local-night.ts";
import type { NightTimes } from "../../core/night/night.ts";
import type { Site } from "../../core/site.ts";
import { judge } from "./club-night.ts";
import type { JudgedSite } from "./compose.ts";
import type { EveningWorld } from "./evening-world.ts";
import type { ClubNight } from "./plan.ts";
import { yieldToOthers } from "./yield.ts";

/**
 * Notes the night's verdict at each site and, at the first look, those of the nights ahead.
 *
 * @param judged - the night at hand; the first verdict noted of a night and lead stands
 */
export async function noteVerdicts(
  world: EveningWorld,
  task: ClubNight,
  judged: readonly JudgedSite[],
  timesOf: (site: Site, date: string) => NightTimes,
): Promise<void> {
  const { record } = task.context.books;
  for (const { site, verdict } of judged) {
    await record.note(task.club.id, site.name, verdictNotes(verdict));
  }
  if (task.record !== null) return;
  const ahead = nightsFrom(task.night.times.night, task.limits.outlookNights + 1).slice(1);
  for (const { site } of judged) {
    for (const { date } of ahead) {
      await yieldToOthers();
      const verdict = await judge(site, timesOf(site, date), task.limits, task.context, world.clock());
      await record.note(task.club.id, site.name, verdictNotes(verdict));
    }
  }
}
