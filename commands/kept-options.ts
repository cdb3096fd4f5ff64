/**
 * What a follow-up question keeps of the one it follows.
 *
 * @packageDocumentation
 */
import type { FollowUp } from "./answer.ts";
import type { Request } from "./request.ts";

/** The named options as they were given; those that were not are left out. */
export function keptOptions(request: Request, names: readonly string[]): FollowUp["options"] {
  const kept: Record<string, string | number | boolean> = {};
  for (const name of names) {
    const value = request.options[name];
    if (value !== undefined && typeof value !== "object") kept[name] = value;
  }
  return kept;
}
