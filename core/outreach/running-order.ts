/**
 * The running order of a public evening: each instrument is a station, each station shows one thing
 * after the other, and what is lost first is shown first.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import type { Viewer } from "./instruments.ts";
import { needsDarkness, type Sight, worthOf } from "./sights.ts";

export type Stop = Interval & { readonly sight: Sight };

export type Station = {
  readonly viewer: Viewer;
  /** How long one thing stays in view. */
  readonly slotMinutes: number;
  /** In order, none overlapping. */
  readonly stops: readonly Stop[];
};

export type StationQuestion = { readonly viewer: Viewer; readonly slotMinutes: number };

const MS_PER_MINUTE = 60_000;
/** A stop is drawn out to fill a gap, but to no more than so many slots. */
const LONGEST_SLOTS = 2;
/** Each further thing of a kind at a station is worth so much of the one before: guests like a change. */
const ALIKE_SHARE = 0.75;
/** What a smaller telescope shows nearly as well counts so much in a larger one. */
const KEPT_SHARE = 0.6;
const NEARLY = 0.85;

/**
 * Sets the order.
 *
 * Of all that can be shown the worthiest is taken first, in the instrument that shows it best, as long
 * as the station can still show all of its things within their windows. Optics show each thing once;
 * a second telescope repeats what would else leave it idle. The bare eye is a station of its own.
 *
 * At each station a thing is never shown after another that was already in sight when its turn came
 * and that is lost earlier.
 */
export function runningOrder(
  sights: readonly Sight[],
  stations: readonly StationQuestion[],
  session: Interval,
): Station[] {
  const chosen = new Map<Viewer, Sight[]>(stations.map(({ viewer }) => [viewer, []]));
  const slots = new Map(stations.map(({ viewer, slotMinutes }) => [viewer, slotMinutes * MS_PER_MINUTE]));
  const inOptics = new Set<string>();
  const keptFor = keptForOthers(sights);
  const worthNow = (sight: Sight) => {
    const alike = (chosen.get(sight.viewer) ?? []).filter(({ what }) => what.kind === sight.what.kind);
    return worthOf(sight) * (keptFor.has(sight) ? KEPT_SHARE : 1) * ALIKE_SHARE ** alike.length;
  };
  const take = (sight: Sight, mayRepeat: boolean) => {
    const list = chosen.get(sight.viewer);
    const slotMs = slots.get(sight.viewer);
    if (list === undefined || slotMs === undefined) return;
    if (list.some(({ what }) => what.name === sight.what.name)) return;
    const isEye = sight.viewer.instrument.kind === "eyes";
    if (!isEye && !mayRepeat && inOptics.has(sight.what.name)) return;
    if (inTurn([...list, sight], slotMs, session) === null) return;
    list.push(sight);
    if (!isEye) inOptics.add(sight.what.name);
  };
  for (const mayRepeat of [false, true]) {
    const waiting = [...sights].sort((one, other) => one.what.name.localeCompare(other.what.name));
    while (waiting.length > 0) {
      const best = waiting.reduce((first, other) => (worthNow(other) > worthNow(first) ? other : first));
      waiting.splice(waiting.indexOf(best), 1);
      take(best, mayRepeat);
    }
  }
  return stations.map(({ viewer, slotMinutes }) => {
    const slotMs = slotMinutes * MS_PER_MINUTE;
    const stops = inTurn(chosen.get(viewer) ?? [], slotMs, session) ?? [];
    return { viewer, slotMinutes, stops: drawnOut(stops, slotMs, session) };
  });
}

/** What a smaller telescope shows nearly as well: the larger one is kept for what needs it. */
function keptForOthers(sights: readonly Sight[]): ReadonlySet<Sight> {
  const telescopes = sights.filter(({ viewer }) => viewer.instrument.kind === "telescope");
  return new Set(
    telescopes.filter((sight) =>
      telescopes.some(
        ({ what, viewer, view }) =>
          what.name === sight.what.name &&
          viewer.apertureMm < sight.viewer.apertureMm &&
          view.quality >= NEARLY * sight.view.quality,
      ),
    ),
  );
}

/** One after the other, the one lost first at the head; `null` when not all find a place. */
function inTurn(sights: readonly Sight[], slotMs: number, session: Interval): Stop[] | null {
  const waiting = [...sights];
  const stops: Stop[] = [];
  let now = session.start.getTime();
  while (waiting.length > 0) {
    const inSight = waiting.filter(({ window }) => window.start.getTime() <= now);
    if (inSight.length === 0) {
      now = Math.min(...waiting.map(({ window }) => window.start.getTime()));
      continue;
    }
    const next = inSight.reduce((first, other) => (comesBefore(other, first, session) ? other : first));
    const end = now + slotMs;
    if (end > lostAt(next, session)) return null;
    stops.push({ sight: next, start: new Date(now), end: new Date(end) });
    waiting.splice(waiting.indexOf(next), 1);
    now = end;
  }
  return stops;
}

function lostAt({ window }: Sight, session: Interval): number {
  return Math.min(window.end.getTime(), session.end.getTime());
}

/** By when it is lost; alike, the bright before what needs dark-adapted eyes, then the worthier. */
function comesBefore(one: Sight, other: Sight, session: Interval): boolean {
  const lost = lostAt(one, session) - lostAt(other, session);
  if (lost !== 0) return lost < 0;
  const dark = Number(needsDarkness(one.what.kind)) - Number(needsDarkness(other.what.kind));
  return dark !== 0 ? dark < 0 : worthOf(one) > worthOf(other);
}

/** Stops drawn out into the gaps behind them, as long as the thing stays in sight. */
function drawnOut(stops: readonly Stop[], slotMs: number, session: Interval): Stop[] {
  return stops.map((stop, index) => {
    const next = stops[index + 1]?.start.getTime() ?? session.end.getTime();
    const end = Math.min(next, lostAt(stop.sight, session), stop.start.getTime() + LONGEST_SLOTS * slotMs);
    return { ...stop, end: new Date(Math.max(end, stop.end.getTime())) };
  });
}
