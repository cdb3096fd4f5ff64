/**
 * The Moon's disc in words.
 *
 * @packageDocumentation
 */
import type { LitFeature, LunarFeatureKind } from "../../core/outreach/lunar-terminator.ts";
import type { Libration, MoonDisc } from "../../core/outreach/moon-disc.ts";

const KIND_WORDS: Readonly<Record<LunarFeatureKind, string>> = {
  crater: "crater",
  sea: "sea",
  bay: "bay",
  mountains: "mountain range",
  mountain: "mountain",
  cape: "cape",
  scarp: "scarp",
  valley: "valley",
  rille: "rille",
  swirl: "bright swirl",
  "landing-site": "landing site",
};

/** How far from an exact quarter the Moon still goes by its name, degrees of elongation. */
const EXACT_DEG = 6;

/** `waxing gibbous`, `first quarter`, `full Moon`. */
export function phaseWords(elongationDeg: number): string {
  const near = (quarterDeg: number) => Math.abs(elongationDeg - quarterDeg) <= EXACT_DEG;
  if (near(0) || near(360)) return "new Moon";
  if (near(90)) return "first quarter";
  if (near(180)) return "full Moon";
  if (near(270)) return "last quarter";
  const shape = elongationDeg < 90 || elongationDeg > 270 ? "crescent" : "gibbous";
  return `${elongationDeg < 180 ? "waxing" : "waning"} ${shape}`;
}

/** Which edge libration turns towards us. */
export function librationWords({ longitudeDeg, latitudeDeg }: Libration): string {
  const edges = [
    Math.abs(latitudeDeg) < 1 ? null : `${latitudeDeg > 0 ? "north" : "south"} ${degrees(latitudeDeg)}`,
    Math.abs(longitudeDeg) < 1 ? null : `${longitudeDeg > 0 ? "east" : "west"} ${degrees(longitudeDeg)}`,
  ].filter((edge) => edge !== null);
  return edges.length === 0
    ? "Libration is small: it faces us squarely."
    : `Libration turns its ${edges.join(" and ")} further towards us.`;
}

function degrees(value: number): string {
  return `by ${Math.abs(value).toFixed(1)}°`;
}

/** Size against the mean of 31.1′. */
export function moonSizeWords({ diameterArcmin, distanceKm }: MoonDisc): string {
  const near =
    distanceKm < 370_000 ? ", close to its nearest" : distanceKm > 400_000 ? ", close to its farthest" : "";
  return `${diameterArcmin.toFixed(1)}′ across at ${Math.round(distanceKm / 1000)} 000 km${near}.`;
}

/** `Plato (crater, 101 km), the Sun 3° up: A dark smooth floor …`. */
export function litFeatureWords({ feature, sunAltitudeDeg }: LitFeature): string {
  return `${feature.name} (${kindWords(feature.kind)}, ${kmWords(feature.diameterKm)}), the Sun ${sunAltitudeDeg.toFixed(1)}° up there. ${feature.line}`;
}

export function kindWords(kind: LunarFeatureKind): string {
  return KIND_WORDS[kind];
}

function kmWords(km: number): string {
  return km >= 10 ? `${Math.round(km)} km` : `${km.toFixed(0)} km`;
}
