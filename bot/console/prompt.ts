/**
 * Questions at a prompt, until `quit`; no question ends it.
 *
 * @packageDocumentation
 */
import { createInterface } from "node:readline";
import { textWidth } from "./answer-text.ts";
import { ask, type Door, outcomeOf } from "./asking.ts";
import { NO_FLAGS } from "./flags.ts";
import { helpAsked } from "./help.ts";
import { OutputFolder } from "./saved-files.ts";
import { complaint, shownAnswer } from "./show.ts";
import { splitWords } from "./split-words.ts";

/** Where a prompt reads and writes; the process's own, or a test's. */
export type Terminal = {
  readonly input: NodeJS.ReadableStream;
  readonly output: NodeJS.WritableStream & { readonly columns?: number };
};

const PROMPT = "duskbell> ";

/** Asks until the member quits or the input ends. */
export async function prompt(terminal: Terminal, door: Door, chartFolder: string): Promise<void> {
  const lines = createInterface({ input: terminal.input, output: terminal.output, prompt: PROMPT });
  const written = new Set<string>();
  lines.on("SIGINT", () => lines.close());
  lines.prompt();
  for await (const line of lines) {
    const words = splitWords(line);
    const [first] = words;
    if (first === "quit" || first === "exit") break;
    if (first !== undefined)
      terminal.output.write(await replyTo(words, terminal, door, chartFolder, written));
    lines.prompt();
  }
  lines.close();
}

async function replyTo(
  words: readonly string[],
  terminal: Terminal,
  door: Door,
  chartFolder: string,
  written: Set<string>,
): Promise<string> {
  const width = textWidth(terminal.output.columns);
  try {
    const help = helpAsked(words, door.commands, width);
    if (help !== null) return help;
    const outcome = await ask(words, door, NO_FLAGS);
    if (outcome.kind !== "answered") return complaint(outcome);
    const folder = new OutputFolder(outcome.question.flags.charts ?? chartFolder, written);
    return await shownAnswer(outcome.answer, folder, { columns: width, before: "" });
  } catch (fault) {
    return complaint(outcomeOf(fault));
  }
}
