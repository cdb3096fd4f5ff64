/**
 * Lets everything that waits have its turn between two pieces of long work.
 *
 * @packageDocumentation
 */
import { setImmediate } from "node:timers/promises";

export function yieldToOthers(): Promise<void> {
  return setImmediate();
}
