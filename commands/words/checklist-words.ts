/**
 * The checklist that follows from a plan.
 *
 * @packageDocumentation
 */
import { CHECKLIST } from "../../config/outreach-checklist.ts";

/** What the plan says of itself, as far as the checklist asks. */
export type ChecklistFacts = {
  /** Clock times at the site. */
  readonly setUp: string;
  /** When the Sun is down, if that is after the gear is out; else `null`. */
  readonly sunset: string | null;
  readonly children: boolean;
  readonly telescopes: boolean;
  readonly binoculars: boolean;
  readonly eyes: boolean;
  readonly heavy: boolean;
  /** Something is shown that needs eyes used to the dark. */
  readonly needsDarkness: boolean;
  readonly brightMoon: boolean;
  readonly dew: boolean;
  readonly cold: boolean;
};

export type ChecklistPart = { readonly heading: string; readonly lines: readonly string[] };

/** Before, during and after an evening. */
export function eveningChecklist(facts: ChecklistFacts): readonly ChecklistPart[] {
  const { children, telescopes } = facts;
  return parts([
    [
      "Before",
      [
        [true, CHECKLIST.leave],
        [true, `Gear out from ${facts.setUp}.`],
        [facts.sunset !== null, `${CHECKLIST.capsUntilSunset} Sunset is at ${facts.sunset ?? "–"}.`],
        [telescopes, CHECKLIST.coolDown],
        [telescopes, CHECKLIST.alignFinders],
        [facts.heavy, CHECKLIST.heavy],
        [telescopes, CHECKLIST.power],
        [facts.dew, CHECKLIST.dew],
        [telescopes, CHECKLIST.cables],
      ],
    ],
    [
      "During",
      [
        [facts.needsDarkness, CHECKLIST.darkAdaptation],
        [true, facts.brightMoon ? `${CHECKLIST.moonlight} ${CHECKLIST.redLight}` : CHECKLIST.redLight],
        [facts.eyes, CHECKLIST.laser],
        [children, CHECKLIST.children],
        [children && telescopes, CHECKLIST.steps],
        [facts.binoculars, CHECKLIST.binoculars],
        [facts.cold, CHECKLIST.cold],
      ],
    ],
    ["After", [[true, CHECKLIST.after]]],
  ]);
}

/** Before, during and after a session of the Sun. */
export function sunChecklist(facts: {
  readonly setUp: string;
  readonly children: boolean;
  readonly eyes: boolean;
}): readonly ChecklistPart[] {
  return parts([
    [
      "Before",
      [
        [true, CHECKLIST.inspectFilters],
        [true, CHECKLIST.finders],
        [facts.eyes, CHECKLIST.viewers],
        [true, CHECKLIST.aside],
        [true, CHECKLIST.leave],
        [true, `Gear out from ${facts.setUp}.`],
        [true, CHECKLIST.sunCream],
      ],
    ],
    [
      "During",
      [
        [true, CHECKLIST.neverAlone],
        [facts.children, CHECKLIST.children],
        [facts.children, CHECKLIST.steps],
      ],
    ],
    ["After", [[true, CHECKLIST.after]]],
  ]);
}

function parts(
  given: readonly (readonly [string, readonly (readonly [boolean, string])[]])[],
): readonly ChecklistPart[] {
  return given.map(([heading, lines]) => ({
    heading,
    lines: lines.filter(([applies]) => applies).map(([, text]) => text),
  }));
}
