/**
 * The Moon as figures.
 *
 * @packageDocumentation
 */
import type { LunarFeature } from "../core/outreach/lunar-terminator.ts";
import { type Figure, isoOrNull } from "./answer.ts";
import type { MoonTonight } from "./moon-picture.ts";
import { siteFigures, spanFigure, spanFigures } from "./object-figures.ts";
import { phaseWords } from "./words/moon-words.ts";

export function moonFigures(found: MoonTonight): { readonly [name: string]: Figure } {
  const { site, times, inNight, disc, feature } = found;
  return {
    site: siteFigures(site),
    night: times.night.date,
    rise: isoOrNull(times.moon.rise),
    set: isoOrNull(times.moon.set),
    windows: spanFigures(inNight.windows),
    best: inNight.best === null ? null : { ...inNight.best, at: inNight.best.at.toISOString() },
    disc: {
      at: disc.at.toISOString(),
      altitudeDeg: disc.altitudeDeg,
      azimuthDeg: disc.azimuthDeg,
      distanceKm: disc.distanceKm,
      diameterArcmin: disc.diameterArcmin,
      phase: phaseWords(disc.elongationDeg),
      illuminatedFraction: disc.illuminatedFraction,
      phaseAngleDeg: disc.phaseAngleDeg,
      elongationDeg: disc.elongationDeg,
      waxing: disc.waxing,
      ageDays: disc.ageDays,
      librationLongitudeDeg: disc.libration.longitudeDeg,
      librationLatitudeDeg: disc.libration.latitudeDeg,
      geocentricLibrationLongitudeDeg: disc.geocentricLibration.longitudeDeg,
      geocentricLibrationLatitudeDeg: disc.geocentricLibration.latitudeDeg,
      axisPositionAngleDeg: disc.axisDeg,
      brightLimbPositionAngleDeg: disc.brightLimbDeg,
      parallacticAngleDeg: disc.parallacticDeg,
      colongitudeDeg: disc.colongitudeDeg,
      sunSelenographicLatitudeDeg: disc.sunLatitudeDeg,
    },
    onTerminator: found.lit.map(({ feature: each, sunAltitudeDeg, morning }) => ({
      ...featureFigures(each),
      sunAltitudeDeg,
      morning,
    })),
    phases: found.phases.map(({ name, at }) => ({ name, at: at.toISOString() })),
    feature: feature === null ? null : featureFigures(feature),
    bestNights:
      feature === null
        ? null
        : found.bestNights.map((night) => ({
            night: night.night.date,
            window: spanFigure(night.window),
            best: night.best.toISOString(),
            moonAltitudeDeg: night.moonAltitudeDeg,
            sunAltitudeDeg: night.sunAltitudeDeg,
            morning: night.morning,
          })),
    nightsSearched: feature === null ? null : found.nightsSearched,
  };
}

function featureFigures(feature: LunarFeature): { readonly [name: string]: Figure } {
  return {
    name: feature.name,
    kind: feature.kind,
    latitudeDeg: feature.latitudeDeg,
    longitudeDeg: feature.longitudeDeg,
    diameterKm: feature.diameterKm,
  };
}
