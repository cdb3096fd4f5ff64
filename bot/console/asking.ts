/**
 * One question at the console: from its words to an answer, a refusal or a failure.
 *
 * The world is opened only once the words make sense, so that a refused question
 * leaves no trace, not even an empty store.
 *
 * @packageDocumentation
 */
import { randomBytes } from "node:crypto";
import type { Answer } from "../../commands/answer.ts";
import { AskError, WorldError } from "../../commands/ask-error.ts";
import type { Command } from "../../commands/command.ts";
import type { Request } from "../../commands/request.ts";
import type { World } from "../world.ts";
import { askerOf } from "./asker.ts";
import { parseQuestion, type Question } from "./command-line.ts";
import type { Flags } from "./flags.ts";
import { readSentFile } from "./sent-file.ts";
import { weatherInstead } from "./weather-instead.ts";

export type Outcome =
  | { readonly kind: "answered"; readonly question: Question; readonly answer: Answer }
  /** The asker's mistake. */
  | { readonly kind: "refused"; readonly option: string | null; readonly message: string }
  /** The world failed; `fault` is for the log. */
  | { readonly kind: "failed"; readonly message: string; readonly fault: unknown };

/** What a thrown value becomes. */
export type Unanswered = Exclude<Outcome, { readonly kind: "answered" }>;

export type Door = {
  readonly commands: readonly Command[];
  /** Opens the world when first asked for. */
  readonly world: () => Promise<World>;
};

/** Asks one question; never throws. */
export async function ask(words: readonly string[], door: Door, defaults: Flags): Promise<Outcome> {
  try {
    const question = parseQuestion(words, { commands: door.commands, readFile: readSentFile }, defaults);
    const { flags, command, subcommand, options } = question;
    const weather = await weatherInstead(flags.forecast);
    const world = await door.world();
    const context = world.context(weather);
    const at = flags.at ?? world.clock();
    const request: Request = {
      command: command.definition.name,
      subcommand,
      options,
      ...(await askerOf(flags, world.store)),
      at,
    };
    return { kind: "answered", question, answer: await command.answer(request, context) };
  } catch (fault) {
    return outcomeOf(fault);
  }
}

/** What a thrown value means for the asker. */
export function outcomeOf(fault: unknown): Unanswered {
  if (fault instanceof AskError) {
    return { kind: "refused", option: fault.option, message: oneLine(fault.message) };
  }
  if (fault instanceof WorldError) return { kind: "failed", message: oneLine(fault.message), fault };
  const incident = randomBytes(3).toString("hex");
  return {
    kind: "failed",
    message: `Something went wrong here (incident ${incident}): the log has the details.`,
    fault: new Error(`incident ${incident}`, { cause: fault }),
  };
}

function oneLine(message: string): string {
  return message
    .replace(/\s+/g, " ")
    .replace(/\p{Cc}/gu, "·")
    .trim();
}
