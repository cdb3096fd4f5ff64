/**
 * What announcing works with; `bot/discord/start.ts` fills it.
 *
 * @packageDocumentation
 */
import type { EveningWorld } from "../evening/evening-world.ts";
import type { OutreachBook } from "../store/outreach-book.ts";
import type { ScheduledEvents } from "./scheduled-events.ts";

export type OutreachWorld = Pick<
  EveningWorld,
  "claims" | "channel" | "holder" | "contextFor" | "clock" | "pause" | "log"
> & {
  readonly book: OutreachBook;
  readonly events: ScheduledEvents;
};
