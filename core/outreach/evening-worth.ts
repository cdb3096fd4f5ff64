/**
 * Which evening suits the public best: what speaks for and against each, and the order that follows.
 *
 * The sums only order the evenings; people are told the reasons.
 *
 * @packageDocumentation
 */
import type { BodyName } from "../targets/sky-object.ts";
import type { AudienceRules } from "./audience.ts";
import type { BodyInReach, EveningFacts } from "./evening-facts.ts";

/** How much each thing weighs; chosen, in `config/`. */
export type EveningWeights = {
  /** Lit by a quarter to three quarters: the shadows are longest where one looks. */
  readonly moonHalfLit: number;
  readonly moonCrescent: number;
  readonly moonGibbous: number;
  /** Over 95 % lit: no shadows, and a bright sky. */
  readonly moonFull: number;
  /** No Moon in the sky: dark for those who come for it. */
  readonly moonless: { readonly withChildren: number; readonly adults: number };
  readonly planets: Readonly<Partial<Record<BodyName, number>>>;
  /** Mars when its disc is small. */
  readonly smallMars: number;
  /** Each hour of darkness before people leave. */
  readonly darkHour: { readonly withChildren: number; readonly adults: number };
  readonly darkHoursThatCount: number;
  readonly noDarkness: number;
  /** Each hour that the evening must run past bedtime. */
  readonly pastBedtimeHour: number;
  readonly readyWeekday: number;
  readonly shower: number;
  readonly lunarEclipse: number;
  readonly conjunction: number;
  readonly forecast: Readonly<Record<"go" | "marginal" | "no-go", number>>;
  /** Sun sessions: each hour with the Sun clear of the skyline. */
  readonly sunHour: number;
  readonly sunHoursThatCount: number;
  readonly solarEclipse: number;
};

export type MeritKind =
  | "moon"
  | "moonless"
  | "planet"
  | "darkness"
  | "no-darkness"
  | "bedtime"
  | "weekday"
  | "event"
  | "forecast"
  | "sun";

/** One thing for (positive) or against an evening. */
export type Merit = { readonly kind: MeritKind; readonly weight: number };

export type WeighedEvening<Facts> = {
  readonly facts: Facts;
  readonly merits: readonly Merit[];
  /** The sum, for ordering alone. */
  readonly worth: number;
};

/** A disc of this width shows something. */
const MARS_WORTH_SEEING_ARCSEC = 8;

/** How far a Moon is lit, as people speak of it. */
export type MoonShape = "crescent" | "half" | "gibbous" | "full";

export function moonShape(illuminatedFraction: number): MoonShape {
  if (illuminatedFraction < 0.25) return "crescent";
  if (illuminatedFraction <= 0.75) return "half";
  return illuminatedFraction <= 0.95 ? "gibbous" : "full";
}

/**
 * Weighs an evening.
 *
 * @param forecast - the verdict on the session, as far as a forecast is worth anything; else `null`
 */
export function weighEvening<Facts extends EveningFacts>(
  facts: Facts,
  forecast: "go" | "marginal" | "no-go" | null,
  audience: AudienceRules,
  weights: EveningWeights,
): WeighedEvening<Facts> {
  const { darkHours, session } = facts;
  const who = audience.children ? "withChildren" : "adults";
  const merits: Merit[] = [
    moonMerit(facts, audience, weights),
    ...facts.planets.map((planet): Merit => ({ kind: "planet", weight: planetWeight(planet, weights) })),
    darkHours > 0
      ? {
          kind: "darkness",
          weight: weights.darkHour[who] * Math.min(darkHours, weights.darkHoursThatCount),
        }
      : { kind: "no-darkness", weight: weights.noDarkness },
    ...facts.events.map(({ kind }): Merit => ({ kind: "event", weight: eventWeight(kind, weights) })),
  ];
  if (session.pastLeaveHours > 0) {
    merits.push({ kind: "bedtime", weight: weights.pastBedtimeHour * session.pastLeaveHours });
  }
  if (audience.readyWeekdays.includes(facts.weekday)) {
    merits.push({ kind: "weekday", weight: weights.readyWeekday });
  }
  if (forecast !== null) merits.push({ kind: "forecast", weight: weights.forecast[forecast] });
  return weighed(facts, merits);
}

/** An evening or a day with its merits added up, the weightiest first. */
export function weighed<Facts>(facts: Facts, merits: readonly Merit[]): WeighedEvening<Facts> {
  return {
    facts,
    merits: [...merits].sort((one, other) => Math.abs(other.weight) - Math.abs(one.weight)),
    worth: merits.reduce((sum, { weight }) => sum + weight, 0),
  };
}

function moonMerit({ moon, times }: EveningFacts, audience: AudienceRules, weights: EveningWeights): Merit {
  if (moon === null) {
    const weight = audience.children ? weights.moonless.withChildren : weights.moonless.adults;
    return { kind: "moonless", weight };
  }
  const byShape: Readonly<Record<MoonShape, number>> = {
    crescent: weights.moonCrescent,
    half: weights.moonHalfLit,
    gibbous: weights.moonGibbous,
    full: weights.moonFull,
  };
  return { kind: "moon", weight: byShape[moonShape(times.moon.illuminatedFraction)] };
}

function planetWeight({ body, diameterArcsec }: BodyInReach, weights: EveningWeights): number {
  if (body === "Mars" && diameterArcsec < MARS_WORTH_SEEING_ARCSEC) return weights.smallMars;
  return weights.planets[body] ?? 0;
}

function eventWeight(kind: EveningFacts["events"][number]["kind"], weights: EveningWeights): number {
  switch (kind) {
    case "lunar-eclipse":
      return weights.lunarEclipse;
    case "solar-eclipse":
      return weights.solarEclipse;
    case "shower":
      return weights.shower;
    case "conjunction":
      return weights.conjunction;
  }
}

/** An evening with its place in time, a whole number of nights from the first. */
export type Placed<Facts> = WeighedEvening<Facts> & { readonly index: number };

/**
 * The best evenings, best first, none nearer than `apart` nights to a better one.
 *
 * @param most - so many at most
 */
export function bestEvenings<Facts>(
  evenings: readonly Placed<Facts>[],
  most: number,
  apart: number,
): Placed<Facts>[] {
  const best: Placed<Facts>[] = [];
  const byWorth = [...evenings].sort((one, other) => other.worth - one.worth || one.index - other.index);
  for (const evening of byWorth) {
    if (best.length === most) break;
    if (best.every(({ index }) => Math.abs(index - evening.index) >= apart)) best.push(evening);
  }
  return best;
}

/**
 * Where an evening goes when it rains: the best of the evenings soon after.
 *
 * @param nights - so many nights after, at least and at most
 * @returns `null` when none of the evenings lies there
 */
export function rainDate<Facts>(
  evening: Placed<Facts>,
  evenings: readonly Placed<Facts>[],
  nights: { readonly min: number; readonly max: number },
): Placed<Facts> | null {
  const after = evenings.filter(
    ({ index }) => index - evening.index >= nights.min && index - evening.index <= nights.max,
  );
  const [best] = bestEvenings(after, 1, 0);
  return best ?? null;
}
