/**
 * Every command without the network, and with its charts drawn.
 *
 * @packageDocumentation
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { drawChart } from "../../bot/charts/draw.ts";
import { ask, type Door } from "../../bot/console/asking.ts";
import { NO_FLAGS } from "../../bot/console/flags.ts";
import { openConsoleWorld } from "../../bot/demo-club.ts";
import { COMMANDS } from "../../commands/all.ts";
import { readSettings } from "../../config/settings.ts";
import { type Measured, medianMs } from "./measured.ts";

const RUNS = 11;
const ANSWER_MS = 50;
const CHART_MS = 250;

/** One ordinary question of each kind. */
const QUESTIONS: readonly (readonly string[])[] = [
  ["night"],
  ["night", "--nights", "30"],
  ["tonight"],
  ["tonight", "--rig", "250mm f/4.8 visual"],
  ["tonight", "--rig", "135mm f/2.8, 23.5x15.7mm, 3.76um colour"],
  ["target", "--target", "NGC 6888", "--filter", "656/7+501/7"],
  ["season", "--target", "M33"],
  ["forecast"],
  ["framing", "--target", "IC 434"],
  ["framing", "--target", "Veil", "--columns", "3", "--rows", "3"],
  ["exposure", "--target", "NGC 6888", "--filter", "656/7"],
  ["align"],
  ["calibration"],
  ["log"],
  ["sun"],
  ["moon"],
  ["planets"],
  ["events"],
  ["outreach", "dates"],
  ["site", "list"],
  ["rig", "list"],
  ["about"],
];

export async function commandTimes(): Promise<readonly Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const world = await openConsoleWorld(readSettings({ DUSKBELL_DATA: folder }));
  const door: Door = { commands: COMMANDS, world: async () => world };
  const flags = { ...NO_FLAGS, at: new Date("2026-10-10T17:00:00Z"), forecast: ["none"] };
  const measured: Measured[] = [];
  try {
    for (const words of QUESTIONS) {
      if (!COMMANDS.some(({ definition }) => definition.name === words[0])) continue;
      const what = words.join(" ").replaceAll("--", "");
      const first = await ask(words, door, flags);
      if (first.kind !== "answered") throw new Error(`${what}: ${first.message}`);
      const { charts } = first.answer;
      measured.push({
        what,
        value: await medianMs(RUNS, () => ask(words, door, flags)),
        unit: "ms",
        budget: ANSWER_MS,
      });
      if (charts.length === 0) continue;
      const drawn = await medianMs(RUNS, async () => {
        const outcome = await ask(words, door, flags);
        if (outcome.kind === "answered") for (const chart of outcome.answer.charts) await drawChart(chart);
      });
      measured.push({ what: `${what}, charts drawn`, value: drawn, unit: "ms", budget: CHART_MS });
    }
  } finally {
    await world.close();
    rmSync(folder, { recursive: true, force: true });
  }
  return measured;
}
