/**
 * The checklist that follows from a plan.
 *
 * @packageDocumentation
 */
import { CHECKLIST, CHECKLIST_SHORT } from "../../config/outreach-checklist.ts";

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

export type ChecklistPart = {
  readonly heading: string;
  readonly lines: readonly string[];
  /** The same in a few words, for the printed page. */
  readonly short: readonly string[];
};

/** Before, during and after an evening. */
export function eveningChecklist(facts: ChecklistFacts): readonly ChecklistPart[] {
  const { children, telescopes } = facts;
  return parts([
    [
      "Before",
      [
        [true, "leave", `Gear out from ${facts.setUp}.`],
        [facts.sunset !== null, "capsUntilSunset", `Sunset is at ${facts.sunset ?? "–"}.`],
        [telescopes, "coolDown"],
        [telescopes, "alignFinders"],
        [facts.heavy, "heavy"],
        [telescopes, "power"],
        [facts.dew, "dew"],
        [telescopes, "cables"],
      ],
    ],
    [
      "During",
      [
        [facts.needsDarkness, "darkAdaptation"],
        [facts.brightMoon, "moonlight"],
        [true, "redLight"],
        [facts.eyes, "laser"],
        [children, "children"],
        [children && telescopes, "steps"],
        [facts.binoculars, "binoculars"],
        [facts.cold, "cold"],
      ],
    ],
    ["After", [[true, "after"]]],
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
        [true, "inspectFilters"],
        [true, "finders"],
        [facts.eyes, "viewers"],
        [true, "aside"],
        [true, "leave", `Gear out from ${facts.setUp}.`],
        [true, "sunCream"],
      ],
    ],
    [
      "During",
      [
        [true, "neverAlone"],
        [facts.children, "children"],
        [facts.children, "steps"],
      ],
    ],
    ["After", [[true, "after"]]],
  ]);
}

type Row = readonly [applies: boolean, item: keyof typeof CHECKLIST, more?: string];

function parts(
  given: readonly (readonly [heading: string, rows: readonly Row[]])[],
): readonly ChecklistPart[] {
  return given.map(([heading, rows]) => {
    const applying = rows.filter(([applies]) => applies);
    return {
      heading,
      lines: applying.map(([, item, more]) =>
        more === undefined ? CHECKLIST[item] : `${CHECKLIST[item]} ${more}`,
      ),
      short: applying.map(([, item, more]) =>
        more === undefined ? `${CHECKLIST_SHORT[item]}.` : `${CHECKLIST_SHORT[item]}. ${more}`,
      ),
    };
  });
}
