/**
 * What tonight can add to targets that are begun.
 *
 * @packageDocumentation
 */
import type { ProgressLine } from "../core/log/progress.ts";
import type { Context } from "./context.ts";
import type { LogSetting } from "./log-rows.ts";
import { filterNamed } from "./log-worth.ts";
import { rigTonight } from "./looking.ts";
import type { Request } from "./request.ts";
import { situationOf } from "./situation.ts";
import { nightOfTarget } from "./target.ts";

export type TonightAdds = {
  readonly object: string;
  readonly passband: string;
  /** Dark, above the skyline, and clear where a forecast is at hand. */
  readonly usableHours: number;
  /** Of an overhead, moonless hour's worth; `null` for the eye. */
  readonly countingHours: number | null;
};

/** So many of the latest begun are worth reckoning. */
const RECKONED = 5;

/** Reckons the night for the latest of the lines; those with unknown filters are left out. */
export async function tonightAdds(
  request: Request,
  context: Context,
  { rig }: LogSetting,
  lines: readonly ProgressLine[],
): Promise<readonly TonightAdds[]> {
  const latest = lines.slice(0, RECKONED);
  if (latest.length === 0 || rig?.kind !== "camera") return [];
  const situation = await situationOf(request, context);
  return latest.flatMap(({ object, passband }) => {
    const found = context.catalogue.find(object);
    const filter = filterNamed(passband, rig);
    if (found.kind !== "found" || filter === null) return [];
    const looking = rigTonight(rig, filter, situation.conditions, request.at);
    const { counted } = nightOfTarget(situation, looking, found.target);
    return [{ object, passband, usableHours: counted.usableHours, countingHours: counted.countingHours }];
  });
}
