/**
 * What an owner has said of a rig, kept beside it so that it can be changed figure by figure.
 *
 * @packageDocumentation
 */
import type { Rig } from "../../core/rig/rig.ts";
import type { CameraFacts } from "./camera-facts.ts";
import { cameraRigOf } from "./camera-rig.ts";
import { type VisualFacts, visualRigOf } from "./visual-rig.ts";

export type RigFacts = CameraFacts | VisualFacts;

/** Any fact of either kind of rig. */
export type RigFact = keyof CameraFacts | keyof VisualFacts;

/**
 * The rig, with what is missing assumed and named.
 *
 * @param optionOf - which option a figure came from, for the message
 * @throws AskError naming the option and range that a figure broke
 */
export function rigFromFacts(facts: RigFacts, optionOf: (fact: RigFact) => string): Rig {
  return facts.kind === "camera" ? cameraRigOf(facts, optionOf) : visualRigOf(facts, optionOf);
}
