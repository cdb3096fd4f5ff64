/**
 * Which rig a question is about.
 *
 * @packageDocumentation
 */
import type { CameraRig, Rig } from "../../core/rig/rig.ts";
import { AskError } from "../ask-error.ts";
import type { SavedRig } from "../books.ts";
import type { Context } from "../context.ts";
import type { Request } from "../request.ts";
import { listWords } from "../words/sky.ts";
import { matchKey, nearestNames } from "./names.ts";
import { textOption } from "./numbers.ts";
import { isRigDescription, parseRigDescription } from "./rig-description.ts";
import { said } from "./said.ts";

/**
 * The rig named or described, else the member's default.
 *
 * @param option - which option names it
 * @throws AskError when it is unknown or cannot be read, or nothing is saved and nothing was named
 */
export async function rigOf(request: Request, context: Context, option = "rig"): Promise<Rig> {
  const text = textOption(request, option);
  if (text === null) return defaultRig(request, context);
  const saved = await context.books.rigs.list(request.club, request.member.id);
  const known = saved.find(({ rig }) => matchKey(rig.name) === matchKey(text));
  if (known) return known.rig;
  if (isRigDescription(text)) return parseRigDescription(option, text);
  throw unknownRig(option, text, saved);
}

/**
 * As {@link rigOf}, for questions that need a camera.
 *
 * @throws AskError also when the rig is a visual one
 */
export async function cameraRigOf(request: Request, context: Context, option = "rig"): Promise<CameraRig> {
  const rig = await rigOf(request, context, option);
  if (rig.kind === "camera") return rig;
  throw new AskError(
    "no-camera",
    option,
    `“${option}”: ${rig.name} has no camera; name a camera rig, or describe one such as 400mm f/5.6, 23.5x15.7mm, 3.76um.`,
  );
}

/**
 * One of the member's saved rigs, by name.
 *
 * @throws AskError naming the nearest of them
 */
export async function savedRig(request: Request, context: Context, option = "rig"): Promise<SavedRig> {
  const text = textOption(request, option);
  if (text === null) throw new AskError("no-rig", option, `“${option}” is missing: the name of a saved rig.`);
  const saved = await context.books.rigs.list(request.club, request.member.id);
  const known = saved.find(({ rig }) => matchKey(rig.name) === matchKey(text));
  if (known) return known;
  throw unknownRig(option, text, saved);
}

async function defaultRig(request: Request, context: Context): Promise<Rig> {
  const saved = await context.books.rigs.list(request.club, request.member.id);
  const chosen = saved.find(({ isDefault }) => isDefault) ?? saved[0];
  if (chosen) return chosen.rig;
  throw new AskError(
    "no-rig",
    "rig",
    "No “rig” is saved yet: describe one, such as 400mm f/5.6, 23.5x15.7mm, 3.76um, or keep one with “rig add”.",
  );
}

function unknownRig(option: string, text: string, saved: readonly SavedRig[]): AskError {
  const names = nearestNames(
    text,
    saved.map(({ rig }) => rig.name),
  );
  const choices = names.length > 0 ? `Saved: ${listWords(names)}. ` : "";
  return new AskError(
    "unknown-rig",
    option,
    `“${option}”: there is no rig called “${said(text)}”. ${choices}Or describe one, such as 400mm f/5.6, 23.5x15.7mm, 3.76um.`,
  );
}
