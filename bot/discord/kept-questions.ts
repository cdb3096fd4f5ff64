/**
 * Questions as buttons keep them, and back again.
 *
 * @packageDocumentation
 */
import type { FollowUp } from "../../commands/answer.ts";
import type { Asker, Request } from "../../commands/request.ts";
import type { KeptQuestion } from "../store/answer-buttons.ts";

/**
 * What a follow-up asks.
 *
 * @param at - the clock to answer by; `null` for that of the press
 */
export function followUpQuestion({ command, options }: FollowUp, at: Date | null): KeptQuestion {
  const { subcommand, ...rest } = options;
  return {
    command,
    subcommand: typeof subcommand === "string" ? subcommand : null,
    options: rest,
    at: at?.toISOString() ?? null,
  };
}

/** A question just asked, for the button that shares its answer; files are not kept. */
export function askedQuestion({ command, subcommand, options, at }: Request): KeptQuestion {
  const plain = Object.entries(options).flatMap(([name, value]) =>
    typeof value === "object" ? [] : [[name, value] as const],
  );
  return { command, subcommand, options: Object.fromEntries(plain), at: at.toISOString() };
}

/** The request that a button's press makes. */
export function keptRequest(question: KeptQuestion, member: Asker, club: string, now: Date): Request {
  const { command, subcommand, options, at } = question;
  return { command, subcommand, options, member, club, at: at === null ? now : new Date(at) };
}
