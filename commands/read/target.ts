/**
 * What in the sky a question is about.
 *
 * @packageDocumentation
 */
import type { Target } from "../../core/targets/sky-object.ts";
import { AskError } from "../ask-error.ts";
import type { Context } from "../context.ts";
import type { Request } from "../request.ts";
import { listWords } from "../words/sky.ts";
import { textOption } from "./numbers.ts";
import { said } from "./said.ts";

/**
 * The target named.
 *
 * @param option - which option names it
 * @throws AskError with the nearest names when nothing answers to it; never silently corrected
 */
export function targetOf(request: Request, context: Context, option = "target"): Target {
  const target = targetIfAny(request, context, option);
  if (target === null) {
    throw new AskError(
      "no-target",
      option,
      `“${option}” is missing: a designation, a name, a planet or J2000 coordinates, such as M33.`,
    );
  }
  return target;
}

/** As {@link targetOf}, or `null` when the option was not given. */
export function targetIfAny(request: Request, context: Context, option = "target"): Target | null {
  const text = textOption(request, option);
  if (text === null) return null;
  const looked = context.catalogue.find(text);
  switch (looked.kind) {
    case "found":
      return looked.target;
    case "unknown": {
      if (looked.problem !== undefined) {
        throw new AskError("impossible-place", option, `“${option}”: ${looked.problem}`);
      }
      const nearest = looked.nearest.slice(0, 3);
      const hint =
        nearest.length > 0
          ? `The nearest names are ${listWords(nearest)}.`
          : "Give a designation such as M33, a name, or J2000 coordinates such as 01h34m +30d40m.";
      throw new AskError("unknown-target", option, `“${option}”: nothing is called “${said(text)}”. ${hint}`);
    }
  }
}
