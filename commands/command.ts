/**
 * A command: what can be asked, who sees the answer, how it is answered.
 *
 * @packageDocumentation
 */
import type { APIApplicationCommandOption } from "discord-api-types/v10";
import type { Answer } from "./answer.ts";
import type { Context } from "./context.ts";
import type { Request } from "./request.ts";

/** What a typed word may be completed to. */
export type Completion = { readonly name: string; readonly value: string };

export type CommandDefinition = {
  readonly name: string;
  readonly description: string;
  readonly options: readonly APIApplicationCommandOption[];
  /** Where there are subcommands: the one meant when the console hears none. Not for registering. */
  readonly defaultSubcommand?: string;
};

/** `member`: shown to the asker alone, with a button to share. `channel`: shown to all. */
export type Audience = "member" | "channel";

export type Command = {
  readonly definition: CommandDefinition;
  readonly audience: Audience;
  answer(request: Request, context: Context): Promise<Answer>;
  /**
   * Choices for an option as it is typed; memory only, never the network. Without it, and
   * where it gives `null`, the door completes `target`, `site`, `rig` and `filter` by itself.
   */
  complete?(
    option: string,
    typed: string,
    request: Request,
    context: Context,
  ): Promise<readonly Completion[] | null>;
};
