/**
 * `rig`: what a member looks or photographs with.
 *
 * @packageDocumentation
 */
import { RIGS_AT_MOST } from "../config/input-limits.ts";
import type { Answer } from "./answer.ts";
import { AskError } from "./ask-error.ts";
import type { SavedRig } from "./books.ts";
import type { Command } from "./command.ts";
import type { Context } from "./context.ts";
import { type CameraFacts, NO_CAMERA_FACTS } from "./read/camera-facts.ts";
import { cleanName, matchKey } from "./read/names.ts";
import { flagOption, textOption } from "./read/numbers.ts";
import { defineFlag, defineSubcommand, defineText, RIG } from "./read/options.ts";
import { savedRig } from "./read/rig.ts";
import { parseRigFacts } from "./read/rig-description.ts";
import { type RigFacts, rigFromFacts } from "./read/rig-facts.ts";
import { changedFilter, RIG_FILTER_OPTIONS } from "./read/rig-filter.ts";
import {
  apertureOf,
  cameraFactsOf,
  eyepiecesOf,
  mountOf,
  RIG_FIGURES,
  rigOptionOf,
} from "./read/rig-options.ts";
import type { VisualFacts } from "./read/visual-rig.ts";
import type { Request } from "./request.ts";
import { rigFigures, rigLines } from "./words/rig.ts";

const SAVED_RIG = { ...RIG, description: "One of your saved rigs", required: true };
const DEFAULT = defineFlag("default", "Use it whenever no rig is named");

export const rig: Command = {
  definition: {
    name: "rig",
    description: "What you look or photograph with: keep, change, list or forget a rig",
    options: [
      defineSubcommand("add", "Keep a rig, by figures or by a description", [
        defineText("name", "What you call it", { required: true }),
        defineText("description", "400mm f/5.6, 23.5x15.7mm, 3.76um mono guided; 250mm f/4.8 visual"),
        ...RIG_FIGURES,
        DEFAULT,
      ]),
      defineSubcommand("edit", "Change a rig's figures", [
        SAVED_RIG,
        defineText("name", "What you will call it"),
        ...RIG_FIGURES,
        DEFAULT,
      ]),
      defineSubcommand("remove", "Forget a rig", [SAVED_RIG]),
      defineSubcommand("list", "Your rigs"),
      defineSubcommand("filter", "Keep, change or forget a filter of a rig, your subs and sky through it", [
        ...RIG_FILTER_OPTIONS,
      ]),
    ],
    defaultSubcommand: "list",
  },
  audience: "member",

  async answer(request, context) {
    switch (request.subcommand) {
      case "add":
        return add(request, context);
      case "edit":
        return edit(request, context);
      case "remove":
        return remove(request, context);
      case "filter":
        return filter(request, context);
      default:
        return list(request, context);
    }
  },
};

async function add(request: Request, context: Context): Promise<Answer> {
  const name = cleanName("name", textOption(request, "name") ?? "");
  const own = await context.books.rigs.list(request.club, request.member.id);
  refuseTaken(name, own);
  if (own.length >= RIGS_AT_MOST) {
    throw new AskError("too-many-rigs", "name", `You keep ${RIGS_AT_MOST} rigs already: remove one first.`);
  }
  return described(await save(request, context, newFacts(request, name)), `${name} is kept`);
}

async function edit(request: Request, context: Context): Promise<Answer> {
  const before = await savedRig(request, context);
  if (Object.keys(request.options).length < 2) {
    throw new AskError(
      "nothing-to-change",
      null,
      `Say what to change of ${before.rig.name}, such as --pixel 3.76.`,
    );
  }
  const newName = textOption(request, "name");
  const name = newName === null ? before.rig.name : cleanName("name", newName);
  const own = await context.books.rigs.list(request.club, request.member.id);
  refuseTaken(
    name,
    own.filter(({ id }) => id !== before.id),
  );
  const said = factsOf(before);
  const facts = said.kind === "visual" ? changedVisual(request, said) : changedCamera(request, said);
  const saved = await save(request, context, { ...facts, name }, before);
  return described(saved, `${saved.rig.name} is changed`);
}

async function remove(request: Request, context: Context): Promise<Answer> {
  const gone = await savedRig(request, context);
  await context.books.rigs.remove(request.club, request.member.id, gone.id);
  const left = await context.books.rigs.list(request.club, request.member.id);
  return {
    title: `${gone.rig.name} is forgotten`,
    summary: left.length === 0 ? "You keep no rig now." : `You keep ${counted(left.length)} still.`,
    sections: [],
    charts: [],
    cautions: [],
    next: [{ label: "My rigs", command: "rig", options: { subcommand: "list" } }],
    figures: { removed: gone.rig.name, rigs: left.map(rigFigures) },
    credits: [],
  };
}

async function list(request: Request, context: Context): Promise<Answer> {
  const saved = await context.books.rigs.list(request.club, request.member.id);
  return {
    title: "Your rigs",
    summary:
      saved.length === 0
        ? "You keep no rig yet: add one by its figures or by a description."
        : `You keep ${counted(saved.length)}.`,
    sections: saved.map(({ rig: one, isDefault }) => ({
      heading: isDefault ? `${one.name}, your default` : one.name,
      lines: rigLines(one),
    })),
    charts: [],
    cautions: [],
    next: [],
    figures: { rigs: saved.map(rigFigures) },
    credits: [],
  };
}

async function filter(request: Request, context: Context): Promise<Answer> {
  const before = await savedRig(request, context);
  const said = factsOf(before);
  if (said.kind === "visual" || before.rig.kind === "visual") {
    throw new AskError("no-camera", "rig", `“rig”: ${before.rig.name} has no camera to put a filter before.`);
  }
  const { facts, done } = changedFilter(request, said, before.rig);
  return described(await save(request, context, facts, before), done);
}

/** What the options, or a description refined by them, say of a new rig. */
function newFacts(request: Request, name: string): RigFacts {
  const description = textOption(request, "description");
  if (description !== null) {
    const said = { ...parseRigFacts("description", description), name };
    return said.kind === "visual" ? changedVisual(request, said) : changedCamera(request, said);
  }
  const sensorGiven = ["sensor", "pixel"].some((option) => request.options[option] !== undefined);
  if (request.options.eyepieces !== undefined || (request.options.aperture !== undefined && !sensorGiven)) {
    return newVisual(request, name);
  }
  const facts = cameraFactsOf(request);
  const { focalLengthMm, focalRatio } = facts;
  if (focalLengthMm === undefined || focalRatio === undefined) {
    const missing = rigOptionOf(focalLengthMm === undefined ? "focalLengthMm" : "focalRatio");
    throw new AskError(
      "incomplete-rig",
      missing,
      `“${missing}” is missing: a camera rig needs focal length, f-ratio, sensor and pixel; a visual one aperture and f-ratio.`,
    );
  }
  return { ...NO_CAMERA_FACTS, ...facts, name, focalLengthMm, focalRatio };
}

function newVisual(request: Request, name: string): VisualFacts {
  refuseCameraFigures(request);
  const aperture = apertureOf(request);
  const { focalLengthMm, focalRatio } = cameraFactsOf(request);
  if (focalLengthMm === undefined || focalRatio === undefined) {
    const missing = aperture === null ? "aperture" : "f-ratio";
    throw new AskError(
      "incomplete-rig",
      missing,
      `“${missing}” is missing: a visual rig needs aperture and f-ratio.`,
    );
  }
  return {
    kind: "visual",
    name,
    apertureMm: aperture ?? focalLengthMm / focalRatio,
    focalRatio,
    mount: mountOf(request),
    eyepieces: eyepiecesOf(request) ?? [],
  };
}

function changedCamera(request: Request, said: CameraFacts): CameraFacts {
  if (request.options.eyepieces !== undefined) {
    throw new AskError(
      "not-visual",
      "eyepieces",
      "“eyepieces” belong to a visual rig; this one has a camera.",
    );
  }
  return { ...said, ...cameraFactsOf(request) };
}

function changedVisual(request: Request, said: VisualFacts): VisualFacts {
  refuseCameraFigures(request);
  const aperture = apertureOf(request) ?? said.apertureMm;
  const ratio =
    request.options["f-ratio"] === undefined
      ? said.focalRatio
      : cameraFactsOf(withoutAperture(request)).focalRatio;
  const focal = cameraFactsOf(withoutAperture(request)).focalLengthMm;
  return {
    ...said,
    apertureMm: aperture,
    focalRatio: focal === undefined ? (ratio ?? said.focalRatio) : focal / aperture,
    mount: mountOf(request) ?? said.mount,
    eyepieces: eyepiecesOf(request) ?? said.eyepieces,
  };
}

function withoutAperture(request: Request): Request {
  const { aperture: _, ...options } = request.options;
  return { ...request, options };
}

/** Options of a visual rig; every other figure needs a camera. */
const VISUAL_OPTIONS = new Set(["focal-length", "f-ratio", "aperture", "mount", "eyepieces"]);

function refuseCameraFigures(request: Request): void {
  const stray = RIG_FIGURES.find(
    ({ name }) => request.options[name] !== undefined && !VISUAL_OPTIONS.has(name),
  );
  if (stray) {
    throw new AskError("no-camera", stray.name, `“${stray.name}” belongs to a camera; this is a visual rig.`);
  }
}

function factsOf(saved: SavedRig): RigFacts {
  if (saved.said) return saved.said;
  throw new AskError(
    "not-said",
    "rig",
    `“rig”: what ${saved.rig.name} was made of is not kept; add it anew.`,
  );
}

function save(request: Request, context: Context, said: RigFacts, before?: SavedRig): Promise<SavedRig> {
  return context.books.rigs.save(request.club, request.member.id, rigFromFacts(said, rigOptionOf), {
    said,
    ...(flagOption(request, "default") ? { makeDefault: true } : {}),
    ...(before ? { replaces: before.id } : {}),
  });
}

function refuseTaken(name: string, saved: readonly SavedRig[]): void {
  const taken = saved.find(({ rig: kept }) => matchKey(kept.name) === matchKey(name));
  if (!taken) return;
  throw new AskError(
    "name-taken",
    "name",
    `“name”: you keep a rig called ${taken.rig.name} already; change it with “rig edit”, or choose another name.`,
  );
}

function described(saved: SavedRig, title: string): Answer {
  return {
    title,
    summary: `${saved.rig.name}${saved.isDefault ? " is your default rig" : " is one of your rigs"}${saved.rig.assumptions.length > 0 ? "; what you did not say is assumed and named below" : ""}.`,
    sections: [{ heading: saved.rig.name, lines: rigLines(saved.rig) }],
    charts: [],
    cautions: [],
    next: [
      { label: "What fits tonight", command: "tonight", options: { rig: saved.rig.name } },
      { label: "My rigs", command: "rig", options: { subcommand: "list" } },
    ],
    figures: { rig: rigFigures(saved) },
    credits: [],
  };
}

function counted(rigs: number): string {
  return rigs === 1 ? "one rig" : `${rigs} rigs`;
}
