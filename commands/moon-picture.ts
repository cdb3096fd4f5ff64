/**
 * The Moon of one night as found for a site, and its drawing.
 *
 * @packageDocumentation
 */
import { MOON_FEATURES } from "../config/moon-features.ts";
import { FEATURES_NAMED } from "../config/outreach.ts";
import type { MoonPhase } from "../core/night/moon-phases.ts";
import type { NightTimes } from "../core/night/night.ts";
import type { BodyNight } from "../core/outreach/body-night.ts";
import type { FeatureNight } from "../core/outreach/feature-nights.ts";
import { type LitFeature, type LunarFeature, turnedTowardsUs } from "../core/outreach/lunar-terminator.ts";
import type { MoonDisc } from "../core/outreach/moon-disc.ts";
import type { Site } from "../core/site.ts";
import type { MoonChart } from "./chart.ts";
import { nightViews } from "./disc-views.ts";
import { clockTime, dateWords } from "./words/clock.ts";
import { phaseWords } from "./words/moon-words.ts";
import { listWords } from "./words/sky.ts";

/** Everything an answer about the Moon rests on. */
export type MoonTonight = {
  readonly site: Site;
  readonly times: NightTimes;
  readonly inNight: BodyNight;
  readonly disc: MoonDisc;
  /** From north to south. */
  readonly lit: readonly LitFeature[];
  readonly phases: readonly MoonPhase[];
  readonly feature: LunarFeature | null;
  readonly bestNights: readonly FeatureNight[];
  readonly nightsSearched: number;
};

/** The largest of those on the terminator, still from north to south; the seas apart, of which the shore counts. */
export function prominent(lit: readonly LitFeature[]): LitFeature[] {
  const chosen = lit
    .filter(({ feature }) => feature.kind !== "sea")
    .sort((one, other) => other.feature.diameterKm - one.feature.diameterKm)
    .slice(0, FEATURES_NAMED);
  return lit.filter((each) => chosen.includes(each));
}

/** The disc as one sees it, with what stands on the terminator named. */
export function moonChart(
  { site, times, disc, lit, feature }: MoonTonight,
  cautions: readonly string[],
): MoonChart {
  const named = prominent(lit);
  const shown = [...named.map((each) => each.feature), ...(feature === null ? [] : [feature])];
  const phase = phaseWords(disc.elongationDeg);
  const time = clockTime(disc.at, times.night.timeZone);
  const percent = Math.round(disc.illuminatedFraction * 100);
  // Asked for, it is marked like those on the terminator, and said to be.
  const asked =
    feature === null || named.some((each) => each.feature === feature) ? "" : `; ${feature.name} is marked`;
  const onIt = listWords(named.map((each) => each.feature.name));
  return {
    kind: "moon",
    name: "moon",
    title: `${phase.slice(0, 1).toUpperCase()}${phase.slice(1)}, ${percent} % lit`,
    alt: `The Moon at ${time} as the eye, a telescope without a diagonal and one with a star diagonal show it, ${percent} % lit. ${onIt === "" ? "No named feature stands on the terminator." : `On the terminator: ${onIt}.`}`,
    caption: `${site.name}, ${dateWords(times.night.date)}, ${time}, zenith up unless a view says otherwise${asked}`,
    cautions,
    brightLimbDeg: disc.brightLimbDeg,
    axisDeg: disc.axisDeg,
    illuminatedFraction: disc.illuminatedFraction,
    librationLongitudeDeg: disc.libration.longitudeDeg,
    librationLatitudeDeg: disc.libration.latitudeDeg,
    views: nightViews(disc.parallacticDeg),
    features: MOON_FEATURES.filter((each) => shown.includes(each) || isRoundSea(each, disc)).map((each) => ({
      name: each.name,
      longitudeDeg: each.longitudeDeg,
      latitudeDeg: each.latitudeDeg,
      diameterKm: each.diameterKm,
      onTerminator: shown.includes(each),
    })),
  };
}

/** Seas nearer the limb would crowd the drawing; the two largest are nothing like round. */
const SEA_TOWARDS_US = 0.4;
const ROUND_SEA_KM = 1200;

function isRoundSea(feature: LunarFeature, disc: MoonDisc): boolean {
  return (
    feature.kind === "sea" &&
    feature.diameterKm < ROUND_SEA_KM &&
    turnedTowardsUs(disc.libration, feature) > SEA_TOWARDS_US
  );
}
