import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { makeFolder } from "../../bot/folders.ts";
import { temporaryFolder } from "./store/temporary-folder.ts";

describe("makeFolder", () => {
  it("makes a folder with those above it, and leaves one that is there", () => {
    const folder = join(temporaryFolder(), "a", "b");
    makeFolder(folder);
    makeFolder(folder);
    expect(existsSync(folder)).toBe(true);
  });

  it("refuses a file, and what would lie beneath one", () => {
    const file = join(temporaryFolder(), "a-file");
    writeFileSync(file, "");
    expect(() => makeFolder(file)).toThrow();
    expect(() => makeFolder(join(file, "beneath"))).toThrow();
  });

  it.runIf(process.platform === "linux")("does not try for ever where no folder can be made", () => {
    expect(() => makeFolder("/proc/duskbell/charts")).toThrow();
  });
});
