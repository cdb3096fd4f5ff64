/**
 * The tables that ship with the program, wherever it runs from.
 *
 * @packageDocumentation
 */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds `package.json`, above the sources and above what is compiled from them. */
function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "package.json"))) {
    const above = dirname(folder);
    if (above === folder) throw new Error("no package.json above the program: its tables cannot be found");
    folder = above;
  }
  return folder;
}

/**
 * The rows of a table in `config/data/`, as lines, without comments and column names.
 *
 * @throws Error when the file is missing: `npm run catalogue` builds it
 */
export function tableLines(name: string): readonly string[] {
  const lines = readFileSync(join(packageFolder(), "config", "data", name), "utf8").split("\n");
  const header = lines.findIndex((line) => !line.startsWith("#"));
  return lines.slice(header + 1).filter((line) => line !== "");
}
