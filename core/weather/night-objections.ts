/**
 * What costs a night its darkness: each kind of objection with the hours it takes and its value there.
 *
 * @packageDocumentation
 */
import { intervalHours } from "../interval.ts";
import type { Objection, ObjectionKind } from "./objections.ts";
import type { Stretch } from "./stretches.ts";

export type NightObjection = {
  /** Cloud and fog by their mean over those hours, the rest by the worst. */
  readonly objection: Objection;
  /** Darkness lost to it. */
  readonly hours: number;
  readonly start: Date;
  readonly end: Date;
};

type Part = { readonly stretch: Stretch; readonly objection: Objection };

/**
 * Gathers the objections of a night by kind, the costliest first.
 *
 * @param stretches - of the darkness, in order
 */
export function nightObjections(stretches: readonly Stretch[]): readonly NightObjection[] {
  const byKind = new Map<ObjectionKind, Part[]>();
  for (const stretch of stretches) {
    for (const objection of stretch.objections) {
      byKind.set(objection.kind, [...(byKind.get(objection.kind) ?? []), { stretch, objection }]);
    }
  }
  return [...byKind.values()].flatMap(gathered).sort((one, other) => other.hours - one.hours);
}

function gathered(parts: readonly Part[]): NightObjection[] {
  const first = parts[0];
  const last = parts.at(-1);
  if (first === undefined || last === undefined) return [];
  const hours = parts.reduce((sum, part) => sum + intervalHours(part.stretch), 0);
  const objection = parts.map((part) => part.objection).reduce(worse);
  return [
    {
      objection: withMean(objection, parts, hours),
      hours,
      start: first.stretch.start,
      end: last.stretch.end,
    },
  ];
}

/** A cloud's value in the middle of a stretch is its mean there, for it runs linearly. */
function withMean(objection: Objection, parts: readonly Part[], hours: number): Objection {
  if (objection.kind !== "cloud" && objection.kind !== "fog") return objection;
  const sum = parts.reduce((total, part) => total + badness(part.objection) * intervalHours(part.stretch), 0);
  return { ...objection, percent: sum / hours };
}

function worse(one: Objection, other: Objection): Objection {
  return badness(other) > badness(one) ? other : one;
}

/** Larger is worse; comparable within a kind. */
function badness(objection: Objection): number {
  switch (objection.kind) {
    case "cloud":
    case "fog":
    case "rain-chance":
      return objection.percent;
    case "cloud-unknown":
      return 0;
    case "rain":
      return objection.millimetres;
    case "gusts":
    case "wind":
      return objection.metresPerSecond;
    case "visibility":
      return -objection.metres;
    case "fog-risk":
      return -objection.spreadCelsius;
  }
}
