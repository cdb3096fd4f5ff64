/**
 * The console door: `ask COMMAND …` answers one question, `ask --lines` many.
 *
 * Ends with 0 when it answered, 2 for the asker's mistake, 3 when the world failed.
 *
 * @packageDocumentation
 */
import { join } from "node:path";
import { createInterface } from "node:readline";
import { COMMANDS } from "../../commands/all.ts";
import { WorldError } from "../../commands/ask-error.ts";
import { readSettings, type Settings, SettingsError } from "../../config/settings.ts";
import { openConsoleWorld } from "../demo-club.ts";
import type { World } from "../world.ts";
import { answerJson, errorJson } from "./answer-json.ts";
import { textWidth } from "./answer-text.ts";
import { ask, type Door, type Outcome, outcomeOf } from "./asking.ts";
import { parseFlags } from "./command-line.ts";
import { type Flags, isFlag, NO_FLAGS, takesWord } from "./flags.ts";
import { helpAsked } from "./help.ts";
import { OutputFolder, saveAttachments, saveCharts } from "./saved-files.ts";
import { complaint, shownAnswer } from "./show.ts";

const ANSWERED = 0;
const REFUSED = 2;
const FAILED = 3;

/** What asks for JSON, a mistake's too. */
const JSON_FLAGS: readonly string[] = ["--json", "--lines"];

/** What stands before a suggested command in a shell. */
const BEFORE = "npm run --silent ask -- ";

/** Names of files this process wrote, so that one line's chart does not replace another's. */
const written = new Set<string>();

async function main(words: readonly string[]): Promise<number> {
  const door = openDoor();
  try {
    return standsForLines(words) ? await answerLines(words, door) : await answerOne(words, door);
  } finally {
    await door.close();
  }
}

async function answerOne(words: readonly string[], door: Door): Promise<number> {
  try {
    const help = helpAsked(words, door.commands, textWidth(process.stdout.columns));
    if (help !== null) {
      process.stdout.write(help);
      return ANSWERED;
    }
  } catch (fault) {
    return complain(outcomeOf(fault));
  }
  const outcome = await ask(words, door, NO_FLAGS);
  const json =
    outcome.kind === "answered"
      ? outcome.question.flags.json
      : JSON_FLAGS.some((flag) => words.includes(flag));
  if (json) {
    const { line, code } = await lineFor(outcome);
    process.stdout.write(`${line}\n`);
    return code;
  }
  if (outcome.kind !== "answered") return complain(outcome);
  try {
    const { answer, question } = outcome;
    const chartFolder = question.flags.charts ?? join(hostSettings().dataFolder, "charts");
    const style = { columns: process.stdout.columns, before: BEFORE };
    process.stdout.write(await shownAnswer(answer, new OutputFolder(chartFolder, written), style));
    return ANSWERED;
  } catch (fault) {
    return complain(outcomeOf(fault));
  }
}

async function answerLines(words: readonly string[], door: Door): Promise<number> {
  let defaults: Flags;
  try {
    defaults = parseFlags(words);
  } catch (fault) {
    const { line, code } = await lineFor(outcomeOf(fault));
    process.stdout.write(`${line}\n`);
    return code;
  }
  for await (const text of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
    if (text.trim() === "") continue;
    const asked = wordsOfLine(text);
    const outcome: Outcome = asked === null ? NOT_WORDS : await ask(asked, door, defaults);
    process.stdout.write(`${(await lineFor(outcome)).line}\n`);
  }
  return ANSWERED;
}

const NOT_WORDS: Outcome = {
  kind: "refused",
  option: null,
  message: 'A line is a question as a JSON array of words, such as ["night", "--site", "54.5, -2.6"].',
};

/** The words of one line, or `null` when it is no array of words or an empty one. */
function wordsOfLine(text: string): readonly string[] | null {
  try {
    const read: unknown = JSON.parse(text);
    const isWords = Array.isArray(read) && read.length > 0 && read.every((word) => typeof word === "string");
    return isWords ? read : null;
  } catch {
    return null;
  }
}

/** An outcome as its JSON line, its charts drawn where a folder was named; complaints go to standard error. */
async function lineFor(outcome: Outcome): Promise<{ readonly line: string; readonly code: number }> {
  if (outcome.kind !== "answered") {
    const option = outcome.kind === "refused" ? outcome.option : null;
    return { line: errorJson(option, outcome.message), code: complain(outcome) };
  }
  try {
    const { answer, question } = outcome;
    const folder = question.flags.charts === null ? null : new OutputFolder(question.flags.charts, written);
    const charts = await saveCharts(answer.charts, folder);
    const files = await saveAttachments(answer.attachments, folder);
    return { line: answerJson(question.command.definition.name, answer, charts, files), code: ANSWERED };
  } catch (fault) {
    return lineFor(outcomeOf(fault));
  }
}

function complain(outcome: Outcome): number {
  if (outcome.kind === "answered") return ANSWERED;
  process.stderr.write(complaint(outcome));
  return outcome.kind === "refused" ? REFUSED : FAILED;
}

/** Whether the words hold only general flags, `--lines` among them, up to the first other word. */
function standsForLines(words: readonly string[]): boolean {
  for (let at = 0; at < words.length; at++) {
    const name = (words[at] ?? "").replace(/^--/, "");
    if (!words[at]?.startsWith("--") || !isFlag(name)) return false;
    if (name === "lines") return true;
    if (takesWord(name)) at++;
  }
  return false;
}

/** A wrong setting is the host's to mend, not the asker's. */
function hostSettings(): Settings {
  try {
    return readSettings(process.env);
  } catch (fault) {
    throw fault instanceof SettingsError ? new WorldError(fault.message, fault) : fault;
  }
}

function openDoor(): Door & { close(): Promise<void> } {
  let opening: Promise<World> | null = null;
  return {
    commands: COMMANDS,
    async world() {
      opening ??= openConsoleWorld(hostSettings(), { warn });
      return opening;
    },
    async close() {
      const world = await opening?.catch(() => null);
      await world?.close();
    },
  };
}

function warn(sentence: string): void {
  process.stderr.write(`${sentence}\n`);
}

// Whoever reads may have had enough (`ask … | head`): that is no failure.
process.stdout.on("error", () => process.exit(ANSWERED));
const code = await main(process.argv.slice(2));
// Standard output may be a pipe that is still being read; connections kept alive must not hold the process.
process.stdout.write("", () => process.exit(code));
