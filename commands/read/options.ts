/**
 * Options that several commands share, each defined once, and short ways to define others.
 *
 * Discord wants required options before the rest, at most 25 of a command, and
 * descriptions of at most 100 characters.
 *
 * @packageDocumentation
 */
import {
  type APIApplicationCommandAttachmentOption,
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandBooleanOption,
  type APIApplicationCommandIntegerOption,
  type APIApplicationCommandNumberOption,
  type APIApplicationCommandStringOption,
  type APIApplicationCommandSubcommandOption,
  ApplicationCommandOptionType,
} from "discord-api-types/v10";
import { NIGHTS_AT_MOST } from "../../config/input-limits.ts";

/** Longest text an option takes, unless it says otherwise. */
const TEXT_LENGTH = 200;

type Needed = { readonly required?: boolean };

/** Free words. */
export function defineText(
  name: string,
  description: string,
  more: Needed & { readonly maxLength?: number } = {},
): APIApplicationCommandStringOption {
  return {
    type: ApplicationCommandOptionType.String,
    name,
    description,
    max_length: more.maxLength ?? TEXT_LENGTH,
    ...(more.required ? { required: true } : {}),
  };
}

/** Words completed as one types them. */
export function defineCompleted(
  name: string,
  description: string,
  more: Needed = {},
): APIApplicationCommandStringOption {
  return {
    type: ApplicationCommandOptionType.String,
    name,
    description,
    max_length: TEXT_LENGTH,
    autocomplete: true,
    ...(more.required ? { required: true } : {}),
  };
}

/** One of a few words. */
export function defineChoice(
  name: string,
  description: string,
  choices: readonly string[],
  more: Needed = {},
): APIApplicationCommandStringOption {
  return {
    type: ApplicationCommandOptionType.String,
    name,
    description,
    choices: choices.map((choice) => ({ name: choice, value: choice })),
    ...(more.required ? { required: true } : {}),
  };
}

/** A number; its range is checked where it is read, so that the message is ours. */
export function defineNumber(
  name: string,
  description: string,
  more: Needed = {},
): APIApplicationCommandNumberOption {
  return {
    type: ApplicationCommandOptionType.Number,
    name,
    description,
    ...(more.required ? { required: true } : {}),
  };
}

/** A whole number; its range is checked where it is read. */
export function defineWhole(
  name: string,
  description: string,
  more: Needed = {},
): APIApplicationCommandIntegerOption {
  return {
    type: ApplicationCommandOptionType.Integer,
    name,
    description,
    ...(more.required ? { required: true } : {}),
  };
}

/** Yes or no. */
export function defineFlag(
  name: string,
  description: string,
  more: Needed = {},
): APIApplicationCommandBooleanOption {
  return {
    type: ApplicationCommandOptionType.Boolean,
    name,
    description,
    ...(more.required ? { required: true } : {}),
  };
}

/** A file sent with the question. */
export function defineFile(
  name: string,
  description: string,
  more: Needed = {},
): APIApplicationCommandAttachmentOption {
  return {
    type: ApplicationCommandOptionType.Attachment,
    name,
    description,
    ...(more.required ? { required: true } : {}),
  };
}

export function defineSubcommand(
  name: string,
  description: string,
  options: readonly APIApplicationCommandBasicOption[] = [],
): APIApplicationCommandSubcommandOption {
  return { type: ApplicationCommandOptionType.Subcommand, name, description, options: [...options] };
}

export const SITE = defineCompleted(
  "site",
  "A saved site, a place, or latitude, longitude; default: your own",
);

export const RIG = defineCompleted(
  "rig",
  "A saved rig, or 400mm f/5.6, 23.5x15.7mm, 3.76um; default: your own",
);

export const FILTER = defineCompleted(
  "filter",
  "A saved filter, none, a line such as h-alpha, or 656/7 in nm",
);

export const TARGET = defineCompleted("target", "A designation, name, planet or J2000 coordinates", {
  required: true,
});

/** For commands that can do without. */
export const TARGET_IF_ANY = defineCompleted("target", "A designation, name, planet or J2000 coordinates");

export const NIGHT = defineText("night", "The date on which the night begins, YYYY-MM-DD; default: tonight");

export const NIGHTS = defineWhole("nights", `That night and the following, 1 to ${NIGHTS_AT_MOST}`);

export const SKY = defineText(
  "sky",
  "bortle 6, a reading such as 19.8, or naked-eye 5.5; default: the site's",
);
