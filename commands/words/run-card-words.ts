/**
 * The run card in words, a line a step.
 *
 * @packageDocumentation
 */
import type { Rig } from "../../core/rig/rig.ts";
import type { RunCard, RunStep } from "../../core/targets/run-card.ts";
import { clockTime } from "./clock.ts";

/**
 * One line a step, the clock first.
 *
 * @param kind - of the rig: the eye looks at one object after the other, a camera stays
 * @param poleWords - how the polar axis is set at an instant
 */
export function runCardLines(
  card: RunCard,
  kind: Rig["kind"],
  zone: string,
  poleWords: (at: Date) => string,
): string[] {
  let started = false;
  return card.steps.map((step) => {
    const words =
      (kind === "visual" ? eyepieceWords(step, zone) : null) ?? stepWords(step, started, zone, poleWords);
    if (step.kind === "start") started = true;
    return `${clockTime(step.at, zone)}  ${words}`;
  });
}

/** What is said otherwise at an eyepiece; `null` of the rest. */
function eyepieceWords(step: RunStep, zone: string): string | null {
  switch (step.kind) {
    case "start":
      return `${step.target}, in view until ${clockTime(step.until, zone)}`;
    case "end":
      return "End of the list: stay with what you like, then cap and pack";
    case "set-up":
    case "align":
    case "dark":
    case "flip":
    case "dew":
      return null;
  }
}

function stepWords(step: RunStep, started: boolean, zone: string, poleWords: (at: Date) => string): string {
  switch (step.kind) {
    case "set-up":
      return "Set up: level, cool, focus";
    case "align":
      return poleWords(step.at);
    case "dark":
      return "Dark enough";
    case "start":
      return started
        ? `Hand over to ${step.target}, until ${clockTime(step.until, zone)}`
        : `Start on ${step.target}, until ${clockTime(step.until, zone)}`;
    case "flip":
      return `Meridian flip on ${step.target}`;
    case "dew":
      return step.frost
        ? "Frost on cold optics from here: heat them"
        : "Dew on cold optics from here: heat them";
    case "end":
      return "End: flats and darks, cap, pack";
  }
}
