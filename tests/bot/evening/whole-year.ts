/**
 * A whole year of evenings around the world, undisturbed and disturbed; run by hand.
 *
 * `npx tsx tests/bot/evening/whole-year.ts 2026 1` takes some minutes and ends with an
 * error when any night had other than its one post.
 *
 * @packageDocumentation
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PLACES, simulateNights } from "./simulated-nights.ts";

const year = process.argv[2] ?? "2026";
const seed = Number(process.argv[3] ?? 1);
for (const disturbed of [false, true]) {
  const folder = mkdtempSync(join(tmpdir(), "duskbell-year-"));
  const began = Date.now();
  const result = await simulateNights({
    folder,
    places: PLACES,
    from: `${year}-01-01`,
    days: 365,
    disturbed,
    seed,
    tickMinutes: 5,
  });
  rmSync(folder, { recursive: true, force: true });
  const seconds = Math.round((Date.now() - began) / 1000);
  process.stdout.write(
    `${disturbed ? "disturbed" : "undisturbed"}: ${result.nights} nights, ${result.posts} posts, ${result.wrong.length} wrong, ${seconds} s\n`,
  );
  for (const one of result.wrong) process.stdout.write(`  ${JSON.stringify(one)}\n`);
  if (result.wrong.length > 0) process.exitCode = 1;
}
