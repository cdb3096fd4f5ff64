/**
 * Jupiter's four great moons: where they stand beside it, and which of them crosses the disc,
 * throws its shadow on it, hides behind it or in its shadow.
 *
 * @packageDocumentation
 */
import { Body, GeoVector, HelioVector, JupiterMoons } from "astronomy-engine";
import type { Interval } from "../interval.ts";
import type { Vector3 } from "../sky/angles.ts";
import { engineTime } from "../sky/time.ts";
import { cross, difference, dot, scaled, sum, unit, vectorOf } from "../sky/vectors.ts";
import { axesOf } from "./globe.ts";

export type MoonNumeral = "I" | "II" | "III" | "IV";

export const MOON_NUMERALS: readonly MoonNumeral[] = ["I", "II", "III", "IV"];

/** A place beside Jupiter's middle, in its equatorial radii: west and north of it, by its own axis. */
export type BesideJupiter = { readonly x: number; readonly y: number };

export type JovianMoon = BesideJupiter & {
  readonly numeral: MoonNumeral;
  /** Beyond the plane of Jupiter's middle, in its equatorial radii; negative in front. */
  readonly z: number;
  readonly state: "clear" | "transit" | "occulted" | "eclipsed";
};

export type JovianSystem = {
  /** I to IV. */
  readonly moons: readonly JovianMoon[];
  /** Shadows on the side of the disc that we see. */
  readonly shadows: readonly (BesideJupiter & { readonly numeral: MoonNumeral })[];
};

export type JovianPhenomenonKind = "transit" | "shadow" | "occultation" | "eclipse";

/** A moon before, behind or in the shadow of Jupiter, or its shadow on it; ends beyond the span are cut. */
export type JovianPhenomenon = Interval & {
  readonly numeral: MoonNumeral;
  readonly kind: JovianPhenomenonKind;
  /** Whether it begins, and ends, within the span looked at. */
  readonly beginsInside: boolean;
  readonly endsInside: boolean;
};

const KM_PER_AU = 149_597_870.7;
const LIGHT_MS_PER_AU = 499_004.784;
/** Equatorial, and polar over equatorial: IAU working group 2015 (Archinal et al. 2018). */
const RADIUS_AU = 71_492 / KM_PER_AU;
const POLAR = 66_854 / 71_492;

const STEP_MS = 4 * 60_000;
const EDGE_MS = 1000;

/** Looking along a direction at Jupiter: west, north, away; and from how far, in its radii. */
type View = {
  readonly west: Vector3;
  readonly north: Vector3;
  readonly away: Vector3;
  readonly distance: number;
};

type Moment = {
  readonly pole: Vector3;
  readonly fromEarth: View;
  readonly fromSun: View;
  /** In equatorial radii from Jupiter's middle, J2000. */
  readonly moons: readonly Vector3[];
};

/**
 * Jupiter's moons at an instant as the Earth sees them, light's travel allowed for.
 *
 * @remarks
 * Within 0.02 radii of Meeus's chapter 44 (theory E5). A moon counts as a point at its middle
 * and shadows as cast by a point Sun, so phenomena are those of half-light.
 */
export function jovianSystem(at: Date): JovianSystem {
  return systemOf(followJupiter(at, at)(at.getTime()));
}

/**
 * What happens at Jupiter within a span, in order of beginning.
 *
 * @param span - a night at most: Jupiter's own motion is taken as straight through it
 */
export function jovianPhenomena(span: Interval): JovianPhenomenon[] {
  const follow = followJupiter(span.start, span.end);
  const kinds: readonly JovianPhenomenonKind[] = ["transit", "shadow", "occultation", "eclipse"];
  const found: JovianPhenomenon[] = [];
  const moments = stepsOf(span).map((ms) => ({ ms, moment: follow(ms) }));
  for (const [index, numeral] of MOON_NUMERALS.entries()) {
    for (const kind of kinds) {
      const isOn = (moment: Moment) => happens(kind, moment, index);
      let startedMs: number | null = null;
      let before: { ms: number; on: boolean } | null = null;
      const close = (endMs: number, endsInside: boolean) => {
        if (startedMs === null) return;
        const start = new Date(Math.round(startedMs));
        const beginsInside = startedMs > span.start.getTime();
        found.push({ numeral, kind, start, end: new Date(Math.round(endMs)), beginsInside, endsInside });
        startedMs = null;
      };
      for (const { ms, moment } of moments) {
        const on = isOn(moment);
        if (before === null) startedMs = on ? ms : null;
        else if (on !== before.on) {
          const edge = edgeBetween((at) => isOn(follow(at)), before.ms, ms, before.on);
          if (on) startedMs = edge;
          else close(edge, true);
        }
        before = { ms, on };
      }
      close(span.end.getTime(), false);
    }
  }
  return found.sort((one, other) => one.start.getTime() - other.start.getTime());
}

function stepsOf({ start, end }: Interval): number[] {
  const steps: number[] = [];
  for (let ms = start.getTime(); ms < end.getTime(); ms += STEP_MS) steps.push(ms);
  return [...steps, end.getTime()];
}

function edgeBetween(isOn: (ms: number) => boolean, fromMs: number, toMs: number, onAtFrom: boolean): number {
  let [low, high] = [fromMs, toMs];
  while (high - low > EDGE_MS) {
    const middle = (low + high) / 2;
    if (isOn(middle) === onAtFrom) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Earth, Sun and moons about Jupiter through a span of hours, from two asks of the planets' places. */
function followJupiter(from: Date, to: Date): (utMs: number) => Moment {
  const ends = [from, to].map((at) => {
    const time = engineTime(at);
    const earth = vectorOf(GeoVector(Body.Jupiter, time, false));
    const delayMs = Math.hypot(...earth) * LIGHT_MS_PER_AU;
    const sun = vectorOf(HelioVector(Body.Jupiter, engineTime(new Date(at.getTime() - delayMs))));
    return { earth, sun, delayMs };
  });
  const [first, last] = ends as [(typeof ends)[0], (typeof ends)[0]];
  const length = Math.max(1, to.getTime() - from.getTime());
  const { pole } = axesOf("Jupiter", from);
  return (utMs) => {
    const share = (utMs - from.getTime()) / length;
    const between = (a: Vector3, b: Vector3) => sum(a, scaled(difference(b, a), share));
    const delayMs = first.delayMs + share * (last.delayMs - first.delayMs);
    const { io, europa, ganymede, callisto } = JupiterMoons(engineTime(new Date(utMs - delayMs)));
    return {
      pole,
      fromEarth: viewAlong(between(first.earth, last.earth), pole),
      fromSun: viewAlong(between(first.sun, last.sun), pole),
      moons: [io, europa, ganymede, callisto].map((moon) => scaled(vectorOf(moon), 1 / RADIUS_AU)),
    };
  };
}

/** Looking along a direction at Jupiter, its axis upright. */
function viewAlong(direction: Vector3, pole: Vector3): View {
  const away = unit(direction);
  const north = unit(difference(pole, scaled(away, dot(pole, away))));
  // Seen from inside the sphere with north up, east is to the left.
  return { away, north, west: cross(away, north), distance: Math.hypot(...direction) / RADIUS_AU };
}

type Seen = BesideJupiter & { readonly z: number };

/** Where a place about Jupiter is seen: west, north, beyond; what is nearer stands wider apart. */
function seenFrom(view: View, place: Vector3): Seen {
  const z = dot(place, view.away);
  const nearer = view.distance / (view.distance + z);
  return { x: dot(place, view.west) * nearer, y: dot(place, view.north) * nearer, z };
}

/** Whether a place is seen on the disc or straight behind it: the disc is an ellipse. */
function isOverDisc(view: View, pole: Vector3, { x, y }: BesideJupiter): boolean {
  const tilt = dot(pole, view.away) ** 2;
  const polarSquared = POLAR ** 2 * (1 - tilt) + tilt;
  return x * x + (y * y) / polarSquared < 1;
}

function happens(kind: JovianPhenomenonKind, moment: Moment, index: number): boolean {
  const place = moment.moons[index] ?? [0, 0, 0];
  const view = kind === "transit" || kind === "occultation" ? moment.fromEarth : moment.fromSun;
  const seen = seenFrom(view, place);
  const beyond = kind === "occultation" || kind === "eclipse";
  return seen.z > 0 === beyond && isOverDisc(view, moment.pole, seen);
}

function systemOf(moment: Moment): JovianSystem {
  return {
    moons: MOON_NUMERALS.map((numeral, index) => ({
      numeral,
      ...seenFrom(moment.fromEarth, moment.moons[index] ?? [0, 0, 0]),
      state: stateOf(moment, index),
    })),
    shadows: MOON_NUMERALS.flatMap((numeral, index) => {
      const spot = happens("shadow", moment, index) ? shadowSpot(moment, index) : null;
      return spot === null ? [] : [{ numeral, ...spot }];
    }),
  };
}

function stateOf(moment: Moment, index: number): JovianMoon["state"] {
  if (happens("transit", moment, index)) return "transit";
  if (happens("occultation", moment, index)) return "occulted";
  return happens("eclipse", moment, index) ? "eclipsed" : "clear";
}

/** Where a shadow falls on the flattened globe; `null` round the limb from us. */
function shadowSpot({ moons, pole, fromSun, fromEarth }: Moment, index: number): BesideJupiter | null {
  // With the polar axis stretched, the globe is a unit sphere.
  const stretch = (v: Vector3) => sum(v, scaled(pole, dot(v, pole) * (1 / POLAR - 1)));
  const from = moons[index] ?? [0, 0, 0];
  const start = stretch(from);
  const ray = stretch(fromSun.away);
  const length2 = dot(ray, ray);
  const along = dot(start, ray);
  const root = along ** 2 - length2 * (dot(start, start) - 1);
  if (root < 0) return null;
  const spot = sum(from, scaled(fromSun.away, (-along - Math.sqrt(root)) / length2));
  // The surface there faces along its stretched place, stretched once more.
  if (dot(stretch(stretch(spot)), fromEarth.away) > 0) return null;
  const { x, y } = seenFrom(fromEarth, spot);
  return { x, y };
}
