/**
 * Questions put to the console as people put them: a process of its own, or one world in this process.
 *
 * @packageDocumentation
 */
import { spawn } from "node:child_process";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { ask, type Outcome } from "../../../bot/console/asking.ts";
import { type Flags, NO_FLAGS } from "../../../bot/console/flags.ts";
import { openConsoleWorld } from "../../../bot/demo-club.ts";
import type { World } from "../../../bot/world.ts";
import { COMMANDS } from "../../../commands/all.ts";
import { readSettings } from "../../../config/settings.ts";

export type Ended = { readonly code: number | null; readonly stdout: string; readonly stderr: string };

const ROOT = join(import.meta.dirname, "../../..");

/** A fixed evening, so that nothing depends on the day of the test. */
export const EVENING = "2026-10-03T19:00:00Z";

/** Runs `ask` with words and standard input; the network is out of reach, should it be asked. */
export function askProcess(folder: string, words: readonly string[], input = ""): Promise<Ended> {
  return run("bot/console/ask.ts", folder, words, input);
}

/** Runs `npm start`'s program without a terminal, the weather services at an address. */
export function startProcess(folder: string, services = NOWHERE): Promise<Ended> {
  return run("bot/main.ts", folder, [], "", services);
}

/** The discard port, at which nobody listens. */
const NOWHERE = "http://127.0.0.1:9";

function run(
  program: string,
  folder: string,
  words: readonly string[],
  input: string,
  services = NOWHERE,
): Promise<Ended> {
  const environment = {
    PATH: process.env.PATH,
    TZ: process.env.TZ,
    DUSKBELL_DATA: folder,
    DUSKBELL_OPEN_METEO: services,
    DUSKBELL_AIR_QUALITY: services,
    DUSKBELL_GEOCODING: services,
    DUSKBELL_MET_NORWAY: services,
    DUSKBELL_SKY_SURVEY: services,
  };
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ["--import", "tsx", join(ROOT, program), ...words], {
      cwd: ROOT,
      env: environment,
    });
    let stdout = "";
    let stderr = "";
    child.stdout.on("data", (chunk) => {
      stdout += chunk;
    });
    child.stderr.on("data", (chunk) => {
      stderr += chunk;
    });
    child.on("close", (code) => resolve({ code, stdout, stderr }));
    child.stdin.end(input);
  });
}

/** One world on a folder in this process, closed after the test. */
export async function worldIn(folder: string): Promise<World> {
  const world = await openConsoleWorld(readSettings({ DUSKBELL_DATA: folder }), {
    clock: () => new Date(EVENING),
  });
  onTestFinished(() => world.close());
  return world;
}

/** Asks in this process, without weather. */
export function askIn(
  world: World,
  words: readonly string[],
  defaults: Partial<Flags> = {},
): Promise<Outcome> {
  const door = { commands: COMMANDS, world: async () => world };
  return ask(words, door, { ...NO_FLAGS, forecast: ["none"], ...defaults });
}

/** The answer to a question that must be answered. */
export async function answerIn(world: World, ...words: readonly string[]) {
  const outcome = await askIn(world, words);
  if (outcome.kind !== "answered") throw new Error(`${words.join(" ")}: ${outcome.message}`);
  return outcome.answer;
}

/** The refusal of a question that must be refused. */
export async function refusalIn(world: World, ...words: readonly string[]) {
  const outcome = await askIn(world, words);
  if (outcome.kind !== "refused") throw new Error(`${words.join(" ")} was not refused but ${outcome.kind}`);
  return outcome;
}
