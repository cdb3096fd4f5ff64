/**
 * One night with a process killed in the middle of its post, and what others make of it.
 *
 * @packageDocumentation
 */
import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import type { EveningWorld } from "../../../bot/evening/evening-world.ts";
import { eveningRun } from "../../../bot/evening/tick.ts";
import { openStore } from "../../../bot/store/store.ts";
import { type StandIn, startStandIn } from "../discord/stand-in/stand-in.ts";
import type { StoredMessage } from "../discord/stand-in/state.ts";
import { DUE, foundClub, testWorld } from "./fixtures.ts";
import type { KilledProcessOrder } from "./killed-process.ts";

/** Where a process can die; the last three lie in the middle of the one network call. */
export const KILL_STEPS = [
  "before claim",
  "after claim",
  "before beginSend",
  "after beginSend",
  "request on its way",
  "reply on its way",
  "after send",
  "before settlePosted",
  "after settlePosted",
  "before save",
  "after save",
] as const;

export type KillStep = (typeof KILL_STEPS)[number];

/** The old nonce is still remembered when the next process comes, or forgotten. */
export type NonceLife = "remembered" | "forgotten";

export type Change = (world: EveningWorld) => EveningWorld;

export type SceneResult = {
  readonly messages: readonly StoredMessage[];
  readonly claimState: string | null;
  /** How many messages there were when a second process came before the lease had run out. */
  readonly early: number;
};

const TICK_MS = 5 * 60_000;
const LEASE_OVER_MS = 125_000;
const NONCE_OVER_MS = 150_000;

/**
 * Kills a real process at a step, lets a second one come too early, a third after the
 * lease has run out and a fourth a tick later.
 *
 * @param change - what to take out of those that come after; nothing by default
 */
export async function killScene(
  folder: string,
  step: KillStep,
  nonce: NonceLife,
  change: Change = (world) => world,
): Promise<SceneResult> {
  const standIn = await startStandIn();
  standIn.clock.set(DUE);
  const guild = standIn.addGuild("Fell End");
  const channel = standIn.addChannel(guild, "evenings");
  const store = await openStore(folder, DUE.getTime());
  let nowMs = DUE.getTime();
  const order = {
    folder,
    apiBase: standIn.apiBase,
    token: standIn.state.token,
    ownId: standIn.state.botUser.id,
    startMs: nowMs,
    stopAt: step,
  };
  const { world, books } = testWorld({
    ...order,
    store,
    holder: "the next process",
    clock: () => new Date(nowMs),
    cloud: () => () => 0,
  });
  await foundClub(books, guild.id, channel.id);
  await runAndKill(standIn, order, step);

  if (nonce === "forgotten") standIn.clock.advance(NONCE_OVER_MS);
  const next = eveningRun(change(world));
  nowMs += 30_000;
  await next.tick();
  const early = channel.messages.length;
  nowMs += LEASE_OVER_MS;
  await next.tick();
  for (let tick = 0; tick < 2; tick++) {
    nowMs += TICK_MS;
    await next.tick();
  }
  const claim = await world.claims.find({ club: guild.id, night: "2026-10-03", kind: "evening" });
  await store.close();
  await standIn.stop();
  return { messages: [...channel.messages], claimState: claim?.state ?? null, early };
}

async function runAndKill(standIn: StandIn, order: KilledProcessOrder, step: KillStep): Promise<void> {
  let letGo = () => {};
  const release = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const held = new Promise<void>((onHeld) => {
    const path = /\/channels\/\d+\/messages$/;
    if (step === "request on its way") {
      standIn.faults.add("POST", path, { kind: "held-request", release, onHeld });
    }
    if (step === "reply on its way") {
      standIn.faults.add("POST", path, { kind: "held-reply", release, onHeld });
    }
  });
  const child = spawn(process.execPath, [
    "--import",
    "tsx",
    join(import.meta.dirname, "killed-process.ts"),
    JSON.stringify(order),
  ]);
  await Promise.race([held, reached(child)]);
  child.kill("SIGKILL");
  await new Promise((resolve) => child.once("close", resolve));
  letGo();
  // The server acts on a request that was on its way even after its sender died.
  await new Promise((resolve) => setTimeout(resolve, 50));
}

/** Until the process says that it stands at its step, or ends. */
function reached(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = "";
    child.stdout?.on("data", (chunk) => {
      said += String(chunk);
      if (/^at |^done/m.test(said)) resolve();
    });
    let complained = "";
    child.stderr?.on("data", (chunk) => {
      complained += String(chunk);
    });
    child.once("exit", (code) => {
      if (code !== 0 && code !== null) reject(new Error(`the process failed: ${complained}`));
    });
  });
}
