/**
 * What a command's definition may hold, refused with a 400.
 *
 * Discord's developer documentation: Application Commands.
 *
 * @packageDocumentation
 */
import { invalidForm } from "./api-error.ts";

type Json = Record<string, unknown>;

const NAME = /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;
const TEXT_LIMIT = 8000;

const list = (value: unknown): Json[] => (Array.isArray(value) ? (value as Json[]) : []);

function isText(value: unknown, max: number): value is string {
  return typeof value === "string" && value.length >= 1 && value.length <= max;
}

function textSize(item: Json): number {
  const own = String(item.name ?? "").length + String(item.description ?? "").length;
  const choices = list(item.choices).reduce(
    (sum, choice) => sum + String(choice.name).length + String(choice.value).length,
    0,
  );
  return own + choices + list(item.options).reduce((sum, option) => sum + textSize(option), 0);
}

function checkChoices(option: Json, path: string, found: string[]): void {
  const choices = list(option.choices);
  if (choices.length > 25) found.push(`${path}.choices: at most 25`);
  if (choices.length > 0 && option.autocomplete === true) {
    found.push(`${path}: autocomplete and choices exclude each other`);
  }
  for (const choice of choices) {
    if (!isText(choice.name, 100)) found.push(`${path}.choices: name 1–100`);
    if (typeof choice.value === "string" && !isText(choice.value, 100)) {
      found.push(`${path}.choices: value 1–100`);
    }
  }
}

function checkOptions(item: Json, path: string, found: string[]): void {
  const options = list(item.options);
  if (options.length > 25) found.push(`${path}: at most 25 options`);
  const names = new Set<unknown>();
  let optionalSeen = false;
  for (const option of options) {
    const name = `${path}.${String(option.name)}`;
    if (typeof option.name !== "string" || !NAME.test(option.name)) found.push(`${name}: bad name`);
    if (String(option.name) !== String(option.name).toLowerCase()) found.push(`${name}: upper case`);
    if (!isText(option.description, 100)) found.push(`${name}: description 1–100`);
    if (names.has(option.name)) found.push(`${name}: twice`);
    names.add(option.name);
    if (option.required === true && optionalSeen) found.push(`${name}: required after optional`);
    if (option.required !== true) optionalSeen = true;
    for (const bound of ["min_length", "max_length"] as const) {
      const value = option[bound];
      if (typeof value === "number" && (value < 0 || value > 6000)) found.push(`${name}.${bound}: 0–6000`);
    }
    checkChoices(option, name, found);
    checkOptions(option, name, found);
  }
}

/** @throws ApiError with every complaint */
export function checkCommands(commands: readonly Json[]): void {
  const found: string[] = [];
  if (commands.length > 100) found.push("at most 100 commands");
  const names = new Set<unknown>();
  for (const command of commands) {
    const path = String(command.name);
    if (typeof command.name !== "string" || !NAME.test(command.name)) found.push(`${path}: bad name`);
    if (path !== path.toLowerCase()) found.push(`${path}: upper case`);
    if (names.has(command.name)) found.push(`${path}: twice`);
    names.add(command.name);
    if (!isText(command.description, 100)) found.push(`${path}: description 1–100`);
    if (textSize(command) > TEXT_LIMIT) found.push(`${path}: over ${TEXT_LIMIT} characters`);
    checkOptions(command, path, found);
  }
  if (found.length > 0) throw invalidForm(found);
}

/**
 * A command as Discord gives it back: ids added, defaults filled in.
 *
 * Options left at their default (`required: false`, empty lists) are dropped.
 */
export function asStored(command: Json, ids: { id: string; version: string; applicationId: string }): Json {
  const option = (item: Json): Json => {
    const kept = Object.entries(item).filter(
      ([key, value]) =>
        value !== undefined &&
        !(key === "required" && value === false) &&
        !(key === "autocomplete" && value === false) &&
        !(Array.isArray(value) && value.length === 0),
    );
    const out: Json = Object.fromEntries(kept);
    if (Array.isArray(out.options)) out.options = list(out.options).map(option);
    return out;
  };
  return {
    id: ids.id,
    application_id: ids.applicationId,
    version: ids.version,
    default_member_permissions: command.default_member_permissions ?? null,
    type: command.type ?? 1,
    name: command.name,
    name_localizations: null,
    description: command.description,
    description_localizations: null,
    dm_permission: true,
    nsfw: command.nsfw ?? false,
    contexts: command.contexts ?? null,
    integration_types: command.integration_types ?? [0],
    ...(list(command.options).length > 0 ? { options: list(command.options).map(option) } : {}),
  };
}
