/**
 * An answer as a Discord message, within every limit of one by construction.
 *
 * Pure: what is shown follows from the answer alone. Charts and files are named
 * here and drawn elsewhere.
 *
 * @packageDocumentation
 */
import {
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIEmbed,
  ButtonStyle,
  ComponentType,
} from "discord-api-types/v10";
import type { Answer } from "../../commands/answer.ts";
import {
  BUTTON_LABEL_LENGTH,
  BUTTONS_A_ROW,
  EMBED_COLOUR,
  EMBED_DESCRIPTION_LENGTH,
  EMBED_FIELD_LENGTH,
  EMBED_TITLE_LENGTH,
  ROWS_A_MESSAGE,
} from "../../config/discord-limits.ts";
import { placeCautions } from "./caution-text.ts";
import { escaped, escapedWithLinks, shortened } from "./plain-text.ts";
import { sectionText } from "./section-text.ts";

export type ShownButton = {
  readonly id: string;
  readonly label: string;
  readonly primary: boolean;
  /** Shown, and not to be pressed. */
  readonly disabled?: boolean;
};

/** What goes with an answer's own words. */
export type Beside = {
  readonly buttons: readonly ShownButton[];
  /** Members to ring: the only ones this message can ring. */
  readonly rings: readonly string[];
  /** A heading with names under the answer, or `null`. */
  readonly names: { readonly heading: string; readonly names: readonly string[] } | null;
  /** Said in small print under the answer, such as that files were too large. */
  readonly remarks: readonly string[];
  /** Headings with words of ours, such as times in each reader's zone: not escaped. */
  readonly fields?: readonly { readonly name: string; readonly value: string }[];
};

export const NOTHING_BESIDE: Beside = { buttons: [], rings: [], names: null, remarks: [] };

export type MessageWords = {
  readonly content: string;
  readonly embeds: readonly APIEmbed[];
  readonly components: readonly APIActionRowComponent<APIButtonComponentWithCustomId>[];
  readonly allowed_mentions: { readonly parse: readonly []; readonly users: readonly string[] };
};

/** The message that shows an answer. */
export function renderAnswer(answer: Answer, beside: Beside = NOTHING_BESIDE): MessageWords {
  const rings = [...new Set(beside.rings)];
  const ringing = rings.length === 0 ? "" : `Asked to be told: ${rings.map((id) => `<@${id}>`).join(" ")}`;
  const cautions = placeCautions(answer.cautions, ringing.length);
  const fields = [
    ...(beside.fields ?? []),
    ...(beside.names === null ? [] : [nameField(beside.names.heading, beside.names.names)]),
  ];
  return {
    content: [...cautions.above, ringing].filter((text) => text !== "").join("\n\n"),
    embeds: [
      {
        title: shortened(escaped(answer.title), EMBED_TITLE_LENGTH),
        description: description(answer, cautions.within, beside.remarks),
        color: EMBED_COLOUR,
        ...(fields.length > 0 ? { fields } : {}),
      },
    ],
    components: buttonRows(beside.buttons),
    allowed_mentions: { parse: [], users: rings },
  };
}

/** Cautions whole, then the summary and the sections, as much as fits, then credits whole. */
function description(answer: Answer, cautions: readonly string[], remarks: readonly string[]): string {
  const head = cautions.join("\n\n");
  const small = [...remarks.map(escaped), ...answer.credits.map(escapedWithLinks)].join("\n");
  const gaps = 3 * "\n\n".length;
  const room = EMBED_DESCRIPTION_LENGTH - head.length - gaps;
  const tail = shortened(small, Math.floor(room / 3));
  const summary = shortened(escaped(answer.summary), Math.floor(room / 3));
  const body = sectionText(answer.sections, room - tail.length - summary.length);
  return [head, summary, body, tail].filter((text) => text !== "").join("\n\n");
}

function nameField(heading: string, names: readonly string[]) {
  const all = names.map(escaped).join(", ");
  const value = all === "" ? "Nobody yet" : all.length <= EMBED_FIELD_LENGTH ? all : manyNames(names);
  return { name: shortened(escaped(heading), EMBED_TITLE_LENGTH), value };
}

/** As many names as fit, and how many more. */
function manyNames(names: readonly string[]): string {
  let text = "";
  let count = 0;
  for (const name of names) {
    const next = text === "" ? escaped(name) : `${text}, ${escaped(name)}`;
    if (next.length > EMBED_FIELD_LENGTH - 30) break;
    text = next;
    count += 1;
  }
  return `${text} and ${names.length - count} more`;
}

function buttonRows(
  buttons: readonly ShownButton[],
): APIActionRowComponent<APIButtonComponentWithCustomId>[] {
  const rows: APIActionRowComponent<APIButtonComponentWithCustomId>[] = [];
  for (let from = 0; from < buttons.length && rows.length < ROWS_A_MESSAGE; from += BUTTONS_A_ROW) {
    const components = buttons.slice(from, from + BUTTONS_A_ROW).map(
      ({ id, label, primary, disabled }): APIButtonComponentWithCustomId => ({
        type: ComponentType.Button,
        style: primary ? ButtonStyle.Primary : ButtonStyle.Secondary,
        label: shortened(label.trim() || "More", BUTTON_LABEL_LENGTH),
        custom_id: id,
        ...(disabled ? { disabled } : {}),
      }),
    );
    rows.push({ type: ComponentType.ActionRow, components });
  }
  return rows;
}
