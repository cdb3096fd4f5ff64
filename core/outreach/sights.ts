/**
 * What can be shown in which instrument, and between when: above the skyline, dark enough, plain enough.
 *
 * @packageDocumentation
 */
import type { Interval } from "../interval.ts";
import { magArcsec2 } from "../night/sky-brightness.ts";
import { bodyPlace } from "../sky/bodies.ts";
import { airmass } from "../targets/airmass.ts";
import { V_BAND_NM } from "../targets/extinction.ts";
import { extinctionAt, type ObservingConditions, skyLight } from "../targets/observing-conditions.ts";
import { type TargetTrack, targetTrack } from "../targets/placer.ts";
import { visibleIntervals } from "../targets/visibility.ts";
import type { AudienceRules } from "./audience.ts";
import { type BodyLook, type GuestRules, type GuestView, guestView, type SkyBeside } from "./guest-view.ts";
import type { Viewer } from "./instruments.ts";
import { bodyOf, type Showable, type ShowableKind } from "./showable.ts";
import { sunBelow } from "./sun-depth.ts";

export type SightRules = {
  readonly guests: GuestRules;
  /** The Sun's centre must stand so deep before a kind is shown, degrees; planets by name. */
  readonly sunDepthDeg: (what: Showable) => number;
  /** Nothing lower is shown to the public, degrees. */
  readonly leastAltitudeDeg: number;
};

/** One thing in one instrument. */
export type Sight = {
  readonly what: Showable;
  readonly viewer: Viewer;
  /** When it can be shown: within the session, clear, dark enough and plain. */
  readonly window: Interval;
  /** As it shows in the middle of its window. */
  readonly view: GuestView;
  readonly track: TargetTrack;
  readonly look: BodyLook | null;
};

/** The sky is looked at so often through the session. */
const STEP_MS = 10 * 60_000;

export type SightQuestion = {
  readonly conditions: ObservingConditions;
  readonly session: Interval;
  readonly showables: readonly Showable[];
  readonly viewers: readonly Viewer[];
  readonly audience: AudienceRules;
  readonly rules: SightRules;
};

/** What a thing is worth in an instrument: how much guests like it, and how well it shows there. */
export function worthOf({ what, view }: Pick<Sight, "what" | "view">): number {
  return what.appeal * view.quality * (view.ease === "at-a-glance" ? 1 : 0.6);
}

/** Everything that can be shown, each thing once for each instrument that shows it. */
export function sightsOf(question: SightQuestion): Sight[] {
  const depths = new Map<number, readonly Interval[]>();
  const darkFor = (depthDeg: number) => {
    const known = depths.get(depthDeg);
    if (known !== undefined) return known;
    const spans = sunBelow(question.conditions.site, depthDeg, [question.session]);
    depths.set(depthDeg, spans);
    return spans;
  };
  return question.showables.flatMap((what) => sightsOfOne(question, what, darkFor));
}

function sightsOfOne(
  question: SightQuestion,
  what: Showable,
  darkFor: (depthDeg: number) => readonly Interval[],
): Sight[] {
  const { conditions, session, rules } = question;
  const { site } = conditions;
  const middle = new Date((session.start.getTime() + session.end.getTime()) / 2);
  const track = targetTrack(site, what.target, middle);
  const clearance = { skyline: site.skyline, leastAltitudeDeg: rules.leastAltitudeDeg };
  const dark = darkFor(rules.sunDepthDeg(what));
  if (dark.length === 0) return [];
  const up = visibleIntervals((at) => track(at.getTime()), clearance, dark);
  if (up.length === 0) return [];
  const body = bodyOf(what);
  const place = body === null ? null : bodyPlace(body, site, middle);
  const look: BodyLook | null =
    place === null
      ? null
      : { diameterArcsec: 2 * place.semidiameterArcsec, illuminatedFraction: place.illuminatedFraction };
  const seen: Showable = place === null ? what : { ...what, magnitude: place.magnitude };
  const samples = up.map((span) => instantsIn(span).map((at) => ({ at, sky: skyAt(conditions, track, at) })));
  return question.viewers.flatMap((viewer) => {
    const viewAt = (sky: SkyBeside) => guestView(seen, viewer, sky, look, question.audience, rules.guests);
    const window = longestRun(samples, (sky) => viewAt(sky) !== null);
    if (window === null) return [];
    const half = new Date((window.start.getTime() + window.end.getTime()) / 2);
    const view = viewAt(skyAt(conditions, track, half)) ?? viewAt(skyAt(conditions, track, window.end));
    if (view === null) return [];
    const sight = { what: seen, viewer, window, view, track, look };
    return worthOf(sight) >= question.audience.leastWorth ? [sight] : [];
  });
}

type Sample = { readonly at: Date; readonly sky: SkyBeside };

/** Instants through a span, both ends among them. */
function instantsIn({ start, end }: Interval): Date[] {
  const steps = Math.max(1, Math.ceil((end.getTime() - start.getTime()) / STEP_MS));
  return Array.from(
    { length: steps + 1 },
    (_, step) => new Date(start.getTime() + ((end.getTime() - start.getTime()) * step) / steps),
  );
}

/** The longest run of samples, within one span, at which it shows; `null` without two in a row. */
function longestRun(
  spans: readonly (readonly Sample[])[],
  shows: (sky: SkyBeside) => boolean,
): Interval | null {
  let best: Interval | null = null;
  for (const samples of spans) {
    let start: Date | null = null;
    for (const { at, sky } of samples) {
      if (!shows(sky)) {
        start = null;
        continue;
      }
      start ??= at;
      if (at > start && (best === null || +at - +start > +best.end - +best.start)) best = { start, end: at };
    }
  }
  return best;
}

/** The sky beside a track at an instant: glow, Moon and twilight together. */
export function skyAt(conditions: ObservingConditions, track: TargetTrack, at: Date): SkyBeside {
  const utMs = at.getTime();
  const place = track(utMs);
  const { glow, twilight, moonAt } = skyLight(conditions, place, utMs);
  return {
    skyMagArcsec2: magArcsec2(glow + twilight + moonAt(V_BAND_NM)),
    extinctionMag: extinctionAt(conditions, V_BAND_NM) * airmass(place.altitudeDeg),
  };
}

/** Kinds that need the eye to have got used to the dark. */
export function needsDarkness(kind: ShowableKind): boolean {
  switch (kind) {
    case "moon":
    case "planet":
    case "double-star":
    case "star":
    case "figure":
    case "asterism":
    case "open-cluster":
      return false;
    case "galaxy":
    case "galaxy-group":
    case "globular-cluster":
    case "emission-nebula":
    case "reflection-nebula":
    case "dark-nebula":
    case "planetary-nebula":
    case "supernova-remnant":
    case "star-cloud":
      return true;
  }
}
