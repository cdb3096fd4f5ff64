/**
 * An outcome on the terminal: the answer as text with its files saved, or what went wrong.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import { WorldError } from "../../commands/ask-error.ts";
import { answerText, type TextStyle } from "./answer-text.ts";
import type { Unanswered } from "./asking.ts";
import { type OutputFolder, saveAttachments, saveCharts } from "./saved-files.ts";

/** The answer as text, its charts and files saved into the folder and named in it. */
export async function shownAnswer(answer: Answer, folder: OutputFolder, style: TextStyle): Promise<string> {
  const charts = await saveCharts(answer.charts, folder);
  const files = await saveAttachments(answer.attachments, folder);
  return answerText(
    answer,
    [...charts, ...files.map(({ name, path }) => ({ name, path, alt: name }))],
    style,
  );
}

/** What went wrong in one line, and for a fault of ours everything behind it. */
export function complaint(outcome: Unanswered): string {
  switch (outcome.kind) {
    case "refused":
      return `${outcome.message}\n`;
    case "failed":
      return outcome.fault instanceof WorldError
        ? `${outcome.message}\n`
        : `${outcome.message}\n${inspected(outcome.fault)}\n`;
  }
}

function inspected(fault: unknown): string {
  if (!(fault instanceof Error)) return String(fault);
  const cause = fault.cause === undefined ? "" : `\n${inspected(fault.cause)}`;
  return `${fault.stack ?? fault.message}${cause}`;
}
