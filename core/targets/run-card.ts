/**
 * The evening by the clock: set up, dark, start, flip, hand over, dew, end.
 *
 * @packageDocumentation
 */
import { type Interval, intervalHours, longestInterval, subtractIntervals, totalHours } from "../interval.ts";
import type { NightTimes } from "../night/night.ts";
import { MS_PER_MINUTE } from "../sky/time.ts";
import type { DewSpan } from "../weather/dew.ts";

/** A target as the card needs it: a name, when it may be used, and what an hour of it is worth. */
export type CardTarget = {
  readonly name: string;
  readonly windows: readonly Interval[];
  /** Counting hours in an hour of its windows, on average. */
  readonly worthOfHour: number;
  readonly meridianFlip: Date | null;
};

export type RunStep =
  | { readonly kind: "set-up"; readonly at: Date }
  | { readonly kind: "dark"; readonly at: Date }
  /** The polar axis is set by its star. */
  | { readonly kind: "align"; readonly at: Date }
  | { readonly kind: "start"; readonly at: Date; readonly target: string; readonly until: Date }
  | { readonly kind: "flip"; readonly at: Date; readonly target: string }
  | { readonly kind: "dew"; readonly at: Date; readonly frost: boolean }
  | { readonly kind: "end"; readonly at: Date };

export type RunCard = {
  /** In order of time. */
  readonly steps: readonly RunStep[];
  /** What fills the rest of the night; `null` when nothing does for long enough. */
  readonly second: string | null;
};

export type RunCardRules = {
  /** Set-up begins so long before the first picture. */
  readonly setUpMinutes: number;
  /** The polar axis is set so long before it, stars permitting. */
  readonly alignMinutes: number;
  /** A second target is worth turning to for so long at least. */
  readonly leastHandOverMinutes: number;
  /** At an eyepiece, so many objects of the list … */
  readonly objectsByEye: number;
  /** … get so long each. */
  readonly lookMinutes: number;
};

type Turn = { readonly target: CardTarget; readonly span: Interval };

/** What the card is made from. */
export type CardQuestion = {
  readonly times: NightTimes;
  /** The chosen one; without a window there is no card. */
  readonly first: CardTarget;
  /** In order of preference; the one worth most in what is left is taken. */
  readonly others: readonly CardTarget[];
  /** When dew or frost forms on optics. */
  readonly dew: readonly DewSpan[];
  /** The mount has a polar axis to set. */
  readonly polar: boolean;
};

/** Lays out the night around one target; `null` when it has no window. */
export function runCard(question: CardQuestion, rules: RunCardRules): RunCard | null {
  const { times, first, others, dew } = question;
  const main = longestInterval(first.windows);
  if (main === null) return null;
  const filling = bestFilling(main, others, rules.leastHandOverMinutes / 60);
  const turns = [{ target: first, span: main }, ...(filling === null ? [] : [filling])].sort(
    (one, other) => one.span.start.getTime() - other.span.start.getTime(),
  );
  const begin = turns[0]?.span.start ?? main.start;
  const end = turns.at(-1)?.span.end ?? main.end;
  const steps: RunStep[] = [
    { kind: "set-up", at: new Date(begin.getTime() - rules.setUpMinutes * MS_PER_MINUTE) },
    ...(question.polar ? alignStep(times, begin, rules) : []),
    ...darkStep(times, end),
    ...turns.flatMap((turn) => stepsOf(turn)),
    ...dewStep(dew, begin, end),
    { kind: "end", at: end },
  ];
  return {
    steps: steps.sort((one, other) => one.at.getTime() - other.at.getTime()),
    second: filling?.target.name ?? null,
  };
}

/** The other target that is worth most in one stretch outside the first one's. */
function bestFilling(main: Interval, others: readonly CardTarget[], leastHours: number): Turn | null {
  let best: Turn | null = null;
  let most = 0;
  for (const target of others) {
    const span = longestInterval(subtractIntervals(target.windows, [main]));
    if (span === null || intervalHours(span) < leastHours) continue;
    const worth = totalHours([span]) * target.worthOfHour;
    if (worth > most) [best, most] = [{ target, span }, worth];
  }
  return best;
}

function stepsOf({ target, span }: Turn): RunStep[] {
  const start: RunStep = { kind: "start", at: span.start, target: target.name, until: span.end };
  const flip = target.meridianFlip;
  if (flip === null || flip <= span.start || flip >= span.end) return [start];
  return [start, { kind: "flip", at: flip, target: target.name }];
}

/** Before the first picture, but not before the pole star can be seen in the dusk. */
function alignStep(times: NightTimes, begin: Date, rules: RunCardRules): RunStep[] {
  const wanted = begin.getTime() - rules.alignMinutes * MS_PER_MINUTE;
  const at = new Date(Math.max(wanted, times.civilDusk?.getTime() ?? wanted));
  return at < begin ? [{ kind: "align", at }] : [];
}

/** When it is dark enough, if that comes before the end. */
export function darkStep(times: NightTimes, end: Date): RunStep[] {
  const dark = times.workingWindows[0]?.start;
  return dark === undefined || dark >= end ? [] : [{ kind: "dark", at: dark }];
}

/** Dew once, when it first comes while anything stands outside. */
export function dewStep(dew: readonly DewSpan[], begin: Date, end: Date): RunStep[] {
  const first = dew.find((span) => span.end > begin && span.start < end);
  if (first === undefined) return [];
  const at = first.start < begin ? begin : first.start;
  return [{ kind: "dew", at, frost: first.kind === "frost" }];
}
