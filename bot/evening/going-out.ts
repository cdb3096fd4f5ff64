/**
 * "I'm going out": who pressed it, and their names under the post.
 *
 * @packageDocumentation
 */
import { ATTEMPT_MS, ATTEMPT_PAUSES_MS } from "../../config/evening.ts";
import { nightMessage } from "./compose.ts";
import type { Person } from "./evening-channel.ts";
import type { EveningWorld } from "./evening-world.ts";
import { POST_KIND } from "./plan.ts";

export type GoingOutPress = {
  readonly club: string;
  readonly night: string;
  readonly person: Person;
};

export type GoingOutOutcome = "going" | "not-going" | "over" | "unknown";

export type GoingOut = {
  /** Puts a member down, or takes the name away again. The post shows it shortly after. */
  press(press: GoingOutPress): Promise<GoingOutOutcome>;
  /** Until every post shows its names. */
  settled(): Promise<void>;
};

export function goingOut(world: EveningWorld): GoingOut {
  const edits = new NameEdits(world);
  return {
    async press({ club, night, person }) {
      const record = await world.watches.find(club, night);
      const claim = await world.claims.find({ club, night, kind: POST_KIND });
      if (claim?.state !== "posted") return "unknown";
      const ends = record?.watch.posted?.nightEnds;
      if (ends !== undefined && world.clock() >= ends) return "over";
      const wasDown = await world.people.remove(club, night, "out", person.id);
      if (!wasDown) await world.people.add(club, night, "out", [person], world.clock());
      edits.ask(club, night);
      return wasDown ? "not-going" : "going";
    },
    settled: () => edits.settled(),
  };
}

/** Edits of names, one a post at a time: presses that come meanwhile share the next. */
class NameEdits {
  readonly #world: EveningWorld;
  readonly #underWay = new Map<string, Promise<void>>();
  readonly #askedAgain = new Set<string>();

  constructor(world: EveningWorld) {
    this.#world = world;
  }

  ask(club: string, night: string): void {
    const key = `${club} ${night}`;
    if (this.#underWay.has(key)) {
      this.#askedAgain.add(key);
      return;
    }
    const edit = this.#edit(club, night)
      .catch((fault: unknown) => this.#world.log(`names could not be shown: ${String(fault)}`))
      .finally(() => {
        this.#underWay.delete(key);
        if (this.#askedAgain.delete(key)) this.ask(club, night);
      });
    this.#underWay.set(key, edit);
  }

  async settled(): Promise<void> {
    while (this.#underWay.size > 0) await Promise.all(this.#underWay.values());
  }

  async #edit(club: string, night: string): Promise<void> {
    const { watches, people, channel, pause } = this.#world;
    for (const pauseMs of ATTEMPT_PAUSES_MS) {
      const record = await watches.find(club, night);
      const posted = record?.watch.posted ?? null;
      if (record === null || posted === null || posted.gone) return;
      const rings = await people.list(club, night, "mentioned");
      const goers = await people.list(club, night, "out");
      const message = nightMessage(club, night, posted.answer, rings, goers);
      const outcome = await channel.edit(posted.channelId, posted.messageId, message, "kept", ATTEMPT_MS);
      if (outcome.kind === "deleted") {
        await watches.save(club, night, { ...record.watch, posted: { ...posted, gone: true } }, record.turn);
      }
      if (outcome.kind !== "unclear") return;
      await pause(Math.max(pauseMs, outcome.retryAfterMs ?? 0));
    }
  }
}
