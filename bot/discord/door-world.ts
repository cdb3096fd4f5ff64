/**
 * What the Discord door's handlers work with.
 *
 * @packageDocumentation
 */
import type { Command } from "../../commands/command.ts";
import type { Context } from "../../commands/context.ts";
import type { GoingOut } from "../evening/going-out.ts";
import type { OutreachDoor } from "../outreach/outreach-door.ts";
import type { ButtonBook } from "../store/answer-buttons.ts";
import type { CompletionMemory } from "./completion-memory.ts";
import type { DrawChart } from "./message-files.ts";
import type { FetchFile } from "./request-options.ts";

export type DoorWorld = {
  readonly commands: ReadonlyMap<string, Command>;
  readonly buttons: ButtonBook;
  readonly completions: CompletionMemory;
  readonly goingOut: GoingOut;
  /** Buttons of public sessions. */
  readonly sessions: OutreachDoor;
  readonly draw: DrawChart;
  readonly fetchFile: FetchFile;
  contextFor(club: string): Context;
  clock(): Date;
  log(line: string): void;
};
