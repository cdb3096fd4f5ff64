/**
 * Folders made where they are wanted.
 *
 * @packageDocumentation
 */
import { existsSync, mkdirSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";

/**
 * Makes a folder and those above it that are missing, one by one: asked to do it by itself, the
 * system call's wrapper never ends where a parent takes no folders (`/proc`).
 *
 * @throws Error when it cannot be made, or is no folder
 */
export function makeFolder(folder: string): void {
  const missing: string[] = [];
  for (let at = resolve(folder); !existsSync(at); at = dirname(at)) missing.unshift(at);
  for (const each of missing) {
    try {
      mkdirSync(each);
    } catch (fault) {
      // Another process may have been quicker.
      if (!existsSync(each)) throw fault;
    }
  }
  if (!statSync(folder).isDirectory()) throw new Error(`${folder} is a file`);
}
