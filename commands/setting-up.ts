/**
 * Everything `align` knows before it is put in words.
 *
 * @packageDocumentation
 */
import { NO_FILTER } from "../config/filters.ts";
import { SUB_SECONDS } from "../config/input-limits.ts";
import {
  DEFAULT_POLAR_ERROR_ARCMIN,
  DEFAULT_SUB_SECONDS,
  GOTO_MOUNTS,
  POLAR_ERROR_ARCMIN,
  POLAR_MOUNTS,
} from "../config/mount-rules.ts";
import type { Rig } from "../core/rig/rig.ts";
import type { Target } from "../core/targets/sky-object.ts";
import type { TargetNight } from "../core/targets/target-night.ts";
import {
  type Alignment,
  alignmentAt,
  type PolarDamage,
  placeOf,
  polarDamage,
  type TurnLimit,
  turnLimit,
} from "./alignment.ts";
import type { Context } from "./context.ts";
import { evening } from "./evening.ts";
import { keptOptions } from "./kept-options.ts";
import { rigTonight } from "./looking.ts";
import { momentOf } from "./read/moment.ts";
import { numberOption } from "./read/numbers.ts";
import { rigOf } from "./read/rig.ts";
import { targetIfAny } from "./read/target.ts";
import type { Request } from "./request.ts";
import { type Situation, situationOf } from "./situation.ts";
import { nightOfTarget } from "./target.ts";

export type SettingUp = {
  readonly rig: Rig;
  readonly situation: Situation;
  readonly sky: Alignment;
  readonly target: { readonly target: Target; readonly night: TargetNight; readonly chosen: boolean } | null;
  readonly damage: PolarDamage;
  readonly turn: TurnLimit | null;
  readonly assumptions: readonly string[];
};

/** Gathers the night, the rig, a target and the sky of the moment. */
export async function settingUp(request: Request, context: Context): Promise<SettingUp> {
  const rig = await rigOf(request, context);
  const errorArcmin = numberOption(request, "error", { ...POLAR_ERROR_ARCMIN, unit: "arcminutes" });
  const subAsked = numberOption(request, "sub", { ...SUB_SECONDS, unit: "seconds" });
  const asked = targetIfAny(request, context);
  const situation = await situationOf(request, context);
  const at = momentOf(request, situation.times);
  const target = await targetFor(asked, request, context, situation, rig);
  const gotoAsked = request.options.goto;
  const goto = typeof gotoAsked === "boolean" ? gotoAsked : GOTO_MOUNTS.includes(rig.mount);
  const { site } = situation;
  const usualSub = rig.kind === "camera" ? Object.values(rig.subSeconds)[0] : undefined;
  const decDeg = target === null ? null : placeOf(site, target.target, at).decDeg;
  return {
    rig,
    situation,
    target,
    sky: alignmentAt(site, at, context.catalogue.alignmentStars, target?.target ?? null, goto),
    damage: polarDamage(
      rig,
      errorArcmin ?? DEFAULT_POLAR_ERROR_ARCMIN,
      subAsked ?? usualSub ?? DEFAULT_SUB_SECONDS,
      decDeg,
    ),
    turn:
      rig.kind === "camera" && rig.mount === "altazimuth" && target !== null
        ? turnLimit(site, rig, target.night)
        : null,
    assumptions: [
      ...(POLAR_MOUNTS.includes(rig.mount) && errorArcmin === null
        ? [`The polar error is taken as ${DEFAULT_POLAR_ERROR_ARCMIN}′.`]
        : []),
      ...(POLAR_MOUNTS.includes(rig.mount) && subAsked === null && usualSub === undefined
        ? [`The sub is taken as ${DEFAULT_SUB_SECONDS} s.`]
        : []),
      ...(target === null ? ["Drift and turn are those of a star on the equator: no target was named."] : []),
      ...(rig.kind === "camera" ? ["The guide star is taken to stand in the middle of the field."] : []),
      ...(typeof gotoAsked === "boolean"
        ? []
        : [
            `A mount of the kind “${rig.mount}” is taken ${goto ? "to find" : "not to find"} objects by itself.`,
          ]),
    ],
  };
}

/** The target named, else what fits tonight first. */
async function targetFor(
  asked: Target | null,
  request: Request,
  context: Context,
  situation: Situation,
  rig: Rig,
): Promise<SettingUp["target"]> {
  if (asked !== null) {
    const looking = rigTonight(rig, NO_FILTER, situation.conditions, request.at);
    return { target: asked, night: nightOfTarget(situation, looking, asked), chosen: false };
  }
  const { fits } = await evening(
    { ...request, options: { ...keptOptions(request, ["site", "rig", "night"]), limit: 1 } },
    context,
  );
  const [first] = fits.targets;
  return first === undefined ? null : { target: first.target, night: first.night, chosen: true };
}
