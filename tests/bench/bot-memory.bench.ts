/**
 * Memory of the compiled bot at rest: everything loaded, one question answered, nothing going on.
 *
 * @packageDocumentation
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Measured } from "./measured.ts";

const DIST = new URL("../../dist/", import.meta.url);
const BUDGET_MB = 200;

/** Loads what the bot in Discord loads, asks what fills its caches, and says what it holds. */
const AT_REST = `
  const load = (path) => import(new URL(path, ${JSON.stringify(DIST.href)}));
  await load("bot/discord/start.js");
  const { COMMANDS } = await load("commands/all.js");
  const { openConsoleWorld } = await load("bot/demo-club.js");
  const { readSettings } = await load("config/settings.js");
  const { drawChart } = await load("bot/charts/draw.js");
  const { NO_FORECASTS } = await load("bot/forecast/saved-files.js");
  const { NO_PLACES } = await load("bot/forecast/geocoding.js");
  const world = await openConsoleWorld(readSettings(process.env));
  const context = world.context({ forecasts: NO_FORECASTS, places: NO_PLACES });
  const member = { id: "me", name: "me", organiser: true };
  for (const command of ["tonight", "framing"]) {
    const options = command === "framing" ? { target: "M33" } : {};
    const asked = { command, subcommand: null, options, member, club: "fell-end", at: new Date("2026-10-10T18:00:00Z") };
    const answer = await COMMANDS.find(({ definition }) => definition.name === command).answer(asked, context);
    for (const chart of answer.charts) await drawChart(chart);
  }
  context.catalogue.complete("ngc", 25);
  await new Promise((resolve) => setTimeout(resolve, 500));
  globalThis.gc();
  process.stdout.write(String(process.memoryUsage().rss / 1e6));
  process.exit(0);
`;

export async function memoryOfBot(): Promise<readonly Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const ran = spawnSync(process.execPath, ["--expose-gc", "--input-type=module", "-e", AT_REST], {
    env: { ...process.env, DUSKBELL_DATA: folder },
    encoding: "utf8",
  });
  rmSync(folder, { recursive: true, force: true });
  if (ran.status !== 0) throw new Error(ran.stderr);
  return [{ what: "the bot's memory at rest", value: Number(ran.stdout), unit: "MB", budget: BUDGET_MB }];
}
