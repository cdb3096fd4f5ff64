/**
 * Buttons of public sessions: who comes, and releasing words for the public.
 *
 * @packageDocumentation
 */
import { NOTES, type NoteKind } from "../../config/announcements.ts";
import { ATTEMPT_MS, ATTEMPT_PAUSES_MS } from "../../config/evening.ts";
import type { OutreachWorld } from "./outreach-world.ts";
import { releaseWord } from "./public-word.ts";
import { invitationMessage, isCalledOff } from "./session-message.ts";

export type OutreachPress =
  | { readonly kind: "come"; readonly id: string; readonly isComing: boolean }
  | { readonly kind: "word"; readonly id: string; readonly note: string };

export type OutreachDoor = {
  /** @returns one sentence for whoever pressed */
  press(
    club: string,
    member: { readonly id: string; readonly organiser: boolean },
    press: OutreachPress,
  ): Promise<string>;
  /** Until every invitation shows its counts. */
  settled(): Promise<void>;
};

const ONLY_ORGANISERS =
  "Only those who may manage the server, or hold the club's organiser role, may tell the public.";

export function outreachDoor(world: OutreachWorld): OutreachDoor {
  const counts = new CountEdits(world);
  const { book, clock } = world;
  return {
    async press(club, member, press) {
      const record = await book.find(club, press.id);
      if (record === null || record.state === "failed") return "I know nothing of that session any more.";
      if (press.kind === "word") {
        if (!member.organiser) return ONLY_ORGANISERS;
        const note = NOTES.find(({ kind }) => kind === press.note)?.kind;
        return note === undefined
          ? "I know nothing of that note any more."
          : release(world, club, press.id, note);
      }
      if (isCalledOff(record.state)) return "That session is called off.";
      if (clock() >= record.invitation.span.end) return "That session is over.";
      await book.answer(club, press.id, member.id, press.isComing, clock());
      counts.ask(club, press.id);
      return press.isComing
        ? "You are counted as coming. Press the other button if you change your mind."
        : "You are counted as not coming. Press the other button if you change your mind.";
    },
    settled: () => counts.settled(),
  };
}

async function release(world: OutreachWorld, club: string, id: string, kind: NoteKind): Promise<string> {
  const record = await world.book.find(club, id);
  if (record === null) return "I know nothing of that session any more.";
  const released = await releaseWord(world, record, kind);
  switch (released.kind) {
    case "told":
      return released.calledOff
        ? "The public is told, and the session is called off."
        : "The public is told.";
    case "told-before":
      return "The public was told before.";
    case "over":
      return "That session is over, or was changed since.";
    case "pending":
      return "Discord does not answer just now: I go on trying.";
    case "refused":
      return `It could not be told: ${released.reason}.`;
  }
}

/** Edits of counts, one an invitation at a time: presses that come meanwhile share the next. */
class CountEdits {
  readonly #world: OutreachWorld;
  readonly #underWay = new Map<string, Promise<void>>();
  readonly #askedAgain = new Set<string>();

  constructor(world: OutreachWorld) {
    this.#world = world;
  }

  ask(club: string, id: string): void {
    const key = `${club} ${id}`;
    if (this.#underWay.has(key)) {
      this.#askedAgain.add(key);
      return;
    }
    const edit = this.#edit(club, id)
      .catch((fault: unknown) => this.#world.log(`counts could not be shown: ${String(fault)}`))
      .finally(() => {
        this.#underWay.delete(key);
        if (this.#askedAgain.delete(key)) this.ask(club, id);
      });
    this.#underWay.set(key, edit);
  }

  async settled(): Promise<void> {
    while (this.#underWay.size > 0) await Promise.all(this.#underWay.values());
  }

  async #edit(club: string, id: string): Promise<void> {
    const { book, channel, pause, clock } = this.#world;
    for (const pauseMs of ATTEMPT_PAUSES_MS) {
      const record = await book.find(club, id);
      // What is under way shows the counts by itself.
      if (record === null || record.messageId === null || record.state !== "announced") return;
      const message = invitationMessage(record, await book.guests(club, id), clock());
      const outcome = await channel.edit(record.channelId, record.messageId, message, "kept", ATTEMPT_MS);
      if (outcome.kind !== "unclear") return;
      await pause(Math.max(pauseMs, outcome.retryAfterMs ?? 0));
    }
  }
}
