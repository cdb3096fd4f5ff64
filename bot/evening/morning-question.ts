/**
 * The morning after: those who were out are asked, once, whether the sky kept its word.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { skyQuestionButtons } from "../../commands/forecast-record.ts";
import { dateWords } from "../../commands/words/clock.ts";
import type { EveningWorld } from "./evening-world.ts";
import { QUESTION_KIND, type Task } from "./plan.ts";
import { replyToPost } from "./reply-to-post.ts";
import type { PostedWatch } from "./watch.ts";

/** Asks under the post, if anybody was out and a go or no-go was given. */
export async function askAfter(world: EveningWorld, task: Extract<Task, { kind: "ask" }>): Promise<void> {
  const { club, posted, context } = task;
  const night = task.night.times.night.date;
  const goers = await world.people.list(club.id, night, "out");
  if (goers.length === 0) return;
  const notes = await context.books.record.notes(club.id, posted.siteName);
  const given = notes.find((note) => note.night === night && note.model === null && note.leadNights === 0);
  if (given === undefined || given.verdict === "marginal") return;
  await replyToPost(world, {
    club: club.id,
    night,
    channelId: posted.channelId,
    replyTo: posted.messageId,
    kind: QUESTION_KIND,
    answer: question(night, posted, given.verdict),
    rings: goers,
    worthSending: true,
    nightOver: true,
  });
}

function question(night: string, posted: PostedWatch, verdict: string): Answer {
  return {
    title: "Did the sky keep its word?",
    summary: `The verdict for ${dateWords(night)} at ${posted.siteName} was “${verdict}”. You were out: was it right?`,
    sections: [],
    charts: [],
    cautions: posted.answer.cautions,
    next: skyQuestionButtons(night, posted.siteName),
    figures: {},
    credits: [],
  };
}
