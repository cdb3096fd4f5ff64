/**
 * Measures what must be quick, each against its budget, and fails when one is missed.
 *
 * Run by `npm run bench`. Beside it: the ranking against a bare loop of the same
 * multiply-adds, and against python3-astropy where that is installed.
 *
 * @packageDocumentation
 */
import { memoryOfBot } from "./bot-memory.bench.ts";
import { commandTimes } from "./commands.bench.ts";
import { eveningRun } from "./evening.bench.ts";
import { freshProcess } from "./fresh-process.bench.ts";
import type { Measured } from "./measured.ts";
import { rankingTimes } from "./ranking.bench.ts";

const groups: readonly (() => Promise<readonly Measured[]>)[] = [
  rankingTimes,
  commandTimes,
  freshProcess,
  memoryOfBot,
  eveningRun,
];

let missed = 0;
for (const group of groups) {
  for (const { what, value, unit, budget, note } of await group()) {
    const within = budget === null || value <= budget;
    if (!within) missed++;
    const verdict =
      budget === null ? "" : within ? `within ${budget} ${unit}` : `MISSED: over ${budget} ${unit}`;
    process.stdout.write(
      `${what.padEnd(64)} ${value.toFixed(1).padStart(9)} ${unit.padEnd(3)} ${verdict} ${note ?? ""}\n`,
    );
  }
}
process.exitCode = missed === 0 ? 0 : 1;
