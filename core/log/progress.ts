/**
 * How far each target has come: hours in hand against hours wanted, filter by filter.
 *
 * @packageDocumentation
 */

/** What one night gave one object through one filter. */
export type NightTally = {
  readonly object: string;
  readonly passband: string;
  /** `YYYY-MM-DD`. */
  readonly night: string;
  /** Kept subs. */
  readonly frames: number;
  readonly rejected: number;
  /** Of the kept subs by the clock. */
  readonly clockHours: number;
  /** Worth so many at the zenith without Moon; `null` when it could not be reckoned. */
  readonly countingHours: number | null;
};

/** Hours by the clock that a member wants of an object through a filter. */
export type WantedHours = { readonly object: string; readonly passband: string; readonly hours: number };

export type ProgressLine = {
  readonly object: string;
  readonly passband: string;
  readonly inHandHours: number;
  readonly countingHours: number | null;
  readonly wantedHours: number | null;
  /** `null` when nothing is wanted; never below zero. */
  readonly leftHours: number | null;
  readonly frames: number;
  readonly rejected: number;
  /** Hours that each night gave, oldest first. */
  readonly steps: readonly { readonly night: string; readonly hours: number }[];
};

/** A target that is begun or wanted: what is in hand and what is left, by filter. */
export type BegunTarget = {
  readonly object: string;
  readonly filters: readonly Omit<ProgressLine, "object" | "steps">[];
};

/**
 * A line for each object and filter that is begun or wanted.
 *
 * @param tallies - in any order, one for each night, object and filter
 * @returns the latest begun first; what is only wanted comes last
 */
export function progressLines(
  tallies: readonly NightTally[],
  wanted: readonly WantedHours[],
): readonly ProgressLine[] {
  const lines = new Map<string, NightTally[]>();
  for (const { object, passband } of wanted) lines.set(keyOf(object, passband), []);
  for (const tally of tallies) {
    const key = keyOf(tally.object, tally.passband);
    const line = lines.get(key);
    if (line === undefined) lines.set(key, [tally]);
    else line.push(tally);
  }
  const wishes = new Map(wanted.map((wish) => [keyOf(wish.object, wish.passband), wish]));
  return [...lines]
    .map(([key, nights]) => lineOf(nights, wishes.get(key)))
    .sort((one, other) => lastNight(other).localeCompare(lastNight(one)));
}

function lineOf(nights: readonly NightTally[], wish: WantedHours | undefined): ProgressLine {
  const inOrder = [...nights].sort((one, other) => one.night.localeCompare(other.night));
  const sum = (figure: (night: NightTally) => number) =>
    inOrder.reduce((total, night) => total + figure(night), 0);
  const inHandHours = sum((night) => night.clockHours);
  const counted = inOrder.every((night) => night.countingHours !== null);
  return {
    object: inOrder[0]?.object ?? wish?.object ?? "",
    passband: inOrder[0]?.passband ?? wish?.passband ?? "",
    inHandHours,
    countingHours: counted ? sum((night) => night.countingHours ?? 0) : null,
    wantedHours: wish?.hours ?? null,
    leftHours: wish === undefined ? null : Math.max(0, wish.hours - inHandHours),
    frames: sum((night) => night.frames),
    rejected: sum((night) => night.rejected),
    steps: inOrder.map(({ night, clockHours }) => ({ night, hours: clockHours })),
  };
}

/** The same by object, for the choice of tonight: the latest begun first. */
export function begunTargets(
  tallies: readonly NightTally[],
  wanted: readonly WantedHours[],
): readonly BegunTarget[] {
  const targets = new Map<string, Omit<ProgressLine, "object" | "steps">[]>();
  for (const { object, steps: _, ...filter } of progressLines(tallies, wanted)) {
    targets.set(object, [...(targets.get(object) ?? []), filter]);
  }
  return [...targets].map(([object, filters]) => ({ object, filters }));
}

function lastNight(line: ProgressLine): string {
  return line.steps.at(-1)?.night ?? "";
}

function keyOf(object: string, passband: string): string {
  return `${object.toLowerCase()}|${passband.toLowerCase()}`;
}
