/**
 * Targets in words: what they are called, what kind they are, how large.
 *
 * @packageDocumentation
 */
import type { ObjectKind, SkyObject, Target } from "../../core/targets/sky-object.ts";
import { declinationWords, rightAscensionWords } from "./sky.ts";

export const KIND_WORDS: Readonly<Record<ObjectKind, string>> = {
  galaxy: "galaxy",
  "galaxy-group": "group of galaxies",
  "open-cluster": "open cluster",
  "globular-cluster": "globular cluster",
  "emission-nebula": "emission nebula",
  "reflection-nebula": "reflection nebula",
  "dark-nebula": "dark nebula",
  "planetary-nebula": "planetary nebula",
  "supernova-remnant": "supernova remnant",
  "star-cloud": "star cloud",
  asterism: "asterism",
  "double-star": "double star",
  star: "star",
};

/** `NGC 6888, Crescent Nebula`, `M33`, `Jupiter`, a place's coordinates. */
export function targetName(target: Target): string {
  switch (target.kind) {
    case "object":
      return objectName(target.object);
    case "body":
      return target.body;
    case "place":
      return `${rightAscensionWords(target.raDeg)} ${declinationWords(target.decDeg)}`;
  }
}

/** As {@link targetName} within a sentence: `the Moon`. */
export function targetInSentence(target: Target): string {
  const name = targetName(target);
  return name === "Moon" || name === "Sun" ? `the ${name}` : name;
}

/** What a target is asked for and filed by: a designation, a body's name, or a place's coordinates. */
export function shortName(target: Target): string {
  return target.kind === "object" ? target.object.id : targetName(target);
}

/** Designation and name, once where they are the same. */
export function objectName(object: SkyObject): string {
  return object.name === null || object.name === object.id ? object.id : `${object.id}, ${object.name}`;
}

/** What kind of thing a target is. */
export function targetKind(target: Target): string {
  switch (target.kind) {
    case "object":
      return KIND_WORDS[target.object.kind];
    case "body":
      return target.body === "Sun" || target.body === "Moon" ? target.body.toLowerCase() : "planet";
    case "place":
      return "place in the sky";
  }
}

/** `25′ × 18′`, `12′ across`, or `null` when the size is unknown. */
export function sizeWords(object: SkyObject): string | null {
  const { majorArcmin, minorArcmin } = object;
  if (majorArcmin === null) return null;
  const figure = (arcmin: number) => (arcmin >= 10 ? String(Math.round(arcmin)) : arcmin.toFixed(1));
  return minorArcmin === null || minorArcmin === majorArcmin
    ? `${figure(majorArcmin)}′ across`
    : `${figure(majorArcmin)}′ × ${figure(minorArcmin)}′`;
}
