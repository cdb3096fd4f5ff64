/**
 * One tick for all announced sessions: what is half done is carried on, notes that are due go out.
 *
 * @packageDocumentation
 */
import { KEEP_SESSIONS_MS, NOTES } from "../../config/announcements.ts";
import { yieldToOthers } from "../evening/yield.ts";
import type { SessionRecord } from "../store/outreach-book.ts";
import { carryOut } from "./carry-out.ts";
import { sendNoteDue } from "./go-or-no-go.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import { resumeReleased } from "./public-word.ts";

export type OutreachRun = {
  /** Does what is to be done now; a tick that comes while one is under way does nothing. */
  tick(): Promise<void>;
};

export function outreachRun(world: OutreachWorld): OutreachRun {
  let underWay: Promise<void> | null = null;
  return {
    tick() {
      underWay ??= oneTick(world).finally(() => {
        underWay = null;
      });
      return underWay;
    },
  };
}

async function oneTick(world: OutreachWorld): Promise<void> {
  for (const record of await world.book.alive(world.clock())) {
    await yieldToOthers();
    try {
      await lookAfter(world, record);
    } catch (fault) {
      // One session's fault is not another's: it is tried again next tick.
      world.log(`a public session could not be looked after: ${String(fault)}`);
    }
  }
  await world.book.dropOlderThan(new Date(world.clock().getTime() - KEEP_SESSIONS_MS));
}

async function lookAfter(world: OutreachWorld, record: SessionRecord): Promise<void> {
  const carried = await carryOut(world, record);
  if (carried.kind !== "done" || carried.record.state !== "announced") return;
  await resumeReleased(
    world,
    carried.record,
    NOTES.map(({ kind }) => kind),
  );
  const now = await world.book.find(record.club, record.id);
  if (now?.state === "announced") await sendNoteDue(world, now);
}
