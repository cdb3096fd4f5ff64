/**
 * The files of a message: charts drawn with their text alternative, then what the answer brings.
 *
 * @packageDocumentation
 */
import type { Answer } from "../../commands/answer.ts";
import type { Chart } from "../../commands/chart.ts";
import { ALT_TEXT_LENGTH, FILE_BYTES, FILES_A_MESSAGE, FILES_BYTES } from "../../config/discord-limits.ts";
import { yieldToOthers } from "../evening/yield.ts";
import { shortened } from "./plain-text.ts";

export type MessageFile = {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
  /** Text alternative; `null` for what is no picture. */
  readonly description: string | null;
};

export type DrawChart = (chart: Chart) => Promise<Uint8Array>;

export type MessageFiles = {
  readonly files: readonly MessageFile[];
  /** Sentences on what could not go with the message. */
  readonly remarks: readonly string[];
};

/** Draws an answer's charts and gathers its files, as many and as large as a message takes. */
export async function messageFiles(answer: Answer, draw: DrawChart): Promise<MessageFiles> {
  const wanted: MessageFile[] = [];
  for (const chart of answer.charts) {
    await yieldToOthers();
    wanted.push({
      name: `${chart.name}.png`,
      mediaType: "image/png",
      bytes: await draw(chart),
      description: shortened(chart.alt, ALT_TEXT_LENGTH),
    });
  }
  for (const { name, mediaType, bytes, alt } of answer.attachments ?? []) {
    wanted.push({
      name,
      mediaType,
      bytes,
      description: alt === undefined ? null : shortened(alt, ALT_TEXT_LENGTH),
    });
  }
  return limited(wanted);
}

function limited(wanted: readonly MessageFile[]): MessageFiles {
  const files: MessageFile[] = [];
  const left: string[] = [];
  let total = 0;
  for (const file of wanted) {
    const size = file.bytes.length;
    if (files.length === FILES_A_MESSAGE || size > FILE_BYTES || total + size > FILES_BYTES) {
      left.push(file.name);
      continue;
    }
    total += size;
    files.push(file);
  }
  if (left.length === 0) return { files, remarks: [] };
  return { files, remarks: [`Too large for one message, and left out: ${left.join(", ")}.`] };
}
