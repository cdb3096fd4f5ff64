/**
 * A folder of a test's own, gone after it.
 *
 * @packageDocumentation
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";

export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "duskbell-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Every file of a folder with its bytes, for a comparison before and after. */
export function bytesOf(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name)).toString("base64")]),
  );
}
