/**
 * An answer, or a refusal, as one JSON object.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import type { SavedChart, SavedFile } from "./saved-files.ts";

/** The answer on one line. */
export function answerJson(
  command: string,
  answer: Answer,
  charts: readonly SavedChart[],
  files: readonly SavedFile[],
): string {
  return JSON.stringify({
    command,
    title: answer.title,
    summary: answer.summary,
    cautions: answer.cautions,
    charts,
    next: answer.next,
    figures: answer.figures,
    credits: answer.credits,
    ...(files.length > 0 ? { files } : {}),
  });
}

/** The refusal on one line. */
export function errorJson(option: string | null, message: string): string {
  return JSON.stringify({ error: { option, message } });
}
