/**
 * A world for a command under test: only what the test gives it.
 *
 * @packageDocumentation
 */
import type { Context } from "../../commands/context.ts";
import type { OptionValue, Request } from "../../commands/request.ts";

/** Asking for a part that was not given fails the test by name. */
export function fakeContext(parts: Partial<Context>): Context {
  return new Proxy(parts, {
    get(given, part) {
      if (Reflect.has(given, part)) return Reflect.get(given, part);
      throw new Error(`this test gives no ${String(part)}`);
    },
  }) as Context;
}

/** A question by a member of the demo club. */
export function fakeRequest(
  command: string,
  options: Readonly<Record<string, OptionValue>>,
  at: string,
): Request {
  return {
    command,
    subcommand: null,
    options,
    member: { id: "me", name: "me", organiser: false },
    club: "fell-end",
    at: new Date(at),
  };
}
