/**
 * Three stars to align a mount that finds its own way.
 *
 * Two stand on one side of the meridian and tell the mount where its axes point;
 * the third, across, shows how far the optics are from square to them.
 *
 * @packageDocumentation
 */
import { separationDeg } from "../sky/place.ts";
import type { NamedStar } from "../targets/catalogue.ts";
import { type StarField, type StarInSky, type StarLimits, starsWithin } from "./visible-stars.ts";

/** Common practice; the figures live in `config/`. */
export type AlignmentRules = {
  readonly limits: Omit<StarLimits, "faintestMag">;
  /** Tried in turn: the first that gives three stars is used. */
  readonly faintestMags: readonly number[];
  /** Between every two of them, degrees. */
  readonly leastSeparationDeg: number;
  /** Of right ascension between the third and each of the pair, hours; kept where the sky allows. */
  readonly acrossHours: { readonly least: number; readonly most: number };
};

export type AlignmentChoice = {
  /**
   * `full`: three stars by every rule. `near`: three, but the third is not the wished
   * hours of right ascension away. `short`: the sky offers fewer than three.
   */
  readonly kind: "full" | "near" | "short";
  /** The pair first, then the star across the meridian. */
  readonly stars: readonly StarInSky[];
  /** The magnitude limit that was needed. */
  readonly faintestMag: number;
};

type Trio = { readonly stars: readonly StarInSky[]; readonly across: boolean; readonly cost: number };

/** How many magnitudes a degree more between the nearest two is worth. */
const MAG_PER_DEGREE = 1 / 60;

/**
 * The best stars to align on: bright first, then far apart.
 *
 * @param stars - named stars, J2000
 *
 * @remarks Source: common practice.
 */
export function alignmentStars(
  stars: readonly NamedStar[],
  field: StarField,
  rules: AlignmentRules,
): AlignmentChoice {
  for (const faintestMag of rules.faintestMags) {
    const candidates = starsWithin(stars, field, { ...rules.limits, faintestMag });
    const best = bestTrio(candidates, rules);
    if (best !== null) return { kind: best.across ? "full" : "near", stars: best.stars, faintestMag };
  }
  const faintestMag = Math.max(...rules.faintestMags);
  const candidates = starsWithin(stars, field, { ...rules.limits, faintestMag });
  return { kind: "short", stars: bestFew(candidates, rules), faintestMag };
}

function bestTrio(candidates: readonly StarInSky[], rules: AlignmentRules): Trio | null {
  const west = candidates.filter((star) => star.hourAngleDeg >= 0);
  const east = candidates.filter((star) => star.hourAngleDeg < 0);
  let best: Trio | null = null;
  for (const [side, other] of [
    [west, east],
    [east, west],
  ] as const) {
    for (const [first, second] of pairsOf(side, rules)) {
      for (const third of other) {
        const trio = trioOf([first, second, third], rules);
        if (trio !== null && (best === null || beats(trio, best))) best = trio;
      }
    }
  }
  return best;
}

/** Every two far enough apart, the brighter first. */
function pairsOf(stars: readonly StarInSky[], rules: AlignmentRules): (readonly [StarInSky, StarInSky])[] {
  const inOrder = [...stars].sort((one, other) => one.magnitude - other.magnitude);
  return inOrder.flatMap((first, index) =>
    inOrder
      .slice(index + 1)
      .filter((second) => separationDeg(first, second) >= rules.leastSeparationDeg)
      .map((second) => [first, second] as const),
  );
}

function trioOf(
  [first, second, third]: readonly [StarInSky, StarInSky, StarInSky],
  rules: AlignmentRules,
): Trio | null {
  const nearest = Math.min(separationDeg(first, third), separationDeg(second, third));
  if (nearest < rules.leastSeparationDeg) return null;
  const spread = Math.min(nearest, separationDeg(first, second));
  return {
    stars: [first, second, third],
    across: isAcross(first, third, rules) && isAcross(second, third, rules),
    cost: first.magnitude + second.magnitude + third.magnitude - spread * MAG_PER_DEGREE,
  };
}

function isAcross(one: StarInSky, third: StarInSky, { acrossHours }: AlignmentRules): boolean {
  const apart = Math.abs(one.raDeg - third.raDeg) / 15;
  const hours = Math.min(apart, 24 - apart);
  return hours >= acrossHours.least && hours <= acrossHours.most;
}

function beats(one: Trio, other: Trio): boolean {
  return one.across === other.across ? one.cost < other.cost : one.across;
}

/** The brightest pair, or the brightest star alone, when three are not to be had. */
function bestFew(candidates: readonly StarInSky[], rules: AlignmentRules): readonly StarInSky[] {
  const pairs = pairsOf(candidates, rules);
  const sum = ([one, other]: readonly [StarInSky, StarInSky]) => one.magnitude + other.magnitude;
  const [pair] = pairs.sort((one, other) => sum(one) - sum(other));
  if (pair !== undefined) return pair;
  const [star] = [...candidates].sort((one, other) => one.magnitude - other.magnitude);
  return star === undefined ? [] : [star];
}
