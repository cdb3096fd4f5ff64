/**
 * An evening at the eyepiece by the clock: what sets first is seen first, a while on each.
 *
 * @packageDocumentation
 */
import { type Interval, longestInterval } from "../interval.ts";
import { MS_PER_MINUTE } from "../sky/time.ts";
import {
  type CardQuestion,
  darkStep,
  dewStep,
  type RunCard,
  type RunCardRules,
  type RunStep,
} from "./run-card.ts";

type Waiting = { readonly name: string; readonly span: Interval };

/** Lays out the evening over the first few targets; `null` when none of them has a window. */
export function viewingCard(question: CardQuestion, rules: RunCardRules): RunCard | null {
  const { times, first, others, dew } = question;
  const waiting = [first, ...others].slice(0, rules.objectsByEye).flatMap(({ name, windows }) => {
    const span = longestInterval(windows);
    return span === null ? [] : [{ name, span }];
  });
  const looks = looksInOrder(waiting, rules.lookMinutes * MS_PER_MINUTE);
  const [opening] = looks;
  const closing = looks.at(-1);
  if (opening === undefined || closing === undefined) return null;
  const end = new Date(
    Math.min(closing.at.getTime() + rules.lookMinutes * MS_PER_MINUTE, closing.until.getTime()),
  );
  const steps: RunStep[] = [
    { kind: "set-up", at: new Date(opening.at.getTime() - rules.setUpMinutes * MS_PER_MINUTE) },
    ...darkStep(times, end),
    ...looks,
    ...dewStep(dew, opening.at, end),
    { kind: "end", at: end },
  ];
  return { steps: steps.sort((one, other) => one.at.getTime() - other.at.getTime()), second: null };
}

/** One after the other: of those that are up, the one that is lost first; the one that comes first when none is. */
function looksInOrder(targets: readonly Waiting[], lookMs: number): Extract<RunStep, { kind: "start" }>[] {
  const looks: Extract<RunStep, { kind: "start" }>[] = [];
  let left = [...targets];
  let now = Math.min(...left.map(({ span }) => span.start.getTime()));
  while (left.length > 0) {
    left = left.filter(({ span }) => span.end.getTime() > now);
    const up = left.filter(({ span }) => span.start.getTime() <= now);
    const [next] = (up.length > 0 ? up : left).sort((one, other) =>
      up.length > 0
        ? one.span.end.getTime() - other.span.end.getTime()
        : one.span.start.getTime() - other.span.start.getTime(),
    );
    if (next === undefined) break;
    const at = Math.max(now, next.span.start.getTime());
    looks.push({ kind: "start", at: new Date(at), target: next.name, until: next.span.end });
    left = left.filter((each) => each !== next);
    now = at + lookMs;
  }
  return looks;
}
