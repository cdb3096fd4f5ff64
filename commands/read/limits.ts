/**
 * The weather a club still goes out in: its own limits where it set any, else those of `config/`.
 *
 * @packageDocumentation
 */
import { OBSERVING_LIMITS } from "../../config/observing-limits.ts";
import type { ObservingLimits } from "../../core/weather/observing-limits.ts";
import type { Context } from "../context.ts";
import type { Request } from "../request.ts";

export async function limitsOf(request: Pick<Request, "club">, context: Context): Promise<ObservingLimits> {
  const { limits } = await context.books.clubs.settings(request.club);
  return { ...OBSERVING_LIMITS, ...limits };
}
