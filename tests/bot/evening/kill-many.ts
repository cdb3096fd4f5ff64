/**
 * Kills the evening post at random steps, hundreds of times; run by hand.
 *
 * `npx tsx tests/bot/evening/kill-many.ts 300` prints a line for each step and ends
 * with an error when any night had other than one message.
 *
 * @packageDocumentation
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { KILL_STEPS, killScene, type NonceLife } from "./kill-scene.ts";

const times = Number(process.argv[2] ?? 300);
const counted = new Map<string, { once: number; otherwise: number }>();

for (let round = 0; round < times; round++) {
  const step = KILL_STEPS[round % KILL_STEPS.length] ?? "after claim";
  const nonce: NonceLife = Math.random() < 0.5 ? "forgotten" : "remembered";
  const folder = mkdtempSync(join(tmpdir(), "duskbell-kill-"));
  try {
    const { messages, claimState } = await killScene(folder, step, nonce);
    const key = `${step}, nonce ${nonce}`;
    const count = counted.get(key) ?? { once: 0, otherwise: 0 };
    if (messages.length === 1 && claimState === "posted") count.once += 1;
    else count.otherwise += 1;
    counted.set(key, count);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

for (const [key, { once, otherwise }] of [...counted].sort()) {
  process.stdout.write(`${key}: ${once} once, ${otherwise} otherwise\n`);
}
const failed = [...counted.values()].reduce((sum, { otherwise }) => sum + otherwise, 0);
process.stdout.write(`${times} nights, ${failed} with other than one message\n`);
process.exitCode = failed === 0 ? 0 : 1;
