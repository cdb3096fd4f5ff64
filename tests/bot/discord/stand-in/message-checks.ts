/**
 * What a message may hold: every limit Discord documents, refused with a 400.
 *
 * Lengths are counted in UTF-16 units, which is at least as strict as Discord.
 * Discord's developer documentation: Message, Embed Limits, Message Components.
 *
 * @packageDocumentation
 */
import { ApiError, invalidForm } from "./api-error.ts";
import type { MessageBody, SentPart } from "./state.ts";

const COMPONENTS_V2 = 1 << 15;

type Json = Record<string, unknown>;

const record = (value: unknown): Json =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Json) : {};
const list = (value: unknown): Json[] => (Array.isArray(value) ? value.map(record) : []);

class Complaints {
  readonly found: string[] = [];

  text(value: unknown, name: string, max: number, min = 0): number {
    if (value === undefined || value === null) {
      if (min > 0) this.found.push(`${name}: This field is required`);
      return 0;
    }
    if (typeof value !== "string") {
      this.found.push(`${name}: Could not interpret as string`);
      return 0;
    }
    if (value.length > max || value.trim().length < min) {
      this.found.push(`${name}: Must be between ${min} and ${max} in length`);
    }
    return value.length;
  }

  count(value: readonly unknown[], name: string, max: number): void {
    if (value.length > max) this.found.push(`${name}: Must be ${max} or fewer in length`);
  }
}

function checkEmbeds(embeds: readonly Json[], complaints: Complaints): void {
  complaints.count(embeds, "embeds", 10);
  let total = 0;
  for (const [index, embed] of embeds.entries()) {
    const name = `embeds[${index}]`;
    const fields = list(embed.fields);
    complaints.count(fields, `${name}.fields`, 25);
    total += complaints.text(embed.title, `${name}.title`, 256);
    total += complaints.text(embed.description, `${name}.description`, 4096);
    total += complaints.text(record(embed.footer).text, `${name}.footer.text`, 2048);
    total += complaints.text(record(embed.author).name, `${name}.author.name`, 256);
    for (const [number, field] of fields.entries()) {
      total += complaints.text(field.name, `${name}.fields[${number}].name`, 256, 1);
      total += complaints.text(field.value, `${name}.fields[${number}].value`, 1024, 1);
    }
    const shown = [embed.title, embed.description, embed.image, embed.footer, embed.author];
    if (shown.every((part) => part === undefined || part === "") && fields.length === 0) {
      complaints.found.push(`${name}: an embed may not be empty`);
    }
  }
  if (total > 6000) complaints.found.push(`embeds: Embed size exceeds maximum size of 6000 (${total})`);
}

function checkButton(button: Json, name: string, ids: Set<string>, complaints: Complaints): void {
  if (button.type !== 2) complaints.found.push(`${name}: only buttons are known here`);
  const label = complaints.text(button.label, `${name}.label`, 80);
  if (label === 0 && button.emoji === undefined) {
    complaints.found.push(`${name}: A button needs a label or emoji`);
  }
  if (button.style === 5) {
    complaints.text(button.url, `${name}.url`, 512, 1);
    return;
  }
  complaints.text(button.custom_id, `${name}.custom_id`, 100, 1);
  const id = String(button.custom_id);
  if (ids.has(id)) complaints.found.push(`${name}: Component custom id cannot be duplicated`);
  ids.add(id);
}

function checkComponents(rows: readonly Json[], complaints: Complaints): void {
  complaints.count(rows, "components", 5);
  const ids = new Set<string>();
  for (const [index, row] of rows.entries()) {
    const name = `components[${index}]`;
    if (row.type !== 1) complaints.found.push(`${name}: Value of field "type" must be 1`);
    const buttons = list(row.components);
    complaints.count(buttons, `${name}.components`, 5);
    if (buttons.length === 0) complaints.found.push(`${name}.components: a row may not be empty`);
    for (const [number, button] of buttons.entries()) {
      checkButton(button, `${name}.components[${number}]`, ids, complaints);
    }
  }
}

function checkMentions(mentions: Json, complaints: Complaints): void {
  const parse = Array.isArray(mentions.parse) ? mentions.parse : [];
  for (const kind of ["users", "roles"] as const) {
    const ids = Array.isArray(mentions[kind]) ? (mentions[kind] as unknown[]) : [];
    complaints.count(ids, `allowed_mentions.${kind}`, 100);
    if (ids.length > 0 && parse.includes(kind)) {
      complaints.found.push(`allowed_mentions: parse and ${kind} are mutually exclusive`);
    }
    if (new Set(ids).size !== ids.length) complaints.found.push(`allowed_mentions.${kind}: not unique`);
  }
}

function checkFiles(body: MessageBody, files: readonly SentPart[], complaints: Complaints): void {
  complaints.count(files, "files", 10);
  const size = files.reduce((sum, file) => sum + file.bytes.length, 0);
  if (size > 25 * 1024 * 1024) throw new ApiError(413, 40_005, "Request entity too large");
  for (const [index, attachment] of list(body.attachments).entries()) {
    complaints.text(attachment.description, `attachments[${index}].description`, 1024);
  }
}

/**
 * Refuses what Discord would refuse.
 *
 * @param kept - parts of the message that an edit leaves as they are
 * @throws ApiError with every complaint
 */
export function checkMessage(body: MessageBody, files: readonly SentPart[], kept: MessageBody = {}): void {
  const complaints = new Complaints();
  if (((body.flags ?? 0) & COMPONENTS_V2) !== 0) {
    throw invalidForm(["flags: components V2 are not known here"]);
  }
  complaints.text(body.content, "content", 2000);
  checkEmbeds(list(body.embeds), complaints);
  checkComponents(list(body.components), complaints);
  checkMentions(record(body.allowed_mentions), complaints);
  checkFiles(body, files, complaints);
  if (typeof body.nonce === "string" && body.nonce.length > 25) {
    complaints.found.push("nonce: Must be 25 or fewer in length");
  }
  if (body.enforce_nonce === true && (body.nonce === undefined || body.nonce === null)) {
    complaints.found.push("enforce_nonce: needs a nonce");
  }
  if (complaints.found.length > 0) throw invalidForm(complaints.found);
  const whole = { ...kept, ...body };
  const empty =
    !whole.content &&
    list(whole.embeds).length === 0 &&
    files.length === 0 &&
    list(whole.attachments).length === 0;
  if (empty) throw new ApiError(400, 50_006, "Cannot send an empty message");
}
