/**
 * A question in a process of its own, npm and all.
 *
 * @packageDocumentation
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Measured, medianMs } from "./measured.ts";

const RUNS = 5;

export async function freshProcess(): Promise<readonly Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const env = { ...process.env, DUSKBELL_DATA: folder };
  const value = await medianMs(RUNS, () => {
    const ran = spawnSync("npm", ["run", "--silent", "ask", "--", "night", "--forecast", "none"], { env });
    if (ran.status !== 0) throw new Error(String(ran.stderr));
  });
  rmSync(folder, { recursive: true, force: true });
  return [{ what: "npm run --silent ask -- night, in a fresh process", value, unit: "ms", budget: 1500 }];
}
